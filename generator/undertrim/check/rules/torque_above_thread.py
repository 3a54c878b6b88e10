"""A torque is no larger than the thread bears.

## What it finds

A torque above what a steel screw of class 8.8 is given on the same coarse thread in a steel joint (secondary
text; the formula with the proof load of ISO 898-1 agrees). A stronger screw may take more, so it is a warning.
Fine pitches, tapping screws and what holds a seat, a belt or a wheel are left alone.

## Why it matters

Pound-inches read as newton metres, or a slipped point, shear the bolt or pull the thread out of the bracket.

## Bad

    parts:
      amplifier:
        name: Amplifier
        release: unscrew
        held_by:
          - {nut: hex 10 mm, count: 3, thread: M6, torque: 88 N.m}    # here
          - {bolt: hex 13 mm, count: 1, thread: M8x1.25, torque: 20 lbf.ft}    # here

warning: torque '88 N.m' is more than a class 8.8 screw M6 bears, 10.4 N.m (check number and unit, or allow it with the screw's class)
warning: torque '20 lbf.ft' is more than a class 8.8 screw M8 bears, 25 N.m (check number and unit, or allow it with the screw's class)

## Good

    evidence:
      e2: {how: maker, on: 2026-03-02, by: rk}
    parts:
      amplifier:
        name: Amplifier
        release: unscrew
        held_by:
          - {nut: hex 10 mm, count: 3, thread: M6, torque: 10 N.m}
          - {nut: hex 10 mm, count: 3, thread: M6, torque: 88 in-lb}
          - {bolt: hex 16 mm, count: 1, thread: M10x1.25, torque: 55 N.m}
          - {bolt: T50, count: 1, thread: M10, torque: 60 N.m, role: seat, source: e2}
          - {bolt: T50, count: 1, thread: M10, torque: unknown}
          - {screw: T20, count: 1, thread: ST4.2, torque: 2 N.m}
"""

from collections.abc import Iterator

from undertrim.check.fasteners import held
from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every torque above the row of its thread."""
    for item in held(subject):
        fastener = item.fastener
        name, limit = _limit(fastener.thread)
        torque = fastener.torque
        if limit is None or fastener.role != "ordinary" or not isinstance(torque, Quantity):
            continue
        if torque.value - torque.step > limit:
            above = message("rules/torque-above-thread/above", torque=torque.text, thread=name, limit=limit)
            yield Finding((*item.pointer, "torque"), above)


def _limit(thread: str) -> tuple[str, float | None]:
    """(name, N.m) for a coarse thread; None for any other."""
    name, _, pitch = thread.partition("x")
    row = table("torques")["coarse"].get(name)
    coarse = row is not None and (not pitch or float(pitch) == float(row["pitch"]))
    return name, row["torque"] if row and coarse else None
