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

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level

LEVEL = Level.WARNING

_WAY_OUT = "write the instrument and its step, for example 'with: Calliper 0.05 mm'; what was only looked at is 'seen'"


def check(subject: Subject) -> Iterator[Finding]:
    """Every measurement without an instrument."""
    for item in subject.record.evidence.values():
        if item.how == "measured" and not item.with_.strip() and subject.intact(("evidence", item.id)):
            message = f"'{item.id}' was measured, and nobody says what with"
            yield Finding(("evidence", item.id), message, _WAY_OUT, key=True)
