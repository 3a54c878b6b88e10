"""Work inside the high-voltage system has no steps here.

## What it finds

A part, preparation or opening that is `inside` the high-voltage system, by its own `high_voltage` or its area's.

## Why it matters

Touching a live high-voltage conductor kills. Opening what holds one is for trained persons by the maker's
procedure, with the car made dead and proved so; no step of ours is safe there.

## Bad

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: yes
    areas:
      boot: {high_voltage: inside}
      dash: {high_voltage: clear}
    parts:
      converter:    # here
        name: Converter
        area: boot
        release: lift
        how: Lift it out.
      junction:    # here
        name: Junction box
        area: dash
        high_voltage: inside
        release: unscrew

error: 'converter' is inside the high-voltage system: that is work for trained persons by the maker's procedure (leave it out, and what can only be reached through it)
error: 'junction' is inside the high-voltage system: that is work for trained persons by the maker's procedure (leave it out, and what can only be reached through it)

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: yes
    areas:
      boot: {high_voltage: inside}
      console: {high_voltage: near}
    parts:
      boot-lamp:
        name: Boot lamp
        area: boot
        high_voltage: clear
        release: unclip
      console-side:
        name: Console side
        area: console
        release: pull
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.procedure.node import home
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Everything that can be worked on and is inside."""
    for thing in (thing for thing in subject.record.things if subject.record.high_voltage(thing) == "inside"):
        yield Finding(home(thing), message("rules/voltage-inside/inside", thing=thing.id), key=True)
