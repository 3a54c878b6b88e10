"""A car belongs to one record.

## What it finds

Two records of one make and model (compared without capitals, accents, spaces and hyphens) whose months of build
overlap, for the same drive side and body. A body or drive side that is not named counts as every one. A
different `phase` excuses an overlap if both records have a `tell`, by which the tech knows the two apart at
the car.

## Why it matters

The tech who looks the car up finds two answers and no reason to trust either.

## Bad

    # file: kelbrook/finch-2014-2016.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-01, to: 2016-07}    # here
      drive_side: [left, right]
      high_voltage: no
    # file: kelbrook/finch-2016-2019.yaml
    vehicle:
      make: kelbrook
      model: "finch "
      built: {from: 2016-05, to: 2019-01}    # here
      drive_side: [left]
      bodies: [hatchback]
      high_voltage: no

error: the months [2016-05, 2016-07) are also in 'records/vehicles/kelbrook/finch-2016-2019.yaml' (let one end where the other begins, or give both a 'phase' and a 'tell')
error: the months [2016-05, 2016-07) are also in 'records/vehicles/kelbrook/finch-2014-2016.yaml' (let one end where the other begins, or give both a 'phase' and a 'tell')

    # file: kelbrook/finch-2014-2018.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-03, to: 2018-09}    # here
      drive_side: [left]
      high_voltage: no
    # file: kelbrook/finch-2014-2018-facelift.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      phase: facelift
      built: {from: 2014-03, to: 2018-09}    # here
      drive_side: [left]
      high_voltage: no

error: two records for one vehicle: 'records/vehicles/kelbrook/finch-2014-2018.yaml' covers the same months (make one of them, or give both a 'phase' and a 'tell')
error: two records for one vehicle: 'records/vehicles/kelbrook/finch-2014-2018-facelift.yaml' covers the same months (make one of them, or give both a 'phase' and a 'tell')

## Good

    # file: kelbrook/finch-2014-2016.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-01, to: 2016-05}
      drive_side: [left, right]
      high_voltage: no
    # file: kelbrook/finch-2016-2019.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2016-05, to: 2019-01}
      drive_side: [left, right]
      high_voltage: no
    # file: kelbrook/finch-2015-2017-van.yaml
    vehicle:
      make: Kelbrook
      model: Finch Van
      built: {from: 2015-01, to: 2017-01}
      drive_side: [left, right]
      high_voltage: no

Different bodies, or two phases that can be told apart:

    # file: kelbrook/finch-2014-2018-early.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      phase: early
      tell: Square dial vents
      built: {from: 2014-03, to: 2018-09}
      bodies: [hatchback]
      drive_side: [left]
      high_voltage: no
    # file: kelbrook/finch-2016-2020-late.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      phase: late
      tell: Round dial vents
      built: {from: 2016-03, to: 2020-09}
      bodies: [hatchback]
      drive_side: [left]
      high_voltage: no
    # file: kelbrook/finch-2015-2019.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2015-01, to: 2019-01}
      bodies: [estate]
      drive_side: [left]
      high_voltage: no
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import combinations

from undertrim.check import months
from undertrim.check.findings import Card, Finding
from undertrim.check.vehicles import VehicleCard, alike, vehicles
from undertrim.record.model import Built, VehicleFacts
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR

_PLACE = ("vehicle", "built")


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """Both files of every pair that claims the same cars."""
    models: dict[tuple[str, str], list[VehicleCard]] = defaultdict(list)
    for vehicle in vehicles(cards):
        models[vehicle.make, vehicle.model].append(vehicle)
    for same in models.values():
        for one, other in combinations(same, 2):
            span = _claimed_twice(one.facts, other.facts)
            if span:
                yield one.card, _finding(one, other, span)
                yield other.card, _finding(other, one, span)


def _claimed_twice(one: VehicleFacts, other: VehicleFacts) -> Built | None:
    """The months in which a car could be meant by both records."""
    told_apart = one.phase != other.phase and one.tell and other.tell
    if told_apart or not alike(one, other):
        return None
    return months.common(one.built, other.built)


def _finding(here: VehicleCard, there: VehicleCard, span: Built) -> Finding:
    if here.facts.built == there.facts.built:
        found = message("rules/overlapping-records/same-months", file=there.file)
    else:
        found = message("rules/overlapping-records/shared-months", first=span.from_, end=span.to, file=there.file)
    return Finding(_PLACE, found, beside=(there.card.address,))
