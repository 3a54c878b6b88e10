"""A record says what was seen at its own car.

## What it finds

Two vehicle records of which two of the sections `parts`, `openings` and `connectors` are word for word the same, whatever evidence they
name. Sections with fewer than three parts do not count, nor does what stands there since it is usual (`how: usual`).

## Why it matters

A record that was copied to begin another says of the second car what nobody saw there. Where the two cars are really built alike, one
record for both stays true when it is mended, and two do not.

## Bad

    # file: brindleway/otter-2014-2018.yaml
    parts:
      vent: {name: Vent trim, release: pull}
      bezel: {name: Bezel, release: pull, after: [vent]}
      radio: {name: Factory radio, release: slide, after: [bezel], replaced: yes, source: e1}
    # file: brindleway/wren-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Wren
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
    parts:    # here
      vent: {name: Vent trim, release: pull}
      bezel: {name: Bezel, release: pull, after: [vent]}
      radio: {release: slide, name: Factory radio, after: [bezel], replaced: yes, source: e2}

warning: 'parts' and 'openings' are word for word those of 'records/vehicles/brindleway/otter-2014-2018.yaml' (record what was seen at this car, or let one record cover both, by 'built', 'bodies' or 'also_called')

## Good

    # file: brindleway/otter-2014-2018.yaml
    parts:
      vent: {name: Vent trim, release: pull}
      bezel: {name: Bezel, release: pull, after: [vent]}
      radio: {name: Factory radio, release: slide, after: [bezel], replaced: yes}
    # file: brindleway/wren-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Wren
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
    parts:
      vent: {name: Vent trim, release: pull}
      bezel: {name: Bezel, release: lift, after: [vent]}
      radio: {name: Factory radio, release: slide, after: [bezel], replaced: yes}
"""

from collections.abc import Iterator, Sequence
from itertools import combinations

from undertrim.check.copies import SECTIONS
from undertrim.check.findings import Card, Finding
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """One finding for each record that is a copy of an earlier one, at the first of the sections they share."""
    first: dict[tuple[str, str, str, str], Card] = {}
    for card in sorted(cards, key=lambda card: card.path):
        held = [(name, card.sections[name]) for name in SECTIONS if name in card.sections]
        pairs = [(*one, *other) for one, other in combinations(held, 2)]
        copied = next((pair for pair in pairs if pair in first), None)
        if copied:
            yield card, _finding(copied[0], copied[2], first[copied])
        for pair in pairs:
            first.setdefault(pair, card)


def _finding(one: str, other: str, source: Card) -> Finding:
    found = message("rules/record-copied/word-for-word", one=one, other=other, file=source.path.as_posix())
    return Finding((one,), found, key=True, about=(source.path.stem,))
