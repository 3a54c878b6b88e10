"""Evidence is not dated after today.

## What it finds

A piece of evidence, or a stamp of verification, with a day that has not come yet anywhere on earth.

## Why it matters

A page says how old its data is by the newest day in the record. One mistyped year makes old data young for ever.

## Bad

    evidence:
      e1: {how: measured, on: 2099-03-02, by: rk, car: "2016", with: Calliper 0.05 mm}    # here

error: dated 2099-03-02, a day that has not come yet (correct the day)

## Good

    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, car: "2016", with: Calliper 0.05 mm}
"""

from collections.abc import Iterator
from datetime import date, datetime, timedelta, timezone

from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.derive.evidence.holding import looks
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR

_FIRST = timezone(timedelta(hours=14))
"""Where a new day begins first (Line Islands, UTC+14): a date is after today only where it is so everywhere."""


def check(subject: Subject) -> Iterator[Finding]:
    """Every look that is dated after today."""
    yield from _found(subject)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The same for a gear record."""
    yield from _found(subject)


def _found(subject: Subject | GearSubject) -> Iterator[Finding]:
    now = today()
    for look in looks(subject.record):
        if date.fromisoformat(look.on) > now:
            yield Finding((*look.pointer, "on"), message("rules/evidence-after-today/to-come", day=look.on))


def today() -> date:
    """The day it is where the day begins first."""
    return datetime.now(_FIRST).date()
