"""A part and a preparation may not share an id.

## What it finds

An id that stands both under `parts` and under `preps`.

## Why it matters

`after` names parts and preparations alike, so a shared id can mean either: one of the two would silently
drop out of every procedure.

## Bad

    parts:
      battery:    # here
        name: Battery
        release: lift

error: 'battery' is both a preparation and a part (give one of them another id: 'after' could mean either)

## Good

    parts:
      battery-cover:
        name: Battery cover
        release: lift
      dash:
        name: Dash frame
        release: lift
        tethers:
          battery: {name: Battery lead, kind: cable}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every id that a part and a preparation share, at the later of the two."""
    for name in subject.record.parts.keys() & subject.record.preps.keys():
        places: list[Pointer] = [("parts", name), ("preps", name)]
        later = max(places, key=lambda place: subject.source.position(place, key=True))
        yield Finding(later, message("rules/id-used-twice/twice", name=name), key=True)
