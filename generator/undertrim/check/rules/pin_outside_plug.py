"""A pin is one of its plug's, and a plug is a plug.

## What it finds

A pin number above rows times columns; a block of ISO 10487 has eight pins whatever else is said. Also a
connector `at` a tether that is no plug but a cable, rod, strap or hose.

## Why it matters

The plug is drawn from these numbers. A pin that has no place is either left out of the drawing or drawn where
another one is.

## Bad

    parts:
      panel:
        name: Door panel
        release: lift
        tethers:
          handle: {name: Inner handle cable, kind: cable}
    connectors:
      main:
        name: Main radio plug
        at: panel/handle    # here
        view: wires
        rows: 2
        columns: 8
        pins:
          16: {function: ground}
          17: {function: battery-feed}    # here
      power:
        name: Power plug
        view: wires
        rows: 2
        columns: 5
        standard: iso-10487-a
        pins:
          A8: {function: ground}
          A9: {function: battery-feed}    # here

error: 'panel/handle' is a cable, no plug (name the plug that these pins are in)
error: no pin '17' in a plug of 2 rows by 8 columns (count rows and columns again, or mend the number)
error: no pin 'A9' in a block of ISO 10487 (its pins are A1 to A8)

## Good

    parts:
      panel:
        name: Door panel
        release: lift
        tethers:
          antenna: {name: Antenna plug, kind: coax}
    connectors:
      antenna:
        name: Antenna plug
        at: panel/antenna
        view: contacts
        rows: 1
        columns: 1
        pins:
          1: {function: antenna-feed}
      both:
        name: Two blocks in one housing
        view: wires
        rows: 4
        columns: 4
        pins:
          A8: {function: ground}
          B8: {function: rear-left-minus}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.check.pins import contacts, tether_of
from undertrim.record.model import Connector, Pin
from undertrim.record.problem import Level
from undertrim.resources import table
from undertrim.words import Message, message, word

LEVEL = Level.ERROR

_ISO_BLOCK = 8
"""Pins of block A and of block B by ISO 10487-1."""


def check(subject: Subject) -> Iterator[Finding]:
    """Every connector on something that is no plug, and every pin without a place."""
    for connector in subject.record.connectors.values():
        found = tether_of(subject.record, connector)
        if found and not table("tethers")["kind"][found[1].kind]["electric"]:
            kind = word("tethers", "kind", found[1].kind, "noun")
            no_plug = message("rules/pin-outside-plug/no-plug", at=connector.at, kind=kind)
            yield Finding(("connectors", connector.id, "at"), no_plug, about=tuple(connector.at.split("/")))
    for contact in contacts(subject.record):
        complaint = _complaint(contact.connector, contact.pin)
        if complaint:
            yield Finding(contact.place, complaint, key=True)


def _complaint(connector: Connector, pin: Pin) -> Message | None:
    letter, number = pin.id.rstrip("0123456789"), int(pin.id.lstrip("ABCD"))
    if connector.standard and number > _ISO_BLOCK:
        return message("rules/pin-outside-plug/outside-block", pin=pin.id, letter=letter, most=_ISO_BLOCK)
    if number > connector.rows * connector.columns:
        return message(
            "rules/pin-outside-plug/outside-plug", pin=pin.id, rows=connector.rows, columns=connector.columns
        )
    return None
