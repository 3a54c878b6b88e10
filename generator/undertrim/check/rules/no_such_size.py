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
from collections.abc import Iterator

from undertrim.check.fasteners import held
from undertrim.check.findings import Finding, Subject
from undertrim.check.pins import contacts
from undertrim.record.problem import Level
from undertrim.resources import table

LEVEL = Level.WARNING

_THREAD = re.compile(r"(M|ST)([0-9.]+)")


def check(subject: Subject) -> Iterator[Finding]:
    """Every size that nobody makes."""
    known = table("made-sizes")
    for item in held(subject):
        thread = _THREAD.match(item.fastener.thread)
        if thread and float(thread[2]) not in known["thread"][thread[1]]:
            message = f"no thread '{item.fastener.thread}' in the usual series"
            yield Finding((*item.pointer, "thread"), message, _near(thread[1], float(thread[2])))
        drive = item.fastener.drive
        if drive and drive.family == "hex" and drive.size in known["hexagon"]["seldom"]:
            message = f"'{item.fastener.what}' is seldom found on a car"
            hint = "measure it again; if it is so, allow it with what you measured"
            yield Finding((*item.pointer, item.fastener.kind), message, hint)
    for contact in contacts(subject.record):
        number, _, unit = contact.pin.gauge.partition(" ")
        if unit == "mm2" and float(number) not in known["wire"]["areas"]:
            message = f"no wire of '{contact.pin.gauge}' in the usual series"
            yield Finding((*contact.place, "gauge"), message, _near("wire", float(number)))


def _near(series: str, size: float) -> str:
    known = table("made-sizes")
    sizes = known["wire"]["areas"] if series == "wire" else known["thread"][series]
    below, above = (
        max((one for one in sizes if one < size), default=sizes[0]),
        min((one for one in sizes if one > size), default=sizes[-1]),
    )
    unit = " mm2" if series == "wire" else ""
    letters = "" if series == "wire" else series
    return f"is it '{letters}{below:g}{unit}' or '{letters}{above:g}{unit}'?"
