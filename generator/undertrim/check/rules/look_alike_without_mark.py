"""A fastener to leave alone can be told from those that come out.

## What it finds

A fastener with `leave: yes` and no `note`, where the same part has another of the same kind and drive that is
taken out in the same car.

## Why it matters

Two of four equal nuts hold the cross-beam of the dash. Without a mark the tech undoes all four.

## Bad

    parts:
      bracket:
        name: Display bracket
        release: lift
        held_by:
          - {nut: hex 10 mm, count: 2}
          - {nut: hex 10 mm, count: 2, leave: yes}    # here

error: nothing tells this 'nut: hex 10 mm' from those that come out (add a 'note' with where it sits or what it holds)

## Good

    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}
    parts:
      bracket:
        name: Display bracket
        release: lift
        held_by:
          - {nut: hex 10 mm, count: 2}
          - {nut: hex 10 mm, count: 2, leave: yes, note: The lower two hold the cross-beam.}
          - {nut: hex 13 mm, count: 2, leave: yes}
          - {bolt: hex 10 mm, count: 1, leave: yes}
      brace:
        name: Brace
        release: lift
        held_by:
          - {screw: T20, count: 2, when: {radio: map}}
          - {screw: T20, count: 2, leave: yes, when: {radio: plain}}
"""

from collections.abc import Iterator

from undertrim.check.fasteners import Held, held
from undertrim.check.findings import Finding, Subject
from undertrim.derive.cars import together
from undertrim.record.model import Fastener
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every look-alike without a mark."""
    everything = list(held(subject))
    unmarked = (item for item in everything if item.fastener.leave == "yes" and not item.fastener.note)
    for item in unmarked:
        if subject.intact(item.pointer) and any(_alike(item, other) for other in everything):
            yield Finding(item.pointer, message("rules/look-alike-without-mark/no-mark", fastener=item.typed))


def _alike(item: Held, other: Held) -> bool:
    """Whether `other` comes out of the same thing, in some car that has both."""
    one, two = item.fastener, other.fastener
    same = (one.kind, one.drive or one.what) == (two.kind, two.drive or two.what)
    return item.pointer[:2] == other.pointer[:2] and two.leave == "no" and same and _meet(one, two)


def _meet(one: Fastener, other: Fastener) -> bool:
    """Whether both are on one side of some car."""
    return together(one.when, other.when) and (None in (one.side, other.side) or one.side == other.side)
