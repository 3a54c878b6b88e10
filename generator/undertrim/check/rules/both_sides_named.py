"""What both sides have alike is said once, without a side.

## What it finds

Two tethers or fasteners of one part that differ in nothing but their `side` and, for tethers, their id and name.

## Why it matters

What is said twice is mended once: the other door keeps the old count.

## Bad

    parts:
      door-panel:
        name: Front door panel
        area: front-door
        each: [left, right]
        release: pull
        held_by:
          - {clip: push, count: 6, side: left}
          - {clip: push, count: 6, side: right}    # here
        tethers:
          window-left: {name: Left window switch plug, kind: plug, serves: [windows], side: left}
          window-right: {name: Right window switch plug, kind: plug, serves: [windows], side: right}    # here

warning: both sides of 'door-panel' have this (say it once, without 'side')
warning: both sides of 'door-panel' have this (say it once, without 'side')

## Good

    parts:
      door-panel:
        name: Front door panel
        area: front-door
        each: [left, right]
        release: pull
        held_by:
          - {clip: push, count: 6, side: left}
          - {clip: push, count: 7, side: right}
        tethers:
          windows: {name: Window switch plug, kind: plug, serves: [windows]}
          mirrors: {name: Mirror switch plug, kind: plug, serves: [mirrors], side: left}
"""

from collections.abc import Iterator
from dataclasses import replace

from undertrim.check.findings import Finding, Subject
from undertrim.check.one_sided import OneSided, one_sided
from undertrim.record.model import Tether
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """The second of each pair."""
    found = list(one_sided(subject.record))
    for number, one in enumerate(found):
        if any(other.side != one.side and _alike(other, one) for other in found[:number]):
            said = message("rules/both-sides-named/alike", name=one.thing.id)
            yield Finding((*one.pointer, "side"), said)


def _alike(one: OneSided, other: OneSided) -> bool:
    """Whether two things of one part are the same but for their side, and what they are called."""
    return one.thing is other.thing and _bare(one) == _bare(other)


def _bare(found: OneSided) -> object:
    if isinstance(found.item, Tether):
        return replace(found.item, side=None, id="", name="")
    return replace(found.item, side=None)
