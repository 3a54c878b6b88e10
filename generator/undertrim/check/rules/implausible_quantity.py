"""A quantity lies within what is usual for its field.

## What it finds

A value outside the range that the schema gives beside the field. The ranges are common practice, no source:
they are wide, and a value outside one may be right.

## Why it matters

Inches read as millimetres and a slipped point make numbers that look like numbers. The gear that was chosen
by them does not fit.

## Bad

    openings:
      dash:
        name: Radio opening
        kind: receiver
        behind: [radio]
        kit: needed
        face: {width: 182 mm, height: 53 cm}    # here
        depth: {clear: 6.8 mm, datum: face}    # here

warning: height '53 cm' is outside the usual 40 mm to 300 mm (is it '53 mm'?)
warning: clear depth '6.8 mm' is outside the usual 20 mm to 500 mm (is it '6.8 in'?)

    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by: [{screw: T20, count: 2, torque: 3000 in-lb}]    # here
        takes: 2 s    # here

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          4: {function: wheel-buttons}
    ladders:
      wheel:
        pin: main/4
        idle: none
        tolerance: 0.05 %    # here
        buttons: {next: 330 ohm}

warning: torque '3000 in-lb' is outside the usual 0.2 N.m to 250 N.m (check number and unit)
warning: time '2 s' is outside the usual 5 s to 3 h (is it '2 min' or '2 h'?)
warning: tolerance '0.05 %' is outside the usual 0.1 % to 40 % (is it '5 %'?)

    gear:
      kind: speaker
      maker: Sandmartin
      model: Bank 65
      basket: {shape: round, diameter: 130 mm}
      flange: {shape: round, diameter: 169 mm}
      depth: 2.19 mm    # here
      impedance: 4 kohm    # here

warning: mounting depth '2.19 mm' is outside the usual 20 mm to 150 mm (is it '2.19 in'?)
warning: impedance '4 kohm' is outside the usual 1 ohm to 16 ohm (is it '4 ohm'?)

## Good

    openings:
      dash:
        name: Radio opening
        kind: receiver
        behind: [radio]
        kit: needed
        face: {width: 100 mm, height: 2 3/16 in}
        depth: {clear: unknown}
    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by: [{screw: T20, count: 2, torque: 18 in-lb}]
        takes: 5 s

The same depth with the right unit:

    gear:
      kind: speaker
      maker: Sandmartin
      model: Bank 65
      basket: {shape: round, diameter: 130 mm}
      flange: {shape: round, diameter: 169 mm}
      depth: 2.19 in
      impedance: 4 ohm
"""

from collections.abc import Iterable, Iterator
from typing import Any

from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.record import units
from undertrim.record.equivalents import with_name
from undertrim.record.fields import Field
from undertrim.record.numerals import split
from undertrim.record.problem import Level
from undertrim.record.unit_table import kinds
from undertrim.record.units import Quantity, UnitError
from undertrim.words import Message, message, one_of, quoted

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every quantity of a vehicle record outside its usual range."""
    yield from _look(subject.fields)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The same for a gear record."""
    yield from _look(subject.fields)


def _look(fields: Iterable[Field]) -> Iterator[Finding]:
    for field in fields:
        spec = field.node.schema.get("quantity", {})
        quantity = _read(field.value, spec) if "plausible" in spec else None
        if quantity and not _usual(quantity, spec):
            yield Finding(field.pointer, _said(field, quantity, spec))


def _said(field: Field, quantity: Quantity, spec: dict[str, Any]) -> Message:
    low, high = spec["plausible"]
    facts = {"field": field.node.schema["title"], "value": quantity.text, "low": low, "high": high}
    if meant := _meant(quantity, spec):
        return message("rules/implausible-quantity/another-unit", meant=one_of(*map(quoted, meant)), **facts)
    return message("rules/implausible-quantity/outside", **facts)


def _read(value: object, spec: dict[str, Any]) -> Quantity | None:
    """The quantity; None for a word such as 'unknown', and for what the schema refuses."""
    try:
        return units.parse(value, spec["kind"]) if isinstance(value, str) else None
    except UnitError:
        return None


def _usual(quantity: Quantity, spec: dict[str, Any]) -> bool:
    low, high = (units.parse(end, spec["kind"]).value for end in spec["plausible"])
    return low <= quantity.value <= high


def _meant(quantity: Quantity, spec: dict[str, Any]) -> list[str]:
    """The same number in the units in which it would be usual."""
    return [text for text in _respelt(quantity) if _usual(units.parse(text, spec["kind"]), spec)]


def _respelt(quantity: Quantity) -> Iterator[str]:
    """The number as typed with each of the units that people use for its kind."""
    kind = kinds()[quantity.kind]
    numeral, _ = split(units.unbound(quantity.text), kind.example)
    for unit in filter(None, map(kind.find, kind.offer)):
        if not numeral.parts or unit.fractions:
            yield with_name(numeral.text, unit)
    if kind.of_one and numeral.value < 1:
        yield units.hundredfold(numeral, kind)
