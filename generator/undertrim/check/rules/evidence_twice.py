"""Two records do not hold the same look at a car.

## What it finds

A piece of evidence, `measured` or `seen`, that stands word for word in another record too: same day, same person, same car, same
instrument.

## Why it matters

A car is in one record. Evidence that is in two came along when a record was copied, and the facts that name it were never looked
at in the second car.

## Bad

    # file: brindleway/otter-2014-2018.yaml
    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, car: "2016", with: Calliper 0.05 mm}    # here
    # file: brindleway/wren-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Wren
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
    evidence:
      e1: {how: seen, on: 2026-03-02, by: rk, car: "2016"}
      e4: {on: 2026-03-02, how: measured, by: rk, car: "2016", with: Calliper 0.05 mm}    # here

warning: the same look at a car is 'e4' of 'brindleway/wren-2014-2018' (take it out where it was copied, with the facts that rest on it; if two cars were looked at, say in 'note' what sets this one apart)
warning: the same look at a car is 'e1' of 'brindleway/otter-2014-2018' (take it out where it was copied, with the facts that rest on it; if two cars were looked at, say in 'note' what sets this one apart)

## Good

    # file: brindleway/otter-2014-2018.yaml
    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, car: "2016", with: Calliper 0.05 mm, note: The white one.}
      e2: {how: maker, on: 2026-03-02, by: rk}
    # file: brindleway/wren-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Wren
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, car: "2016", with: Calliper 0.05 mm, note: The blue one.}
      e2: {how: maker, on: 2026-03-02, by: rk}
"""

import json
from collections import defaultdict
from collections.abc import Iterator, Sequence

from undertrim.check.findings import Card, Finding
from undertrim.record.problem import Level

LEVEL = Level.WARNING

_AT_A_CAR = ("measured", "seen")
_WAY_OUT = (
    "take it out where it was copied, with the facts that rest on it; "
    "if two cars were looked at, say in 'note' what sets this one apart"
)


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """Every look that another record has too, with the first other record that has it."""
    shelf: dict[str, list[tuple[Card, str]]] = defaultdict(list)
    for card in cards:
        for name, piece in (card.evidence or {}).items():
            if piece.get("how") in _AT_A_CAR:
                shelf[json.dumps(piece, sort_keys=True)].append((card, name))
    for found in shelf.values():
        for card, name in found if len(found) > 1 else ():
            other = next(((also, its) for also, its in found if also is not card), None)
            if other:
                message = f"the same look at a car is '{other[1]}' of '{other[0].address}'"
                yield card, Finding(("evidence", name), message, _WAY_OUT)
