"""What hides a fastener is said once.

## What it finds

A fastener whose `where` says that something without a name covers it (`behind-cap`, `under-mat`), and whose `under` names a part that does.

## Why it matters

The tech looks for a second cap below the part that is already off. The step of the named part takes the cover off by itself.

## Bad

    parts:
      cap:
        name: Screw cap
        release: lift
      bracket:
        name: Bracket
        release: unscrew
        held_by:
          - {screw: T20, count: 1, where: behind-cap, under: cap}    # here

warning: 'behind-cap' and 'under: cap' both say what hides it (leave 'where' out if that is the part, or 'under' if it is no part of its own)

## Good

    parts:
      cap:
        name: Screw cap
        release: lift
      bracket:
        name: Bracket
        release: unscrew
        held_by:
          - {screw: T20, count: 1, under: cap}
          - {screw: T20, count: 1, where: behind-cap}
          - {screw: T25, count: 1, where: hinge-side, under: cap}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Fastener
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING

_COVERED = ("behind-cap", "under-mat")


def check(subject: Subject) -> Iterator[Finding]:
    """Every fastener that is hidden by two things."""
    for place, things in (("parts", subject.record.parts), ("preps", subject.record.preps)):
        for name, thing in things.items():
            for number, item in enumerate(thing.held_by):
                if _twice(item):
                    found = message("rules/hidden-twice/twice", where=item.where, under=item.under)
                    yield Finding((place, name, "held_by", number, "where"), found, about=(item.under,))


def _twice(item: Fastener) -> bool:
    return item.where in _COVERED and bool(item.under)
