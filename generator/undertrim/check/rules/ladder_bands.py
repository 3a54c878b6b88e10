"""Each button of a ladder has a band of resistances to itself.

## What it finds

Two buttons, or a button and the line at rest, whose resistances meet within the tolerance. A button of 0 ohm is
taken to reach to 2 ohm through leads and contacts, an open line to begin at 1 Mohm (common practice, no source).

## Why it matters

A receiver that learns the buttons takes one for the other. More often a value was read while a second button
stuck, or the tolerance is wider than that of the parts.

## Bad

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          4: {function: wheel-buttons}
    ladders:
      wheel:
        pin: main/4
        idle: 1.4 kohm
        tolerance: 10 %
        buttons:
          next: 330 ohm
          previous: 390 ohm    # here
          source: 1.2 kohm    # here

warning: 'next' and 'previous' share 351 to 363 ohm (measure both again, or narrow 'tolerance' to that of the parts)
warning: 'source' and the line at rest share 1260 to 1320 ohm (measure both again, or narrow 'tolerance' to that of the parts)

## Good

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          4: {function: wheel-buttons}
    ladders:
      wheel:
        pin: main/4
        idle: none
        tolerance: 5 %
        buttons: {mute: 0 ohm, next: 330 ohm, previous: 390 ohm, source: 1.2 kohm}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.wiring.ladder import Rung, overlaps, rungs
from undertrim.record.model import Ladder
from undertrim.record.problem import Level
from undertrim.words import Message, message, quoted

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every two bands of a ladder that meet."""
    for ladder in subject.record.ladders.values():
        for overlap in overlaps(rungs(ladder)):
            first, second = _in_order(ladder, overlap.first, overlap.second)
            names = {"first": _named(first), "second": _named(second)}
            shared = _range(overlap.low, overlap.high)
            button = first if second.idle else second
            found = message("rules/ladder-bands/share", range=shared, **names)
            yield Finding(("ladders", ladder.id, "buttons", button.name), found)


def _in_order(ladder: Ladder, one: Rung, other: Rung) -> tuple[Rung, Rung]:
    """Two rungs in the order of the file, the line at rest last."""
    names = list(ladder.buttons)
    place = {rung: len(names) if rung.idle else names.index(rung.name) for rung in (one, other)}
    return (one, other) if place[one] < place[other] else (other, one)


def _named(rung: Rung) -> Message:
    return message("rules/ladder-bands/at-rest") if rung.idle else quoted(rung.name)


def _range(low: float, high: float) -> Message:
    if low == high:
        return message("rules/ladder-bands/one-resistance", low=low)
    return message("rules/ladder-bands/resistances", low=low, high=high)
