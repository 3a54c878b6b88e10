"""A trim moves away from the body of the car.

## What it finds

A `direction` that leads into what the part sits on: forward out of a dash, outboard out of a door or pillar, up out of a roof, down
out of a floor. Which way is free in which area is common practice, no source.

## Why it matters

The tech pulls the way it says. Into the body nothing gives but the clips.

## Bad

    parts:
      bezel: {name: Radio bezel, area: dash, release: pull, direction: forward}    # here
      trim: {name: Pillar trim, area: pillar, release: pull, direction: outboard}    # here

warning: 'forward' out of 'dash' leads into the body of the car (is it 'rearward'? If it does move so, allow it with what you saw)
warning: 'outboard' out of 'pillar' leads into the body of the car (is it 'inboard'? If it does move so, allow it with what you saw)

## Good

    parts:
      bezel: {name: Radio bezel, area: dash, release: pull, direction: rearward}
      trim: {name: Pillar trim, area: pillar, release: pull, direction: inboard}
      tray: {name: Tray, area: dash, release: slide, direction: down}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING

_INTO = {
    "dash": "forward",
    "front-door": "outboard",
    "rear-door": "outboard",
    "pillar": "outboard",
    "side": "outboard",
    "roof": "up",
    "floor": "down",
    "console": "down",
}
_OUT = {"forward": "rearward", "outboard": "inboard", "up": "down", "down": "up"}


def check(subject: Subject) -> Iterator[Finding]:
    """Every part that is to be moved into what it sits on."""
    for part in subject.record.parts.values():
        if part.direction and _INTO.get(part.area) == part.direction:
            facts = {"direction": part.direction, "back": _OUT[part.direction]}
            found = message("rules/moved-into-the-body/into-the-body", area=part.area, **facts)
            yield Finding(("parts", part.id, "direction"), found, about=(part.area,))
