"""Only a boundary can be confirmed across.

## What it finds

A month in `confirmed_across` that no record of the same make and model (compared without capitals, accents
and spaces) declares in `boundaries`, and one that does not lie within the record's own months of build: a
record that begins or ends at a boundary has cars of one side only.

## Why it matters

The line says that somebody compared cars from before and after. With a wrong month that is a claim about
cars nobody compared, and the true boundary stays unconfirmed.

## Bad

    # file: kelbrook/finch-2014-2019.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-01, to: 2019-01}
      drive_side: [left]
      high_voltage: no
      boundaries: [2016-07, 2019-01]
      confirmed_across:
        - 2016-06    # here
        - 2016-07
        - 2019-01    # here
    # file: kelbrook/wren-2014-2019.yaml
    vehicle:
      make: Kelbrook
      model: Wren
      built: {from: 2014-01, to: 2019-01}
      drive_side: [left]
      high_voltage: no
      confirmed_across: [2016-07]    # here

error: no record of this model declares the boundary '2016-06' (its boundaries are 2016-07, 2019-01)
error: the boundary '2019-01' does not lie within [2014-01, 2019-01) (remove it)
error: no record of this model declares the boundary '2016-07' (declare it in 'boundaries', or remove it)

## Good

    # file: kelbrook/finch-2014-2019.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-01, to: 2019-01}
      drive_side: [left]
      high_voltage: no
      confirmed_across: [2016-07]
    # file: kelbrook/finch-2019-2022.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2019-01, to: 2022-01}
      drive_side: [left]
      high_voltage: no
      boundaries: [2016-07, 2019-01]
"""

from collections.abc import Iterator, Sequence

from undertrim.check import months
from undertrim.check.boundaries import Boundaries, crosses
from undertrim.check.findings import Card, Finding
from undertrim.check.vehicles import VehicleCard, vehicles
from undertrim.record.problem import Level
from undertrim.words import Items, message

LEVEL = Level.ERROR


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """Every confirmed month that is no boundary within the record."""
    known = Boundaries(vehicles(cards))
    for vehicle in vehicles(cards):
        yield from ((vehicle.card, finding) for finding in _look(vehicle, known))


def _look(vehicle: VehicleCard, known: Boundaries) -> Iterator[Finding]:
    built = vehicle.facts.built
    declared = [boundary.month for boundary in known.of(vehicle)]
    for index, month in enumerate(vehicle.facts.confirmed_across):
        place = ("vehicle", "confirmed_across", index)
        if month not in declared and declared:
            others = Items(tuple(declared), "comma")
            yield Finding(
                place, message("rules/confirmed-across-nothing/another-boundary", month=month, declared=others)
            )
        elif month not in declared:
            yield Finding(place, message("rules/confirmed-across-nothing/no-boundary", month=month))
        elif not crosses(built, month):
            span = months.span(built.from_, built.to)
            yield Finding(place, message("rules/confirmed-across-nothing/outside", month=month, span=span))
