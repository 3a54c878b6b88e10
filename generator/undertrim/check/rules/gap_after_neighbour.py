"""A record that follows another begins where that one ends.

## What it finds

`follows` that names no record of the same make, and one whose `to` is not this record's `from`. Months are
half open: a car built in the `to` month belongs to the record that follows.

## Why it matters

A car built in the gap has no record, one built in the overlap has two, and the tech opens the dash by the
wrong one.

## Bad

    # file: kelbrook/finch-2014-2016.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-01, to: 2016-03}
      drive_side: [left]
      high_voltage: no
    # file: kelbrook/finch-2016-2019.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2016-05, to: 2019-01}
      drive_side: [left]
      high_voltage: no
      follows: finch-2014-2016    # here
    # file: kelbrook/finch-two-2018-2022.yaml
    vehicle:
      make: Kelbrook
      model: Finch Two
      built: {from: 2018-12, to: 2022-01}
      drive_side: [left]
      high_voltage: no
      follows: finch-2016-2019    # here
    # file: kelbrook/finch-two-2021-2024.yaml
    vehicle:
      make: Kelbrook
      model: Finch Two
      built: {from: 2021-10, to: 2024-01}
      drive_side: [left]
      high_voltage: no
      follows: finch-two-2018-2022    # here
    # file: kelbrook/wren-2019-2021.yaml
    vehicle:
      make: Kelbrook
      model: Wren
      built: {from: 2019-01, to: 2021-01}
      drive_side: [left]
      high_voltage: no
      follows: finch-2016-2018    # here

error: gap [2016-03, 2016-05) after 'finch-2014-2016' (let 'finch-2014-2016' end in the month in which this record begins)
error: overlap in 2018-12 with 'finch-2016-2019' (let 'finch-2016-2019' end in the month in which this record begins)
error: overlap [2021-10, 2022-01) with 'finch-two-2018-2022' (let 'finch-two-2018-2022' end in the month in which this record begins)
error: no readable record 'finch-2016-2018' of this make (did you mean 'finch-2016-2019'?)

    # file: kelbrook/finch-2014-2016.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-01, to: 2016-03}
      drive_side: [left]
      high_voltage: no
      follows: finch-2014-2016    # here

error: 'finch-2014-2016' is this record itself (name the record of the phase before, or remove the line)

## Good

    # file: kelbrook/finch-2014-2016.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2014-01, to: 2016-05}
      drive_side: [left]
      high_voltage: no
    # file: kelbrook/finch-2016-2019.yaml
    vehicle:
      make: Kelbrook
      model: Finch
      built: {from: 2016-05, to: 2019-01}
      drive_side: [left]
      high_voltage: no
      follows: finch-2014-2016
    # file: kelbrook/wren-2019-2021.yaml
    vehicle:
      make: Kelbrook
      model: Wren
      built: {from: 2020-01, to: 2021-01}
      drive_side: [left]
      high_voltage: no
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from undertrim.check import months
from undertrim.check.findings import Card, Finding
from undertrim.check.vehicles import VehicleCard, vehicles
from undertrim.record.model import Built
from undertrim.record.nearness import suggestion
from undertrim.record.problem import Level
from undertrim.words import Message, message

LEVEL = Level.ERROR

_PLACE = ("vehicle", "follows")


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """Every record that does not join on to the one it says it follows."""
    known = {(vehicle.make, vehicle.id): vehicle for vehicle in vehicles(cards)}
    for vehicle in known.values():
        if vehicle.facts.follows:
            finding = _look(vehicle, known)
            if finding:
                yield vehicle.card, finding


def _look(vehicle: VehicleCard, known: dict[tuple[str, str], VehicleCard]) -> Finding | None:
    name = vehicle.facts.follows
    before = known.get((vehicle.make, name))
    if before is None:
        others = [id_ for make, id_ in known if make == vehicle.make and id_ != vehicle.id]
        return Finding(_PLACE, _absent(name, others), about=(name,))
    if before is vehicle:
        return Finding(_PLACE, message("rules/gap-after-neighbour/itself", name=name))
    found = _joint(name, before.facts.built, vehicle.facts.built)
    return replace(found, beside=(before.card.address,)) if found else None


def _absent(name: str, others: Sequence[str]) -> Message:
    if not others:
        return message("rules/gap-after-neighbour/none-of-this-make", name=name)
    hint = suggestion(name, others, message("rules/gap-after-neighbour/records-of-this-make"))
    return message("rules/gap-after-neighbour/no-record", name=name, hint=hint)


def _joint(name: str, before: Built, after: Built) -> Finding | None:
    """A gap or an overlap between two spans of which the second should begin where the first ends."""
    if before.to.index < after.from_.index:
        gap = months.span(before.to, after.from_)
        return Finding(_PLACE, message("rules/gap-after-neighbour/gap", name=name, span=gap))
    span = months.common(before, after)
    if span:
        shared = months.within(span.from_, span.to)
        return Finding(_PLACE, message("rules/gap-after-neighbour/overlap", name=name, months=shared))
    if before.to.index > after.from_.index:
        return Finding(_PLACE, message("rules/gap-after-neighbour/ends-after", name=name, month=before.to))
    return None
