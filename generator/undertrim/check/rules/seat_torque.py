"""A fastener that holds a seat, a belt or a wheel has the maker's torque.

## What it finds

A screw, bolt or nut with `role: seat`, `belt` or `wheel` without `torque`, and one with a torque but no evidence
for it, neither in its own `source` nor in that of the part or preparation around it. `torque: unknown` passes:
it is shown as a thing to look up. Those with `leave: yes` are not turned and need none.

## Why it matters

There is no usual value for what holds people in a crash. A number without a source is a guess.

## Bad

    parts:
      seat:
        name: Driver seat
        release: lift
        held_by:
          - {bolt: T50, count: 4, thread: M10, role: seat}    # here
          - {bolt: T45, count: 1, role: belt, torque: 40 N.m}    # here

error: 'bolt: T50' holds a seat and has no torque (write the maker's torque, or 'torque: unknown')
error: torque '40 N.m' of what holds a belt has no source (name the evidence it was read in, or write 'torque: unknown')

## Good

    evidence:
      e2: {how: maker, on: 2026-03-02, by: rk}
    parts:
      seat:
        name: Driver seat
        release: lift
        source: e2
        held_by:
          - {bolt: T50, count: 4, thread: M10, role: seat, torque: 45 N.m}
      buckle:
        name: Buckle
        release: unscrew
        held_by:
          - {bolt: T45, count: 1, role: belt, torque: unknown}
          - {bolt: T45, count: 1, role: belt, torque: 40 N.m, source: e2}
          - {bolt: T45, count: 1, role: belt, leave: yes}
          - {bolt: T45, count: 1}
"""

from collections.abc import Iterator

from undertrim.check.fasteners import held
from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every fastener with lives on it and no torque that somebody read."""
    for item in held(subject):
        fastener = item.fastener
        if fastener.role == "ordinary" or fastener.leave == "yes" or not fastener.turned:
            continue
        if fastener.torque is None and subject.intact((*item.pointer, "torque")):
            role, what = message(f"roles/{fastener.role}"), fastener.what
            found = message("rules/seat-torque/no-torque", kind=fastener.kind, what=what, role=role)
            yield Finding(item.pointer, found)
        elif isinstance(fastener.torque, Quantity) and not (fastener.source or item.thing.source):
            role, torque = message(f"roles/{fastener.role}"), fastener.torque.text
            yield Finding((*item.pointer, "torque"), message("rules/seat-torque/no-source", torque=torque, role=role))
