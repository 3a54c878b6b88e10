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

warning: 'e1' stands word for word in 'brindleway/wren-2014-2018' too (take out what was copied, with the facts that rest on it; if two cars were looked at, say in 'note' what sets this one apart)
warning: 'e4' stands word for word in 'brindleway/otter-2014-2018' too (take out what was copied, with the facts that rest on it; if two cars were looked at, say in 'note' what sets this one apart)

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

from collections import defaultdict
from collections.abc import Iterator, Sequence

from undertrim.check.findings import Card, Finding
from undertrim.record.problem import Level
from undertrim.words import Message, all_of, message, quoted

LEVEL = Level.WARNING

_NAMED = 3
"""So many pieces are named, the rest counted."""


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """For every record one finding for each other record that its looks are in, at the first of them; a look names one other."""
    shelf: dict[str, list[tuple[Card, str]]] = defaultdict(list)
    for card in cards:
        for name, look in card.looks.items():
            shelf[look].append((card, name))
    shared: dict[tuple[int, int], tuple[Card, Card, list[str]]] = {}
    for found in shelf.values():
        for card, name in found if len(found) > 1 else ():
            other = next((other for other, _ in found if other is not card), None)
            if other:
                shared.setdefault((id(card), id(other)), (card, other, []))[2].append(name)
    for card, other, names in shared.values():
        said = _said(list(dict.fromkeys(names)), other)
        yield card, Finding(("evidence", names[0]), said, beside=(other.address,))


def _said(names: Sequence[str], other: Card) -> Message:
    more = len(names) - _NAMED
    rest = [message("rules/evidence-twice/more", count=more)] if more > 0 else []
    listed = all_of(*map(quoted, names[:_NAMED]), *rest)
    return message("rules/evidence-twice/word-for-word", count=len(names), names=listed, other=other.address)
