"""New gear takes the place of something that stays out.

## What it finds

An opening that had a factory unit in it (every receiver opening, and a speaker opening with an `impedance`), where none of the
parts it is `behind` is `replaced`.

## Why it matters

The plan then puts the factory radio back into the opening that the new one is in, counts its screws as refitted, and joins its
plugs.

## Bad

    parts:
      radio:
        name: Factory radio
        release: slide
    openings:
      dash:
        name: Radio opening
        kind: receiver
        behind: [radio]    # here
        kit: needed
        face: {width: 182 mm, height: 112 mm}
        depth: {clear: 170 mm}

warning: nothing that 'dash' is behind is replaced: 'radio' goes back (write 'replaced: yes' at the part that new gear takes the place of, or name that part in 'behind')

## Good

    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
      grille:
        name: Grille
        release: lift
    openings:
      dash:
        name: Radio opening
        kind: receiver
        behind: [radio]
        kit: needed
        face: {width: 182 mm, height: 112 mm}
        depth: {clear: 170 mm}
      corner:
        name: Place for a small speaker, empty from the factory
        kind: speaker
        behind: [grille]
        hole: {shape: round, diameter: 78 mm}
        depth: {clear: 47 mm, datum: bracket, over: no-glass}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import all_of, message, quoted

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every opening whose factory unit goes back into it."""
    parts = subject.record.parts
    for opening in subject.record.openings.values():
        known = [parts[name] for name in opening.behind if name in parts]
        whole = all(subject.intact(("parts", part.id)) for part in known)
        if opening.occupied and known and whole and not any(part.replaced == "yes" for part in known):
            about = tuple(part.id for part in known)
            named = all_of(*map(quoted, about))
            found = message("rules/nothing-makes-room/goes-back", opening=opening.id, parts=named)
            yield Finding(("openings", opening.id, "behind"), found, about=about)
