"""A fuse gives way before its wire does.

## What it finds

A pin whose `fuse` is larger than what a wire of its `gauge` carries by 33 CFR 183.425, Table 5. That table is
written for boats, at 30 °C and for the temperature the insulation bears; it is taken at 105 °C, near what is
usual in cars. It knows AWG: a wire in mm2 counts as the next gauge with no more copper, and a wire thinner than
the table's thinnest carries less than that one.

## Why it matters

With a fuse above the wire, the wire is the fuse. Either number may also be mistaken, and what the tech hangs on
the wire is chosen by them.

## Bad

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: battery-feed, fuse: 40 A, gauge: 2.5 mm2}    # here
          2: {function: switched-feed, fuse: 25 A, gauge: 18 AWG}    # here
          3: {function: illumination, fuse: 20 A, gauge: 0.5 mm2}    # here

warning: a fuse of '40 A' is above what '2.5 mm2' carries, 35 A by 33 CFR 183.425 (look at fuse and wire again; if the insulation bears more, allow it with that reason)
warning: a fuse of '25 A' is above what '18 AWG' carries, 20 A by 33 CFR 183.425 (look at fuse and wire again; if the insulation bears more, allow it with that reason)
warning: a fuse of '20 A' is above what '0.5 mm2' carries, less than 20 A by 33 CFR 183.425 (look at fuse and wire again; if the insulation bears more, allow it with that reason)

## Good

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: battery-feed, fuse: 35 A, gauge: 2.5 mm2}
          2: {function: switched-feed, fuse: 20 A, gauge: 18 AWG}
          3: {function: illumination, fuse: 10 A, gauge: 0.5 mm2}
          4: {function: reverse, fuse: unknown, gauge: 0.5 mm2}
          5: {function: speed, fuse: 100 A}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.check.pins import contacts
from undertrim.check.wires import carries
from undertrim.record.model import Pin
from undertrim.record.problem import Level
from undertrim.record.units import Quantity

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every pin whose fuse is above its wire."""
    for contact in contacts(subject.record):
        message = _message(contact.pin)
        if message:
            hint = "look at fuse and wire again; if the insulation bears more, allow it with that reason"
            yield Finding((*contact.place, "fuse"), message, hint)


def _message(pin: Pin) -> str:
    limit = carries(pin.gauge) if pin.gauge else None
    if limit is None or not isinstance(pin.fuse, Quantity):
        return ""
    above = pin.fuse.value >= limit.current if limit.less else pin.fuse.value > limit.current
    less = "less than " if limit.less else ""
    words = f"a fuse of '{pin.fuse.text}' is above what '{pin.gauge}' carries"
    return f"{words}, {less}{limit.current:g} A by 33 CFR 183.425" if above else ""
