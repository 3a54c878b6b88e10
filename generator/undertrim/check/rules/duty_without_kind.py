"""The weight of a duty that is lost can be told.

## What it finds

A duty whose key is none of the known ones, and that does not say by `what` which of them it is.

## Why it matters

A lost map is for the owner to accept. A lost hazard switch, tell-tale or chime is not: the law of the country and the
maker's information decide. Which of the two it is follows from the kind of the duty, never from its note.

## Bad

    duties:
      belt-reminder-tone: {kept_by: none, source: e1}    # here

warning: 'belt-reminder-tone' is no known duty, so nobody knows what hangs on it (say by 'what' which one it is)

## Good

    duties:
      belt-reminder-tone: {what: chime, kept_by: stays, source: e1}
      hazard-switch: {kept_by: stays, source: e1}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.fit.duty_kinds import kind_of, kinds
from undertrim.record.nearness import near
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every duty of no known kind."""
    for duty in subject.record.duties.values():
        if kind_of(duty).weight == "unknown" and subject.intact(("duties", duty.id)):
            close = near(duty.id, kinds())
            if close:
                found = message("rules/duty-without-kind/no-kind-near", duty=duty.id, near=close)
            else:
                found = message("rules/duty-without-kind/no-kind", duty=duty.id)
            yield Finding(("duties", duty.id), found)
