"""The numbers along the edges add up to the count.

## What it finds

A fastener whose `at` numbers come to more or less than its `count`, or to a sum although the count is said to
be unknown.

## Why it matters

Nobody can tell which of the two is right: the tech looks for a clip that is not there, or tears one that is.

## Bad

    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by:
          - {clip: push, count: 6, at: {top: 2, left: 2, right: 1}}    # here
          - {screw: T20, count: 4, at: {corners: 4, centre: 1}}    # here
      tray:
        name: Phone tray
        release: slide
        held_by:
          - {clip: metal, count: unknown, at: {left: 3, right: 3}}    # here

error: the edges of 'clip: push' add up to 5, the count is 6 (top 2, left 2, right 1: count again)
error: the edges of 'screw: T20' add up to 5, the count is 4 (corners 4, centre 1: count again)
error: the edges of 'clip: metal' add up to 6, yet the count is 'unknown' (write 'count: 6')

## Good

    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by:
          - {clip: push, count: 6, at: {top: 2, left: 2, right: 2}}
          - {screw: T20, count: unknown}
          - {screw: T25, count: 2}
      liner:
        name: Door liner
        release: peel
        held_by: [{bond: tape, at: {top: 1, bottom: 1}}]
"""

from collections.abc import Iterator

from undertrim.check.fasteners import held
from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Blank, Fastener
from undertrim.record.problem import Level
from undertrim.words import Items, message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every fastener whose edges contradict its count; a missing count or one of 0 has a rule of its own."""
    for item in held(subject):
        pointer = (*item.pointer, "at")
        fastener = item.fastener
        total = sum(fastener.at.values())
        if not fastener.at or not fastener.count or fastener.count == total:
            continue
        if fastener.count is Blank.UNKNOWN:
            found = message("rules/edges-do-not-add-up/count-unknown", fastener=item.typed, total=total)
        else:
            counts = {"total": total, "stated": fastener.count}
            edges = _edges(fastener)
            found = message("rules/edges-do-not-add-up/another-count", fastener=item.typed, edges=edges, **counts)
        yield Finding(pointer, found)


def _edges(fastener: Fastener) -> Items:
    edges = fastener.at.items()
    each = (message("rules/edges-do-not-add-up/edge", edge=edge, number=number) for edge, number in edges)
    return Items(tuple(each), "comma")
