"""A span of time begins before it ends.

## What it finds

`built` whose `from` is not before its `to`, and `model_years` whose `first` is after its `last`.

## Why it matters

The record covers no car at all: nobody who looks the car up will find it.

## Bad

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2018-09, to: 2014-03}    # here
      model_years: {first: 2018, last: 2014}    # here
      drive_side: [left]
      high_voltage: no

error: built from '2018-09' to '2014-03' covers no month (exchange the two)
error: the first model year '2018' is after the last, '2014' (exchange the two)

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-03, to: 2014-03}    # here
      drive_side: [left]
      high_voltage: no

error: built from '2014-03' to '2014-03' covers no month ('to' is the first month no longer covered: for that one month write '2014-04')

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-12, to: 2015-01}
      model_years: {first: 2015, last: 2015}
      drive_side: [left]
      high_voltage: no
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Month
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """The spans of the vehicle that run backwards or are empty."""
    vehicle = subject.record.vehicle
    built, years = vehicle.built, vehicle.model_years
    if built.from_ == built.to:
        found = message("rules/year-range/no-month", month=built.to, next=_month(built.to.index + 1))
        yield Finding(("vehicle", "built"), found)
    elif built.from_.index > built.to.index:
        found = message("rules/year-range/built-backwards", first=built.from_, last=built.to)
        yield Finding(("vehicle", "built"), found)
    if years and years.first > years.last:
        found = message("rules/year-range/years-backwards", first=years.first, last=years.last)
        yield Finding(("vehicle", "model_years"), found)


def _month(index: int) -> Month:
    return Month(index // 12, index % 12 + 1)
