"""The bolts round a hole are outside of it.

## What it finds

A speaker opening whose bolts have their middles inside its own hole or on its edge. A circle of bolts whose `angle`
is not recorded is only found where no angle would bring them out of it.

## Why it matters

There is nothing to screw into. One of the two was measured edge to edge, or they are exchanged, and every speaker
is held against a pattern that does not exist.

## Bad

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        hole: {shape: round, diameter: 160 mm}
        bolts: {pattern: circle, count: 4, diameter: 146 mm}    # here
        depth: {clear: 64 mm, datum: skin}
      shelf:
        name: Shelf speakers
        kind: speaker
        behind: [radio]
        hole: {shape: oval, width: 153 mm, height: 223 mm}
        bolts: {pattern: circle, count: 2, diameter: 190 mm, angle: 0 deg}    # here
        depth: {clear: 90 mm, datum: panel}

error: the bolts '146 mm' lie inside the hole '160 mm' (measure both again: bolts are measured middle to middle)
error: the bolts '190 mm' lie inside the hole '153 mm' by '223 mm' (measure both again: bolts are measured middle to middle)

## Good

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        bolts: {pattern: circle, count: 4, diameter: 160 mm}
        depth: {clear: 64 mm, datum: skin}

Two bolts beside an oval hole, not above and below it:

    openings:
      shelf:
        name: Shelf speakers
        kind: speaker
        behind: [radio]
        hole: {shape: oval, width: 153 mm, height: 223 mm}
        bolts: {pattern: circle, count: 2, diameter: 190 mm, angle: 90 deg}
        depth: {clear: 90 mm, datum: panel}
"""

from collections.abc import Iterator

from undertrim.check import outlines
from undertrim.check.findings import Finding, Subject
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every bolt pattern that lies in the hole which it goes round."""
    for opening in subject.record.openings_of(SpeakerOpening):
        hole, bolts = outlines.of_hole(opening.hole), outlines.of_bolts(opening.bolts)
        if hole and bolts and outlines.inside(bolts, hole):
            found = message("rules/bolts-inside-hole/inside", bolts=bolts.said, hole=hole.said)
            yield Finding(("openings", opening.id, "bolts"), found)
