"""Threads, wires and hexagons come in certain sizes.

## What it finds

A thread that is in no series of sizes, a wire whose area is no usual one, and a hexagon of 9 or 11 mm, which is seldom found on
a car. The series are those of ISO 261 and ISO 1478 (threads) and ISO 6722-1 (wires), from memory; the hexagons are common practice,
no source.

## Why it matters

A size that nobody makes was misread or mistyped. The tech looks for a socket that fits nothing, or trusts a wire with current that
it does not carry.

## Bad

    parts:
      bracket:
        name: Bracket
        release: unscrew
        held_by:
          - {screw: T20, count: 2, thread: ST4.4}    # here
          - {bolt: hex 11 mm, count: 2, thread: M6.5}    # here
    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 1
        columns: 2
        pins:
          1: {function: battery-feed, gauge: 15 mm2}    # here

warning: no thread 'ST4.4' in the usual series (is it 'ST4.2' or 'ST4.8'?)
warning: 'hex 11 mm' is seldom found on a car (measure it again; if it is so, allow it with what you measured)
warning: no thread 'M6.5' in the usual series (is it 'M6' or 'M7'?)
warning: no wire of '15 mm2' in the usual series (is it '12 mm2' or '16 mm2'?)

## Good

    parts:
      bracket:
        name: Bracket
        release: unscrew
        held_by:
          - {screw: T20, count: 2, thread: ST4.2}
          - {bolt: hex 10 mm, count: 2, thread: M6x1}
    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 1
        columns: 2
        pins:
          1: {function: battery-feed, gauge: 1.5 mm2}
          2: {function: ground, gauge: 16 AWG}
"""

import re
from collections.abc import Iterator, Sequence

from undertrim.check.fasteners import held
from undertrim.check.findings import Finding, Subject
from undertrim.check.pins import contacts
from undertrim.record.problem import Level
from undertrim.resources import table
from undertrim.words import message

LEVEL = Level.WARNING

_THREAD = re.compile(r"(M|ST)([0-9.]+)")


def check(subject: Subject) -> Iterator[Finding]:
    """Every size that nobody makes."""
    known = table("made-sizes")
    for item in held(subject):
        thread = _THREAD.match(item.fastener.thread)
        if thread and float(thread[2]) not in known["thread"][thread[1]]:
            below, above = (f"{thread[1]}{size:g}" for size in _near(known["thread"][thread[1]], float(thread[2])))
            found = message("rules/no-such-size/thread", thread=item.fastener.thread, below=below, above=above)
            yield Finding((*item.pointer, "thread"), found)
        drive = item.fastener.drive
        if drive and drive.family == "hex" and drive.size in known["hexagon"]["seldom"]:
            found = message("rules/no-such-size/hexagon", drive=item.fastener.what)
            yield Finding((*item.pointer, item.fastener.kind), found)
    for contact in contacts(subject.record):
        number, _, unit = contact.pin.gauge.partition(" ")
        if unit == "mm2" and float(number) not in known["wire"]["areas"]:
            below, above = (f"{size:g} mm2" for size in _near(known["wire"]["areas"], float(number)))
            found = message("rules/no-such-size/wire", gauge=contact.pin.gauge, below=below, above=above)
            yield Finding((*contact.place, "gauge"), found)


def _near(sizes: Sequence[float], size: float) -> tuple[float, float]:
    """The sizes below and above; at the ends of the series its last ones."""
    return (
        max((one for one in sizes if one < size), default=sizes[0]),
        min((one for one in sizes if one > size), default=sizes[-1]),
    )
