"""A wire's colour can be read: base first, then its tracers.

## What it finds

A pin colour with a word or code that names no wire colour, that has several meanings, or that leaves open
which colour is the base.

## Why it matters

Red with a white tracer and white with a red one are two wires, often in the same plug.

## Bad

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {colour: purpel, function: battery-feed}    # here
          2: {colour: RDWH, function: switched-feed}    # here
          3: {colour: red on white, function: illumination}    # here

error: 'purpel' is no known wire colour (did you mean 'purple'?)
error: 'RDWH' does not say which colour is the base (write 'RD/WH' or 'WH/RD')
error: 'red on white' does not say which colour is the base (write the colours as words, base first, for example 'red/white')

## Good

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {colour: red/white, function: battery-feed}
          2: {colour: RD-WH, function: switched-feed}
          3: {colour: light green with black tracer, function: illumination}
          4: {function: ground}
      second:
        name: Second radio plug
        view: wires
        rows: 1
        columns: 2
        scheme: scandinavian
        pins:
          1: {colour: BL/Y, function: speed}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record import colours
from undertrim.record.problem import Level

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every pin colour that cannot be read."""
    for connector in subject.record.connectors.values():
        for pin in connector.pins.values():
            try:
                _ = colours.parse(pin.colour, connector.scheme) if pin.colour else None
            except colours.ColourError as error:
                place = ("connectors", connector.id, "pins", pin.id, "colour")
                yield Finding(place, error.message, error.hint)
