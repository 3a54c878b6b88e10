"""What only one side has is at a part that is done on both sides.

## What it finds

A tether or fastener with a `side`, at a part or preparation that is not done on that side: one without `each`, or one whose `each`
leaves the side out.

## Why it matters

A part that exists once has no other side, so nothing is told apart: the step shows the plug in every car, or in none.

## Bad

    parts:
      door-panel:
        name: Front door panel
        area: front-door
        release: pull
        held_by: [{clip: push, count: 6}, {screw: T20, count: 1, side: right}]    # here
        tethers:
          mirrors: {name: Mirror switch plug, kind: plug, serves: [mirrors], side: left}    # here
      rear-door-panel:
        name: Rear door panel
        area: rear-door
        each: [left]
        release: pull
        held_by: [{clip: push, count: 6}]
        tethers:
          child-lock: {name: Lock switch plug, kind: plug, serves: [locks], side: right}    # here

error: 'door-panel' is not done on the right (leave 'side' out, or give the part 'each: [left, right]')
error: 'door-panel' is not done on the left (leave 'side' out, or give the part 'each: [left, right]')
error: 'rear-door-panel' is not done on the right (leave 'side' out, or give the part 'each: [left, right]')

## Good

    parts:
      door-panel:
        name: Front door panel
        area: front-door
        each: [left, right]
        release: pull
        held_by: [{clip: push, count: 6}]
        tethers:
          windows: {name: Window switch plug, kind: plug, serves: [windows]}
          mirrors: {name: Mirror switch plug, kind: plug, serves: [mirrors], side: left}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.check.one_sided import one_sided
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every side at something that is not done there."""
    for found in one_sided(subject.record):
        if found.side not in found.each:
            side = message(f"sides/{found.side}")
            said = message("rules/side-without-sides/not-done-there", name=found.thing.id, side=side)
            yield Finding((*found.pointer, "side"), said)
