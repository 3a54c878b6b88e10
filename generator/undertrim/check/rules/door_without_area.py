"""An opening for a speaker or tweeter says in which region of the car it is.

## What it finds

An opening of the kind `speaker` or `tweeter` without `area`.

## Why it matters

The area says whether it is in a door: whether glass moves behind it, and whether a crash pressure sensor may be beside it.
A name says neither. Until it is recorded the opening counts as one in any door, with all that this forbids.

## Bad

    openings:
      front-door:    # here
        name: Front door speakers
        kind: speaker
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin, over: whole-travel}

error: 'front-door' does not say where it is (add 'area', for example 'area: front-door'; until then it counts as one in any door)

## Good

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin, over: whole-travel}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every opening that often is in a door, without an area."""
    for opening in subject.record.openings.values():
        place = ("openings", opening.id)
        if opening.often_in_doors and not opening.area and subject.intact(place):
            yield Finding(place, message("rules/door-without-area/no-area", opening=opening.id), key=True)
