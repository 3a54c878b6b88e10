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
from undertrim.words import Items, Message, message, one_of, quoted

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every look at a car that leaves open which car it was."""
    record = subject.record
    if not all(subject.intact(place) for place in (("variants",), ("vehicle",))):
        return
    for look in looks(record):
        names = list(unsaid(record, look.car)) if look.at_a_car else []
        if names and subject.intact(look.pointer):
            place = (*look.pointer, "car") if look.car else look.pointer
            yield Finding(place, _said(record, look.name, names), key=True)


def _said(record: VehicleRecord, look: str, names: list[str]) -> Message:
    if names == ["side"]:
        return message("rules/car-not-said/side-not-said", look=look)
    if len(names) == 1 and names != ["year"]:
        labels = one_of(*(quoted(choice.label) for choice in cars.variants(record)[names[0]].choices.values()))
        return message("rules/car-not-said/choice-not-said", look=look, variant=names[0], labels=labels)
    example = ", ".join(_example(record, names))  # as a record has it
    return message("rules/car-not-said/not-said", look=look, names=Items(tuple(names), "comma"), example=example)


def _example(record: VehicleRecord, names: list[str]) -> Iterator[str]:
    known = cars.variants(record)
    if "year" in names:
        yield f"year: {sum(years(record)) // 2}"
    if "side" in names:
        yield f"side: {record.vehicle.drive_side[0]}"
    choices = [f"{name}: {next(iter(known[name].choices))}" for name in names if name in known]
    if choices:
        yield f"is: {{{', '.join(choices)}}}"
