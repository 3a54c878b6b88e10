"""A hole is no larger than the panel round it.

## What it finds

An opening whose hole is wider or higher than its `panel`, the flat face round the hole, and bolts that lie on
the edge of that face or beyond. A circle of bolts whose `angle` is not recorded is only found where no angle would bring them onto it.

## Why it matters

A flange and its screws are promised a face that is not there. One of the two was measured on another car, or
with the tape at the wrong edge.

## Bad

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}    # here
        bolts: {pattern: circle, count: 4, diameter: 216 mm}    # here
        panel: {width: 158 mm, height: 5 1/2 in}
        depth: {clear: 64 mm, datum: skin}
      shelf:
        name: Shelf speakers
        kind: speaker
        behind: [radio]
        hole: {shape: oval, width: 153 mm, height: 223 mm}
        bolts: {pattern: rectangle, count: 4, width: 170 mm, height: 165 mm}    # here
        panel: {width: 170 mm, height: 240 mm}
        depth: {clear: 90 mm, datum: panel}

error: the hole's diameter '146 mm' is more than the height '5 1/2 in' of the panel round it (measure both again: the panel is the flat face round the hole)
error: the bolts '216 mm' lie on the edge of the panel '158 mm' by '5 1/2 in' or beyond (measure both again: the flange and its screws lie on the panel)
error: the bolts '170 mm' by '165 mm' lie on the edge of the panel '170 mm' by '240 mm' or beyond (measure both again: the flange and its screws lie on the panel)

## Good

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        bolts: {pattern: circle, count: 4, diameter: 160 mm}
        panel: {width: 146 mm, height: 150 mm}
        depth: {clear: 64 mm, datum: skin}
      rear-door:
        name: Rear door speakers
        kind: speaker
        behind: [radio]
        hole: {shape: round, diameter: 120 mm}
        panel: {width: unknown, height: 100 mm}
        depth: {clear: 64 mm, datum: skin}
"""

from collections.abc import Iterator

from undertrim.check import outlines
from undertrim.check.findings import Finding, Subject
from undertrim.check.outlines import KnownOutline, Pattern
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.problem import Level
from undertrim.words import Value, message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every hole and every bolt pattern that the panel round it cannot hold."""
    for opening in subject.record.openings_of(SpeakerOpening):
        panel = outlines.of_face(opening.panel)
        if panel:
            yield from _hole(opening, panel)
            yield from _bolts(opening, outlines.of_bolts(opening.bolts), panel)


def _hole(opening: SpeakerOpening, panel: KnownOutline) -> Iterator[Finding]:
    hole = outlines.of_hole(opening.hole)
    pairs = ((hole.across, panel.across), (hole.up, panel.up)) if hole else ()
    for side, edge in pairs:
        if side.value > edge.value:
            sizes: dict[str, Value] = {"hole": side.text, "panel": edge.text}
            found = message("rules/hole-beyond-panel/hole", side=side.called, edge=edge.called, **sizes)
            yield Finding(("openings", opening.id, "hole"), found)
            return


def _bolts(opening: SpeakerOpening, bolts: Pattern | None, panel: KnownOutline) -> Iterator[Finding]:
    if bolts and outlines.outside(bolts, panel):
        found = message("rules/hole-beyond-panel/bolts", bolts=bolts.said, panel=panel.said)
        yield Finding(("openings", opening.id, "bolts"), found)
