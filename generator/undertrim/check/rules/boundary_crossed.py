"""No record covers cars from both sides of a facelift, unless somebody confirmed that it may.

## What it finds

A record whose months of build hold a boundary that it, or any record of the same make and model (compared
without capitals, accents and spaces), declares in `boundaries`, and that is not in its `confirmed_across`. A
boundary is the first month of build after which the model is not what it was, so a record may begin or end
in it.

## Why it matters

The facts were taken on cars of one side. The tech with a car of the other finds screws that are not there
and a depth that is not true.

## Bad

    # file: kelbrook/finch-2014-2019.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-01, to: 2019-01}    # here
      drive_side: [left]
      high_voltage: no
    # file: kelbrook/finch-2019-2022.yaml
    vehicle:
      make: kelbrook
      model: "finch "
      built: {from: 2019-01, to: 2022-01}
      drive_side: [left]
      high_voltage: no
      boundaries: [2016-07, 2019-01]

error: span [2014-01, 2019-01) crosses the boundary 2016-07 declared in 'records/vehicles/kelbrook/finch-2019-2022.yaml' (split into [2014-01, 2016-07) and [2016-07, 2019-01), or add '2016-07' to 'confirmed_across')

    # file: kelbrook/finch-2014-2019.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-01, to: 2019-01}    # here
      drive_side: [left]
      high_voltage: no
      boundaries: [2017-09, 2015-04, 2016-07]
      confirmed_across: [2016-07]

error: span [2014-01, 2019-01) crosses the boundary 2015-04 declared in this record (split into [2014-01, 2015-04), [2015-04, 2017-09) and [2017-09, 2019-01), or add '2015-04' to 'confirmed_across')
error: span [2014-01, 2019-01) crosses the boundary 2017-09 declared in this record (split into [2014-01, 2015-04), [2015-04, 2017-09) and [2017-09, 2019-01), or add '2017-09' to 'confirmed_across')

## Good

    # file: kelbrook/finch-2014-2016.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-01, to: 2016-07}
      drive_side: [left]
      high_voltage: no
      boundaries: [2016-07]
    # file: kelbrook/finch-2016-2019.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2016-07, to: 2019-01}
      drive_side: [left]
      high_voltage: no
    # file: kelbrook/finch-two-2014-2019.yaml
    vehicle:
      make: Kelbrook
      model: Finch Two
      built: {from: 2014-01, to: 2019-01}
      drive_side: [left]
      high_voltage: no

Confirmed on cars of both sides:

    # file: kelbrook/finch-2014-2019.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-01, to: 2019-01}
      drive_side: [left]
      high_voltage: no
      boundaries: [2016-07]
      confirmed_across: [2016-07]
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from undertrim.check import months
from undertrim.check.boundaries import Boundaries, Boundary, crosses
from undertrim.check.findings import Card, Finding
from undertrim.check.vehicles import VehicleCard, vehicles
from undertrim.record.model import Built
from undertrim.record.problem import Level
from undertrim.words import Items, Value, all_of, message

LEVEL = Level.ERROR

_PLACE = ("vehicle", "built")


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """Every boundary within the span of a record that does not confirm it."""
    known = Boundaries(vehicles(cards))
    for vehicle in vehicles(cards):
        facts = vehicle.facts
        crossed = [
            boundary
            for boundary in known.of(vehicle)
            if crosses(facts.built, boundary.month) and boundary.month not in facts.confirmed_across
        ]
        yield from ((vehicle.card, _finding(vehicle, boundary, crossed)) for boundary in crossed)


def _finding(vehicle: VehicleCard, boundary: Boundary, crossed: Sequence[Boundary]) -> Finding:
    built = vehicle.facts.built
    facts: dict[str, Value] = {
        "span": months.span(built.from_, built.to),
        "month": boundary.month,
        "pieces": _pieces(built, crossed),
    }
    if boundary.declared.card is vehicle.card:
        found = message("rules/boundary-crossed/declared-here", **facts)
    else:
        found = message("rules/boundary-crossed/declared-elsewhere", file=boundary.declared.file, **facts)
    return Finding(_PLACE, found, beside=(boundary.declared.card.address,))


def _pieces(built: Built, crossed: Sequence[Boundary]) -> Items:
    """The spans that are left between the boundaries: '[2014-01, 2016-07) and [2016-07, 2019-01)'."""
    ends = [built.from_, *(boundary.month for boundary in crossed), built.to]
    return all_of(*(months.span(first, end) for first, end in pairwise(ends)))
