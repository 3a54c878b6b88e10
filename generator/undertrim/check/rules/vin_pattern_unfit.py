"""A pattern of numbers says something that numbers can hold.

## What it finds

In `vin`: a character at position 9, a model year at position 10 that the record does not cover, and one pattern twice.

## Why it matters

Position 9 is a check digit where the regulation of the United States holds (49 CFR 565.15): it changes from car to car, and a pattern that names it
finds one car in eleven. Position 10 is the model year there, and by custom elsewhere, so a year that is not covered finds no car of
the record. Of one pattern that stands twice nobody can say which cars are meant.

## Bad

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
      vin:
        - {pattern: 00BTT11.2}    # here
        - {pattern: 00BTT11..L}    # here
        - {pattern: 00BTT2, when: {radio: map}}
        - {pattern: 00BTT2, when: {radio: plain}}    # here
    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}

warning: the pattern '00BTT11.2' has a check digit at position 9 (put a full stop there)
warning: the pattern '00BTT11..L' has 'L' at position 10, which stands for model year 1990 or 2020; the record has 2014 to 2018 (put a full stop there if these cars do not have their year in it)
warning: the pattern '00BTT2' stands twice (leave one out, or let their conditions be one)

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
      vin:
        - {pattern: 00BTT11..F}
        - {pattern: 00BTT2}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.vin import letter_years
from undertrim.record.model import ModelYears, VehicleRecord
from undertrim.record.problem import Level
from undertrim.words import Message, message, one_of

LEVEL = Level.WARNING

_CHECK, _YEAR = 8, 9
"""Indexes of positions 9 and 10."""


def check(subject: Subject) -> Iterator[Finding]:
    """Each pattern that says what it cannot."""
    patterns = [one.pattern for one in subject.record.vehicle.vin]
    for place, pattern in enumerate(patterns):
        for found in _wrong(subject.record, pattern, patterns[:place]):
            yield Finding(("vehicle", "vin", place), found)


def _wrong(record: VehicleRecord, pattern: str, before: list[str]) -> Iterator[Message]:
    if pattern in before:
        yield message("rules/vin-pattern-unfit/twice", pattern=pattern)
    if _said(pattern, _CHECK):
        yield message("rules/vin-pattern-unfit/check-digit", pattern=pattern)
    if letter := _said(pattern, _YEAR):
        first, last = _covered(record)
        meant = letter_years(letter)
        if not any(first <= year <= last for year in meant):
            says = one_of(*map(str, meant)) if meant else message("rules/vin-pattern-unfit/no-year")
            yield message(
                "rules/vin-pattern-unfit/year", pattern=pattern, letter=letter, years=says, first=first, last=last
            )


def _covered(record: VehicleRecord) -> tuple[int, int]:
    built = record.vehicle.built
    years = record.vehicle.model_years or ModelYears(built.from_.year, built.to.year)
    return years.first, years.last


def _said(pattern: str, index: int) -> str:
    return pattern[index : index + 1].replace(".", "")
