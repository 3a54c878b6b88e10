"""The model years go with the months of build.

## What it finds

A first model year more than one year off the year in which building began, or a last one more than one year
off the year in which it ended. Common practice, no source: a model year often begins in the year before,
rarely further away.

## Why it matters

The tech searches by model year. A year too few hides the record, a year too many offers it for another car.

## Bad

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-03, to: 2018-09}
      model_years: {first: 2012, last: 2021}    # here
      drive_side: [left]
      high_voltage: no

warning: the first model year is '2012', building began in 2014 (check both: they are rarely more than one year apart)
warning: the last model year is '2021', building ended in 2018 (check both: they are rarely more than one year apart)

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-03, to: 2019-01}
      model_years: {first: 2014, last: 2020}    # here
      drive_side: [left]
      high_voltage: no

warning: the last model year is '2020', building ended in 2018 (check both: they are rarely more than one year apart)

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-09, to: 2018-01}
      model_years: {first: 2015, last: 2018}
      drive_side: [left]
      high_voltage: no
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING

_NEAR = 1
"""Years; common practice."""


def check(subject: Subject) -> Iterator[Finding]:
    """Each end of the model years that is far from that of the building; reversed spans have a rule."""
    built, years = subject.record.vehicle.built, subject.record.vehicle.model_years
    if years is None or years.first > years.last or built.from_.index >= built.to.index:
        return
    began, ended = built.from_.year, (built.to.index - 1) // 12
    if abs(years.first - began) > _NEAR:
        found = message("rules/model-years-apart/first", year=years.first, built=began)
        yield Finding(("vehicle", "model_years", "first"), found)
    if abs(years.last - ended) > _NEAR:
        found = message("rules/model-years-apart/last", year=years.last, built=ended)
        yield Finding(("vehicle", "model_years", "last"), found)
