"""A speaker depth says what it was measured from, and in a door, over which travel of the glass.

## What it finds

The depth of a speaker opening without `datum`; in a door also one without `over`. A depth that is not known
needs neither.

## Why it matters

Door skin, bracket and panel lie centimetres apart, and the glass comes closest somewhere on its way, not
always at the bottom. A magnet that clears it by a depth of unknown meaning breaks the window.

## Bad

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, to: Window glass}    # here
      dash-top:
        name: Dash top speakers
        kind: speaker
        area: dash
        behind: [radio]
        hole: {shape: round, diameter: 78 mm}
        depth: {clear: 44 mm}    # here

error: '64 mm' does not say what it was measured from (add 'datum: skin', 'bracket', 'panel' or 'face')
error: '64 mm' does not say whether the glass was moved (add 'over: whole-travel', 'glass-down' or 'no-glass')
error: '44 mm' does not say what it was measured from (add 'datum: skin', 'bracket', 'panel' or 'face')

## Good

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel}
      rear-door:
        name: Rear door speakers
        kind: speaker
        area: rear-door
        behind: [radio]
        hole: {shape: round, diameter: 120 mm}
        depth: {clear: unknown}
      dash-top:
        name: Dash top speakers
        kind: speaker
        area: dash
        behind: [radio]
        hole: {shape: round, diameter: 78 mm}
        depth: {clear: 44 mm, datum: bracket}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Depth, Opening
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every depth behind a speaker or tweeter that is no measure yet."""
    for opening in subject.record.openings.values():
        if opening.often_in_doors and opening.depth and isinstance(opening.depth.clear, Quantity):
            yield from _missing(opening, opening.depth, opening.depth.clear.text)


def _missing(opening: Opening, depth: Depth, clear: str) -> Iterator[Finding]:
    place = ("openings", opening.id, "depth")
    if not depth.datum:
        yield Finding((*place, "datum"), message("rules/depth-without-datum/no-datum", depth=clear))
    if not depth.over and opening.in_a_door:
        yield Finding((*place, "over"), message("rules/depth-without-datum/glass-not-said", depth=clear))
