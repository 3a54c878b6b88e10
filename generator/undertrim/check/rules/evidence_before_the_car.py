"""Nobody looked at a car before it was built.

## What it finds

A piece of evidence, or a stamp of verification, that is dated before the first month of build of this record, or before the
month or year of its own car allows.

## Why it matters

The date is mistyped, or the evidence came with a record that was copied. Either way nobody can tell how old the fact is.

## Bad

    evidence:
      e1: {how: told, on: 1990-03-02, by: rk}    # here
      e2: {how: seen, on: 2015-11-30, by: rk, car: "2017"}    # here
      e3: {how: seen, on: 2016-04-30, by: rk, car: {year: 2016, built: 2016-05}}    # here

error: dated 1990-03-02, and the first car of this record was built in 2014-01 (correct the day, or take out what came from another record)
error: dated 2015-11-30, and this car was not built before 2016-01 (correct the day or the car)
error: dated 2016-04-30, and this car was not built before 2016-05 (correct the day or the car)

## Good

    evidence:
      e1: {how: maker, on: 2014-01-01, by: rk}
      e2: {how: seen, on: 2016-01-02, by: rk, car: "2017"}
      e3: {how: seen, on: 2016-05-31, by: rk, car: {built: 2016-05}}
"""

from collections.abc import Iterator
from datetime import date

from undertrim.check.findings import Finding, Subject
from undertrim.derive.evidence.holding import first_day, looks
from undertrim.record.model import Month
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every look that is dated too early."""
    for look in looks(subject.record):
        start = first_day(subject.record, None)
        day, first = date.fromisoformat(look.on), first_day(subject.record, look.car)
        if day < start:
            found = message("rules/evidence-before-the-car/before-any-car", day=look.on, month=_month(start))
            yield Finding((*look.pointer, "on"), found)
        elif day < first:
            found = message("rules/evidence-before-the-car/before-this-car", day=look.on, month=_month(first))
            yield Finding((*look.pointer, "on"), found)


def _month(day: date) -> Month:
    return Month(day.year, day.month)
