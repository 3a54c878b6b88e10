"""What a text undoes stands in the fields too.

## What it finds

An instruction of a part or preparation that takes out screws, bolts or nuts, or frees clips, or of a part that unplugs something, where nothing of the
kind is recorded for it, neither in `held_by` nor under `tethers`.

## Why it matters

Tools, counts and what is joined again come from the fields. A screw that only the text knows is on no list, and is left over in the
end.

## Bad

    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by: [{clip: push, count: 4}]
        how: Take out the two screws, then free the clips and unplug the hazard switch.    # here
      lid:
        name: Lid
        release: lift
        held_by: [{hook: tab, count: 2}]
        how: Free the clips.    # here

warning: the text says 'screws', and nothing of the kind is recorded beside it (add it to 'held_by' or 'tethers', or mend the text)
warning: the text says 'unplug', and nothing of the kind is recorded beside it (add it to 'held_by' or 'tethers', or mend the text)
warning: the text says 'clips', and nothing of the kind is recorded beside it (add it to 'held_by' or 'tethers', or mend the text)

## Good

    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by: [{screw: T20, count: 2}, {scrivet: push-pin, count: 4}]
        tethers:
          hazard: {name: Hazard switch plug, kind: plug}
        how: Take out the two screws, then free the clips and unplug the hazard switch.
      mat:
        name: Mat
        release: lift
        how: Lift the mat. Two screws are under it, of the tray. Do not undo the screws of the bracket.
"""

import re
from collections.abc import Iterator

from undertrim.check import instructions
from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Part, Prep
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING

_VERBS = r"\b(?:take out|undo|unscrew|loosen|remove)\s(?:[\w-]+\s){0,5}?"
_UNDONE = {
    ("screw", "bolt", "nut"): re.compile(rf"{_VERBS}(screws?|bolts?|nuts?)\b", re.IGNORECASE),
    ("clip", "scrivet"): re.compile(r"\b(?:free|release|unclip|press)\s(?:[\w-]+\s){0,5}?(clips?)\b", re.IGNORECASE),
}
_UNPLUGGED = re.compile(r"\b(unplug|press the latch)\b", re.IGNORECASE)


def check(subject: Subject) -> Iterator[Finding]:
    """Every instruction that undoes what is not recorded."""
    for section, things in (("parts", subject.record.parts), ("preps", subject.record.preps)):
        for thing in things.values():
            place = (section, thing.id)
            if subject.intact(place):
                for word in _told(thing):
                    yield Finding((*place, "how"), message("rules/undone-in-text-only/nothing-recorded", words=word))


def _told(thing: Part | Prep) -> Iterator[str]:
    kinds = {item.kind for item in thing.held_by}
    joined = bool(thing.tethers) if isinstance(thing, Part) else True  # a preparation cannot say what it unplugs
    for sentence in instructions.sentences(thing.how):
        for clause in instructions.clauses(sentence):
            for wanted, pattern in _UNDONE.items():
                if kinds.isdisjoint(wanted):
                    yield from (match[1].lower() for match in instructions.told(clause, pattern))
            if not joined:
                yield from (match[1].lower() for match in instructions.told(clause, _UNPLUGGED))
