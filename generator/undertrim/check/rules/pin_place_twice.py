"""A position of a plug holds one thing, and is a position of that plug.

## What it finds

Two pins, or a pin and a blank, at one place; a number that is among both `pins` and `blanks`; a blank that the
plug has no position for; and a `place` outside its rows and columns. Where a number is without a `place`
follows from `numbering` and `starts`.

## Why it matters

The plug is drawn from these places. One contact hides behind another, or the tech meters the wire beside the
one that was meant.

## Bad

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        numbering: rows
        blanks: ["6", "3", "9"]    # here
        pins:
          1: {function: ground}
          2: {function: speed, place: {row: 1, column: 1}}    # here
          3: {function: illumination}
          4: {function: mute, place: {row: 2, column: 5}}    # here
          5: {function: battery-feed, place: {row: 2, column: 2}}    # here
          7: {function: reverse, place: {row: 2, column: 4}}
          8: {function: switched-feed, place: {row: 2, column: 4}}    # here
      power:
        name: Power plug
        view: wires
        rows: 2
        columns: 5
        standard: iso-10487-a
        blanks: [A9]    # here
        pins:
          A8: {function: ground}

error: '3' is among the blanks and among the pins (take it out of one of them)
error: no position '9' in a plug of 2 rows by 4 columns (count rows and columns again, or mend the number)
error: pin 2 is at row 1, column 1, where pin 1 is (mend 'place', or how the numbers run)
error: pin 4 is at row 2, column 5, which a plug of 2 rows by 4 columns does not have (count rows and columns again, or mend 'place')
error: pin 5 is at row 2, column 2, where blank 6 is (mend 'place', or how the numbers run)
error: pin 8 is at row 2, column 4, where pin 7 is (mend 'place', or how the numbers run)
error: no position 'A9' in a block of ISO 10487 (its positions are A1 to A8)

## Good

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        numbering: snake
        starts: bottom-right
        blanks: ["6", "8"]
        pins:
          1: {function: ground}
          2: {function: speed, place: {row: 1, column: 1}}
          3: {function: illumination}
      second:
        name: Second radio plug
        view: wires
        rows: 2
        columns: 2
        pins:
          1: {function: reverse}
          2: {function: mute, place: {row: 1, column: 1}}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.wiring.plugs import Layout, layout
from undertrim.derive.wiring.standards import block
from undertrim.record.model import Connector, Pin, Place
from undertrim.record.problem import Level
from undertrim.words import Message, message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every position with two things in it, and every one that its plug does not have."""
    for connector in subject.record.connectors.values():
        yield from _blanks(connector)
        yield from _places(connector)


def _blanks(connector: Connector) -> Iterator[Finding]:
    for index, number in enumerate(connector.blanks):
        place = ("connectors", connector.id, "blanks", index)
        letter, count = number.rstrip("0123456789"), int(number.lstrip("ABCD"))
        most = len(block(connector.standard))
        if number in connector.pins:
            yield Finding(place, message("rules/pin-place-twice/blank-and-pin", number=number), about=(number,))
        elif most and count > most:
            found = message("rules/pin-place-twice/blank-outside-block", number=number, letter=letter, most=most)
            yield Finding(place, found)
        elif count > connector.rows * connector.columns:
            rows, columns = connector.rows, connector.columns
            found = message("rules/pin-place-twice/blank-outside", number=number, rows=rows, columns=columns)
            yield Finding(place, found)


def _places(connector: Connector) -> Iterator[Finding]:
    """What is wrong with the places that are recorded pin by pin; numbers alone never meet."""
    found = layout(connector)
    for pin in connector.pins.values():
        place = ("connectors", connector.id, "pins", pin.id, "place")
        if pin.place and pin.id in found.outside:
            size = {"rows": connector.rows, "columns": connector.columns}
            yield Finding(place, message("rules/pin-place-twice/pin-outside", pin=pin.id, **_at(pin.place), **size))
        elif pin.place and (other := _before(connector, pin, found)):
            yield Finding(place, _where_another_is(connector, pin.id, pin.place, other))


def _before(connector: Connector, pin: Pin, found: Layout) -> str:
    """The pin or blank at the place of a pin beside it; of two that are placed by hand the first answers for none."""
    own = [number for number, other in connector.pins.items() if other.place]
    later = own[own.index(pin.id) :]
    others = (number for number in found.shared if found.places[number] == pin.place and number not in later)
    return next(others, "")


def _where_another_is(connector: Connector, pin: str, place: Place, other: str) -> Message:
    if other in connector.pins:
        return message("rules/pin-place-twice/where-pin-is", pin=pin, **_at(place), other=other)
    return message("rules/pin-place-twice/where-blank-is", pin=pin, **_at(place), other=other)


def _at(place: Place) -> dict[str, int]:
    return {"row": place.row, "column": place.column}
