"""Two phases of a car differ in something.

## What it finds

Two records of one make and model, for other months and for bodies and drive sides that can meet, whose parts, preparations, openings, plugs, cable runs and variants are all
the same, whatever evidence they name. What a record takes from the other by `shares` does not count.

## Why it matters

Whoever looks the car up has to tell two phases apart for nothing, and a fact that is mended in the one stays wrong in the other.

## Bad

    # file: brindleway/otter-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
    # file: brindleway/otter-2018-2021.yaml
    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2018-01, to: 2021-01}    # here
      drive_side: [left]
      high_voltage: no

warning: nothing sets this phase apart from 'records/vehicles/brindleway/otter-2014-2018.yaml' (let that record cover the months of both, or record what differs)

## Good

    # file: brindleway/otter-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
    # file: brindleway/otter-2018-2021.yaml
    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2018-01, to: 2021-01}
      drive_side: [left]
      high_voltage: no
    parts:
      bezel: {name: Bezel, release: lift}
      radio: {name: Factory radio, release: slide, after: [bezel], replaced: yes}
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence

from undertrim.check import months
from undertrim.check.copies import SECTIONS, WHOLE
from undertrim.check.findings import Card, Finding
from undertrim.check.vehicles import VehicleCard, alike, vehicles
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """One finding for each record that has no more to say than an earlier one of its model, at its months of build."""
    same: dict[tuple[str, str, str], list[VehicleCard]] = defaultdict(list)
    for vehicle in vehicles(sorted(cards, key=lambda card: card.path)):
        if WHOLE in vehicle.card.sections:
            same[vehicle.make, vehicle.model, vehicle.card.sections[WHOLE]].append(vehicle)
    for first, *others in same.values():
        for other in others:
            other_months = not months.common(first.facts.built, other.facts.built)
            if other_months and alike(first.facts, other.facts) and not _told_as_copy(first.card, other.card):
                found = message("rules/phases-alike/nothing", file=first.file)
                yield other.card, Finding(("vehicle", "built"), found, beside=(first.card.address,))


def _told_as_copy(one: Card, other: Card) -> bool:
    """Whether so much is word for word the same that `record-copied` says it."""
    return sum(name in one.sections and one.sections[name] == other.sections.get(name) for name in SECTIONS) > 1
