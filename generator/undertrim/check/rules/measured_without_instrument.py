"""What was measured names its instrument.

## What it finds

A piece of evidence that is `measured` without `with`.

## Why it matters

A tape and a calliper do not give the same number. Without the instrument nobody knows how far to trust it.

## Bad

    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, car: "2016"}    # here

warning: 'e1' was measured, and nobody says what with (write the instrument and its step, for example 'with: Calliper 0.05 mm'; what was only looked at is 'seen')

## Good

    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, car: "2016", with: Calliper 0.05 mm}
      e2: {how: seen, on: 2026-03-02, by: rk, car: "2016"}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every measurement without an instrument."""
    yield from _found(subject)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The same for a gear record."""
    yield from _found(subject)


def _found(subject: Subject | GearSubject) -> Iterator[Finding]:
    for item in subject.record.evidence.values():
        if item.how == "measured" and not item.with_.strip() and subject.intact(("evidence", item.id)):
            found = message("rules/measured-without-instrument/no-instrument", evidence=item.id)
            yield Finding(("evidence", item.id), found, key=True)
