"""A fastener says nothing that its kind does not have.

## What it finds

`or_drive` on what no tool turns, or the same as the first drive; `diameter` on anything but a rivet; `torque` or
`thread` on a rivet; and `reuse: yes` on one that is spoilt as it comes out.

## Why it matters

The tools list and the list of what to buy follow from these fields. One that cannot be so is a slip in the line above it.

## Bad

    parts:
      shelf:
        name: Shelf
        release: lift
        held_by:
          - {clip: push, count: 4, or_drive: T20}    # here
          - {screw: T20, count: 2, or_drive: T20}    # here
          - {screw: PH2, count: 2, diameter: 4 mm}    # here
          - {rivet: blind, count: 2, reuse: yes}    # here
          - {rivet: blind, count: 2, thread: M4}    # here

error: 'or_drive' on 'clip: push', which no tool turns (take it out, or name the fastener by what turns it)
error: 'or_drive' on 'screw: T20' is the same as its first drive (take it out, or write the other tool that turns it)
error: 'diameter' on 'screw: PH2', which is no rivet (write 'thread' for what is turned)
error: 'reuse: yes' on 'rivet: blind', which is spoilt as it comes out (take it out: a new one is always fitted)
error: 'thread' on 'rivet: blind', which has none (take it out)

## Good

    parts:
      shelf:
        name: Shelf
        release: lift
        held_by:
          - {screw: T20, or_drive: hex 7 mm, count: 4}
          - {rivet: blind, diameter: 4.8 mm, length: 12 mm, count: 2}
          - {rivet: solid, count: 2, reuse: no}
          - {clip: push, count: 2, reuse: yes}
"""

from collections.abc import Iterator

from undertrim.check.fasteners import Held, held
from undertrim.check.findings import Finding, Subject
from undertrim.record import drives
from undertrim.record.problem import Level
from undertrim.words import Message, message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every field that its fastener cannot have."""
    typed = {item.pointer: item.value for item in subject.fields}
    for item in held(subject):
        reuse = (*item.pointer, "reuse")
        if typed.get(reuse) == "yes" and item.fastener.single_use:
            yield Finding(reuse, message("rules/misplaced-fastener-field/always-new", fastener=item.typed))
        for name, found in _misplaced(item):
            yield Finding((*item.pointer, name), found)


def _misplaced(item: Held) -> Iterator[tuple[str, Message]]:
    fastener, typed = item.fastener, item.typed
    if fastener.or_drive and not fastener.turned:
        yield "or_drive", message("rules/misplaced-fastener-field/not-turned", fastener=typed)
    elif fastener.or_drive and drives.parse(fastener.or_drive) == fastener.drive:
        yield "or_drive", message("rules/misplaced-fastener-field/same-drive", fastener=typed)
    if fastener.diameter and not fastener.plain_shank:
        yield "diameter", message("rules/misplaced-fastener-field/no-rivet", fastener=typed)
    for name in ("thread", "torque") if fastener.plain_shank else ():
        if getattr(fastener, name):
            yield name, message("rules/misplaced-fastener-field/has-none", field=name, fastener=typed)
