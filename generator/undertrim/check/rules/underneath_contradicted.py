"""What lies underneath is either something, nothing, or unknown.

## What it finds

`underneath` of an amplifier place that says `nothing` or `unknown` beside something else.

## Why it matters

Somebody may read the first word alone and put a screw in.

## Bad

    openings:
      bay:
        name: Amplifier place
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        underneath: [nothing, harness]    # here
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 4.8 m}

error: 'bay' has 'nothing' underneath and more beside it (leave 'nothing' out, or the rest)

## Good

    openings:
      bay:
        name: Amplifier place
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        underneath: [harness, spare-wheel]
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 4.8 m}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR

_ALONE = ("nothing", "unknown")


def check(subject: Subject) -> Iterator[Finding]:
    """Every place that says two things at once."""
    for bay in subject.record.openings_of(AmplifierOpening):
        word = next((thing for thing in bay.underneath if thing in _ALONE), "")
        if word and len(bay.underneath) > 1:
            found = message("rules/underneath-contradicted/beside", opening=bay.id, word=word)
            yield Finding(("openings", bay.id, "underneath"), found, key=True)
