"""What differs from the usual use of a standard block was proved with a meter.

## What it finds

A pin of an ISO 10487 block with another function than the contact usually has, and without `metered: yes`.
The standard fixes the shape; the use of its contacts is practice that three secondary texts agree on. A `spare`
contact claims nothing and is left alone.

## Why it matters

In some cars A4 and A7 have changed places: then the permanent feed is where the receiver wants the switched
one, and it forgets its stations or flattens the battery. As often, somebody took it from a table.

## Bad

    connectors:
      power:
        name: Power plug
        view: wires
        rows: 2
        columns: 4
        standard: iso-10487-a
        pins:
          A2: {function: reverse}
          A4: {function: switched-feed}    # here
          A6: {function: speed}    # here
          A7: {function: battery-feed}    # here
          8: {function: illumination}    # here
      speakers:
        name: Speaker plug
        view: wires
        rows: 2
        columns: 4
        standard: iso-10487-b
        pins:
          B3: {function: front-right-minus}    # here

warning: A4 has 'switched-feed' here and 'battery-feed' by ISO 10487 block A (A4 and A7 are known to be exchanged in some cars: meter both, then write 'metered: yes')
warning: A6 has 'speed' here and 'illumination' by ISO 10487 block A (meter it and write 'metered: yes', or mend the function)
warning: A7 has 'battery-feed' here and 'switched-feed' by ISO 10487 block A (A4 and A7 are known to be exchanged in some cars: meter both, then write 'metered: yes')
warning: A8 has 'illumination' here and 'ground' by ISO 10487 block A (meter it and write 'metered: yes', or mend the function)
warning: B3 has 'front-right-minus' here and 'front-right-plus' by ISO 10487 block B (meter it and write 'metered: yes', or mend the function)

## Good

    connectors:
      power:
        name: Power plug
        view: wires
        rows: 2
        columns: 4
        standard: iso-10487-a
        pins:
          A1: {function: spare}
          A3: {function: chime}
          A4: {function: switched-feed, metered: yes}
          A5: {function: amplifier-turn-on}
          A7: {function: battery-feed, metered: yes}
          A8: {function: ground}
      main:
        name: Plug of no standard
        view: wires
        rows: 2
        columns: 4
        pins:
          A4: {function: switched-feed}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.wiring.standards import Expected, exchanged, expected
from undertrim.record.model import Connector, Pin
from undertrim.record.problem import Level
from undertrim.words import Message, Value, message, word

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every pin that differs from the standard its plug follows, and was not metered."""
    for connector in subject.record.connectors.values():
        for pin in connector.pins.values():
            usual = expected(connector.standard, _contact(connector, pin))
            if usual and not usual.allows(pin.function) and pin.function != "spare" and pin.metered == "no":
                place = ("connectors", connector.id, "pins", pin.id, "function")
                yield Finding(place, _said(connector, pin, usual))


def _contact(connector: Connector, pin: Pin) -> str:
    """The contact as the standard names it: a number alone is one of the plug's own block."""
    return f"{connector.standard[-1:].upper()}{pin.id}" if pin.id.isdecimal() else pin.id


def _said(connector: Connector, pin: Pin, usual: Expected) -> Message:
    standard = word("plug-standards", connector.standard, "title")
    facts: dict[str, Value] = {"pin": usual.pin, "function": pin.function, "usual": usual.function}
    if pin.id in exchanged(connector):
        return message("rules/exchanged-without-meter/exchanged", standard=standard, **facts)
    return message("rules/exchanged-without-meter/differs", standard=standard, **facts)
