"""A wire's colour can be read: base first, then its tracers.

## What it finds

The colour of a pin, or of a lead of gear, with a word or code that names no wire colour, that has several
meanings, or that leaves open which colour is the base.

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

    gear:
      kind: harness
      maker: Skerrowe
      model: H-F14
      suits: [{vehicle: kelbrook/finch-2014-2018, opening: dash}]
      plugs:
        radio-main:
          4: {function: battery-feed, colour: yelow}    # here

error: 'yelow' is no known wire colour (did you mean 'yellow'?)

    gear:
      kind: leads
      maker: Skerrowe
      model: Lead 16
      leads:
        battery: {function: battery-feed, colour: yellow}
        ground: {function: ground, colour: BL}    # here

error: 'BL' has no single meaning (it may be blue or black; write the word)

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

from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.record import colours
from undertrim.record.problem import Level
from undertrim.record.source import Pointer

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every pin colour that cannot be read."""
    for connector in subject.record.connectors.values():
        for pin in connector.pins.values():
            place = ("connectors", connector.id, "pins", pin.id, "colour")
            yield from _look(place, pin.colour, connector.scheme)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The same for the leads of gear and the contacts of its plugs."""
    facts = subject.record.gear
    for plug, held in facts.plugs.items():
        for pin, lead in held.items():
            yield from _look(("gear", "plugs", plug, pin, "colour"), lead.colour)
    for name, lead in facts.leads.items():
        yield from _look(("gear", "leads", name, "colour"), lead.colour)


def _look(place: Pointer, colour: str, scheme: str = "") -> Iterator[Finding]:
    try:
        _ = colours.parse(colour, scheme) if colour else None
    except colours.ColourError as error:
        yield Finding(place, error.said)
