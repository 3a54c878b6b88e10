"""A fuse gives way before its wire does.

## What it finds

A pin, or a lead or contact of gear, whose `fuse` is larger than what a wire of its `gauge` carries by 33 CFR
183.425, Table 5. That table is written for boats, at 30 °C and for the temperature the insulation bears; it is
taken at 105 °C, near what is usual in cars. It knows AWG: a wire in mm2 counts as the next gauge with no more
copper. A wire thinner than the table's thinnest carries less by the power 1.5 of its diameter, which is derived
(heat and surface) and not in the table.

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
          3: {function: illumination, fuse: 15 A, gauge: 0.5 mm2}    # here
          4: {function: reverse, fuse: 10 A, gauge: 24 AWG}    # here

warning: a fuse of '40 A' is above what '2.5 mm2' carries, 35 A by 33 CFR 183.425 (look at fuse and wire again; if the insulation bears more, allow it with that reason)
warning: a fuse of '25 A' is above what '18 AWG' carries, 20 A by 33 CFR 183.425 (look at fuse and wire again; if the insulation bears more, allow it with that reason)
warning: a fuse of '15 A' is above what '0.5 mm2' carries, 13.76 A derived from 33 CFR 183.425 (look at fuse and wire again; if the insulation bears more, allow it with that reason)
warning: a fuse of '10 A' is above what '24 AWG' carries, 7.044 A derived from 33 CFR 183.425 (look at fuse and wire again; if the insulation bears more, allow it with that reason)

    gear:
      kind: leads
      maker: Pellworth
      model: Cord 8
      leads:
        battery: {function: battery-feed, colour: yellow, fuse: 20 A, gauge: 0.75 mm2}    # here

warning: a fuse of '20 A' is above what '0.75 mm2' carries, 18.65 A derived from 33 CFR 183.425 (look at fuse and wire again; if the insulation bears more, allow it with that reason)

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

A lead set within what its wires carry:

    gear:
      kind: leads
      maker: Pellworth
      model: Cord 8
      leads:
        battery: {function: battery-feed, colour: yellow, fuse: 15 A, gauge: 0.75 mm2}
        switched: {function: switched-feed, colour: red, fuse: 5 A}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.check.pins import contacts
from undertrim.derive.electrical.numbers import Amount
from undertrim.derive.electrical.wires import carries
from undertrim.record.gear import Lead
from undertrim.record.model import Pin
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity
from undertrim.words import Value, message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every pin whose fuse is above its wire."""
    for contact in contacts(subject.record):
        yield from _look(contact.place, contact.pin)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The same for the leads of gear and the contacts of its plugs."""
    facts = subject.record.gear
    for name, lead in facts.leads.items():
        yield from _look(("gear", "leads", name), lead)
    for plug, held in facts.plugs.items():
        for pin, lead in held.items():
            yield from _look(("gear", "plugs", plug, pin), lead)


def _look(place: Pointer, wire: Pin | Lead) -> Iterator[Finding]:
    limit = carries(wire.gauge) if wire.gauge else None
    if limit is None or not isinstance(wire.fuse, Quantity) or wire.fuse.value <= limit.current:
        return
    facts: dict[str, Value] = {"fuse": wire.fuse.text, "gauge": wire.gauge, "limit": Amount(limit.current, "A")}
    if limit.derived:
        yield Finding((*place, "fuse"), message("rules/fuse-above-wire/by-what-follows", **facts))
    else:
        yield Finding((*place, "fuse"), message("rules/fuse-above-wire/by-the-table", **facts))
