"""What was measured or seen says at which car.

## What it finds

A piece of evidence that is `measured` or `seen`, or a stamp of verification, that does not say of its car what sets the cars of
this record apart: its year or month of build, its steering side where both are covered, its choice of each variant.

## Why it matters

What holds in one car need not hold in the next. When two measurements differ, the first question is which cars they came from.

## Bad

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left, right]
      high_voltage: no
    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}
    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, with: Calliper 0.05 mm}    # here
      e2: {how: seen, on: 2026-03-09, by: tw, car: "2016, left-hand drive, radio with a map"}    # here
      e3: {how: seen, on: 2026-03-09, by: tw, car: {built: 2016-05, is: {radio: map}}}    # here

warning: 'e1' does not say of its car: year, side, radio (write for example 'car: {year: 2016, side: left, is: {radio: plain}}', with 'unknown' for what nobody noted)
warning: 'e2' does not say of its car: radio (name a choice of 'radio' as it is labelled, 'Plain radio' or 'Map radio', or write 'unknown' in 'is')
warning: 'e3' does not say of its car: side (write 'side: left' or 'side: right', or 'unknown' if nobody noted it)

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left, right]
      high_voltage: no
    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys, built: {from: 2014-01, to: 2016-05}}
          map: {label: Map radio, tell: A MAP key, built: {from: 2016-05, to: 2018-01}}
    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, with: Calliper 0.05 mm, car: "2016, right-hand drive, map radio"}
      e2: {how: seen, on: 2026-03-09, by: tw, car: {year: unknown, side: unknown, is: {radio: unknown}}}
      e3: {how: seen, on: 2026-03-09, by: tw, car: {built: 2016-06, side: left}}
      e4: {how: maker, on: 2026-03-09, by: tw}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive import cars
from undertrim.derive.evidence.holding import looks, unsaid, years
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every look at a car that leaves open which car it was."""
    record = subject.record
    if not all(subject.intact(place) for place in (("variants",), ("vehicle",))):
        return
    for look in looks(record):
        names = list(unsaid(record, look.car)) if look.at_a_car else []
        if names and subject.intact(look.pointer):
            message = f"'{look.name}' does not say of its car: {', '.join(names)}"
            place = (*look.pointer, "car") if look.car else look.pointer
            yield Finding(place, message, _way_out(record, names), key=True)


def _way_out(record: VehicleRecord, names: list[str]) -> str:
    if names == ["side"]:
        return "write 'side: left' or 'side: right', or 'unknown' if nobody noted it"
    if len(names) == 1 and names != ["year"]:
        labels = [f"'{choice.label}'" for choice in cars.variants(record)[names[0]].choices.values()]
        return f"name a choice of '{names[0]}' as it is labelled, {' or '.join(labels)}, or write 'unknown' in 'is'"
    return f"write for example 'car: {{{', '.join(_example(record, names))}}}', with 'unknown' for what nobody noted"


def _example(record: VehicleRecord, names: list[str]) -> Iterator[str]:
    known = cars.variants(record)
    if "year" in names:
        yield f"year: {sum(years(record)) // 2}"
    if "side" in names:
        yield f"side: {record.vehicle.drive_side[0]}"
    choices = [f"{name}: {next(iter(known[name].choices))}" for name in names if name in known]
    if choices:
        yield f"is: {{{', '.join(choices)}}}"
