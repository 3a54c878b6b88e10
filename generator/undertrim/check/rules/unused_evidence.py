"""Every piece of evidence backs some fact.

## What it finds

An entry of `evidence` that no `source` in the record names.

## Why it matters

Somebody went to a car and measured. If nothing rests on it, a fact has lost its source or was never written
down.

## Bad

    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk}
      e2: {how: seen, on: 2026-03-09, by: tw}    # here

warning: nothing in this record rests on 'e2' (name it in the 'source' of what it shows, or remove it)

## Good

    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk}
      e2: {how: seen, on: 2026-03-09, by: tw}
    duties:
      clock: {kept_by: stays, source: [e1, e2]}
"""

from collections.abc import Iterator

from undertrim.check import sources
from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every piece of evidence that nothing names; none while a refused `source` may mean it."""
    yield from _found(subject)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The same for a gear record."""
    yield from _found(subject)


def _found(subject: Subject | GearSubject) -> Iterator[Finding]:
    if any("source" in place for place in subject.entry.dropped):
        return
    used = {name for _, name in sources.named(subject.fields)}
    for evidence in subject.record.evidence:
        if evidence not in used:
            found = message("rules/unused-evidence/nothing-rests", evidence=evidence)
            yield Finding(("evidence", evidence), found, key=True)
