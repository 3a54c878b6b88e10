"""What is in a door is there on each side, or says on which.

## What it finds

A part or opening in the area of the front or rear doors with neither `each` nor `on_side`, and one that is `each` of one side
where an opening of the same area is on both.

## Why it matters

There are two front doors. Without its sides a panel is taken off once, its clips are counted once, and the second speaker is
fitted into a closed door.

## Bad

    parts:
      panel: {name: Front door panel, area: front-door, release: lift}    # here
      cap: {name: Mirror corner, area: front-door, release: pull, each: [left]}    # here
      speaker: {name: Factory speaker, area: front-door, release: unscrew, each: [left, right], replaced: yes}
    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        each: [left, right]
        behind: [speaker]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel}

warning: 'panel' is in 'front-door' and does not say on which side (write 'each: [left, right]'; for what is in one door only, 'on_side')
warning: 'cap' is said for one door, and the openings of 'front-door' are in both (write 'each: [left, right]'; for what is in one door only, 'on_side')

## Good

    parts:
      panel: {name: Front door panel, area: front-door, release: lift, each: [left, right]}
      lock: {name: Lock cover, area: front-door, release: lift, on_side: left}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Opening, Part, VehicleRecord
from undertrim.record.problem import Level
from undertrim.words import Message, message

LEVEL = Level.WARNING

_DOORS = ("front-door", "rear-door")
_BOTH = 2


def check(subject: Subject) -> Iterator[Finding]:
    """Everything in a door that is said to be there once, or in one door of two."""
    record = subject.record
    for section, things in (("parts", record.parts), ("openings", record.openings)):
        for thing in things.values():
            found = _said(record, thing) if thing.area in _DOORS else None
            if found and subject.intact((section, thing.id)):
                yield Finding((section, thing.id), found, key=True, about=(thing.area,))


def _said(record: VehicleRecord, thing: Part | Opening) -> Message | None:
    if not thing.each and not thing.on_side:
        return message("rules/door-side-not-said/no-side", thing=thing.id, door=thing.area)
    both = any(item.area == thing.area and len(item.each) == _BOTH for item in record.openings.values())
    if len(thing.each) == 1 and both:
        return message("rules/door-side-not-said/one-door-only", thing=thing.id, door=thing.area)
    return None
