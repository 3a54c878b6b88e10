"""Screws, bolts, nuts, clips, scrivets and hooks are counted.

## What it finds

A fastener with no `count`, or with a count of 0. Bonds are not counted, and a look-alike that is left alone
need not be. `count: unknown` is an answer.

## Why it matters

The tally at the end of a job tells the tech whether a screw is left over. It is worth nothing if one line of
it is missing.

## Bad

    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by:
          - {screw: T20, at: {top: 2}}    # here
          - {screw: T20, length: 30 mm}    # here
          - {clip: push, count: 0}    # here
      tray:
        name: Phone tray
        release: swing
        held_by: [{clip: push, count: 4}, {hook: tab}]    # here

error: 'screw: T20' has no count (write 'count: 2': that is what its edges add up to)
error: 'screw: T20' has no count (count them, or write 'count: unknown')
error: 'clip: push' has a count of 0 (remove it if there is none, or write 'count: unknown')
error: 'hook: tab' has no count (count them, or write 'count: unknown')

    preps:
      lever:
        name: Lever in neutral
        sets: {gear: neutral}
        how: Undo the cover and press the release.
        held_by: [{nut: hex 10 mm}]    # here

error: 'nut: hex 10 mm' has no count (count them, or write 'count: unknown')

## Good

    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by:
          - {screw: T20, count: 2}
          - {screw: T20, leave: yes, note: Holds the wiper arm.}
          - {clip: push, count: unknown}
      liner:
        name: Door liner
        release: peel
        held_by: [{bond: butyl}]
"""

from collections.abc import Iterator

from undertrim.check.fasteners import Held, held
from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Fastener
from undertrim.record.problem import Level
from undertrim.resources import table
from undertrim.words import Message, message

LEVEL = Level.ERROR

_HOOK = "hook"
"""Not in the tally, since hooks stay on their part, but the tech wants to know how many must let go."""


def check(subject: Subject) -> Iterator[Finding]:
    """Every fastener whose count is missing or 0."""
    for item in held(subject):
        fastener = item.fastener
        if not (table("fasteners")[fastener.kind]["counted"] or fastener.kind == _HOOK):
            continue
        pointer = (*item.pointer, "count")
        if fastener.count == 0:
            yield Finding(pointer, message("rules/fastener-without-count/none-of-it", fastener=item.typed))
        elif fastener.count is None and fastener.leave == "no":
            yield Finding(pointer, _uncounted(subject, item))


def _uncounted(subject: Subject, item: Held) -> Message:
    if item.fastener.at and subject.intact((*item.pointer, "at")):
        total = _sum(item.fastener)
        return message("rules/fastener-without-count/no-count-but-edges", fastener=item.typed, total=total)
    return message("rules/fastener-without-count/no-count", fastener=item.typed)


def _sum(fastener: Fastener) -> int:
    return sum(fastener.at.values())
