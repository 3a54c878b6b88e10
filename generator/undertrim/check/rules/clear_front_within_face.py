"""The clear front of a dash opening is no smaller than the opening.

## What it finds

A `clear_front` that is narrower or lower than the `face` of the same opening.

## Why it matters

What is free in front of the dash has the opening in its middle. A smaller one was measured at something else, or its width and
height are exchanged.

## Bad

    openings:
      dash:
        name: Radio opening
        kind: receiver
        behind: [radio]
        kit: needed
        face: {width: 182 mm, height: 112 mm}
        clear_front: {width: 140 mm, height: 238 mm}    # here
        depth: {clear: 170 mm}

warning: the width of the clear front is '140 mm', and that of the opening in it '182 mm' (measure both again)

## Good

    openings:
      dash:
        name: Radio opening
        kind: receiver
        behind: [radio]
        kit: needed
        face: {width: 182 mm, height: 112 mm}
        clear_front: {width: 238 mm, height: 112 mm}
        depth: {clear: 170 mm}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model.kinds.receiver import ReceiverOpening
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.words import message

LEVEL = Level.WARNING

_SAME = 1e-9  # m
_SIDES = {
    "width": message("rules/clear-front-within-face/width-too-small"),
    "height": message("rules/clear-front-within-face/height-too-small"),
}


def check(subject: Subject) -> Iterator[Finding]:
    """Every clear front that the opening does not lie in."""
    for opening in subject.record.openings_of(ReceiverOpening):
        for name in _SIDES if opening.face and opening.clear_front else ():
            face, front = getattr(opening.face, name), getattr(opening.clear_front, name)
            if isinstance(face, Quantity) and isinstance(front, Quantity) and front.value < face.value - _SAME:
                found = message(_SIDES[name].code, front=front.text, face=face.text)
                yield Finding(("openings", opening.id, "clear_front", name), found)
