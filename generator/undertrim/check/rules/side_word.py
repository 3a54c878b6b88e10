"""A side is left or right, as seen from the driver's seat facing forward.

## What it finds

Words in texts and ids that give a side by who sits there or by the road: "driver's side", "passenger side",
"nearside", "offside", "kerb side", "N/S". Names of things, such as a driver airbag or a passenger seat, are
left alone.

## Why it matters

The driver sits on the other side in the next country, and the fuse box may not have moved with the wheel.
Pages say "driver's side" where it helps; they work it out from left, right and `mirrors`.

## Bad

    parts:
      radio:
        name: Factory radio
        release: slide
        how: Feed the plugs out on the driver’s side, then on the passenger-side.    # here
        held_by:
          - {screw: T20, count: 2, note: The long ones are off-side.}    # here
        replaced: yes
      nearside-panel:    # here
        name: Panel, N/S front    # here
        release: pull
        refit_how: "Begin on the side of the driver."    # here
    variants:
      fuse:
        ask: Where is the fuse box?
        choices:
          one: {label: Passenger  side, tell: A flap below the glovebox}    # here
          two: {label: Kerbside, tell: A flap on the drivers side of the console}    # here

error: 'driver’s side' does not say left or right (write left or right, as seen from the driver's seat facing forward)
error: 'passenger-side' does not say left or right (write left or right, as seen from the driver's seat facing forward)
error: 'off-side' does not say left or right (write left or right, as seen from the driver's seat facing forward)
error: 'nearside' does not say left or right (write left or right, as seen from the driver's seat facing forward)
error: 'N/S' does not say left or right (write left or right, as seen from the driver's seat facing forward)
error: 'side of the driver' does not say left or right (write left or right, as seen from the driver's seat facing forward)
error: 'Passenger side' does not say left or right (write left or right, as seen from the driver's seat facing forward)
error: 'Kerbside' does not say left or right (write left or right, as seen from the driver's seat facing forward)
error: 'drivers side' does not say left or right (write left or right, as seen from the driver's seat facing forward)

    # file: harnesses/pellworth-knot-p.yaml
    gear:
      kind: harness
      maker: Pellworth
      model: Knot P
      suits: [{vehicle: brindleway/otter-2014-2018, opening: dash}]
      plugs: {power: {8: {function: ground}}}
      note: The long leads reach the passenger side.    # here

error: 'passenger side' does not say left or right (write left or right, as seen from the driver's seat facing forward)

## Good

    parts:
      radio:
        name: Factory radio
        release: slide
        how: Pull the left side first, then slide the trim off sideways, side by side with its twin.
        tethers:
          passenger-lamp: {name: Passenger airbag lamp plug, kind: plug, circuit: restraint, then: leave}
          bag: {name: Driver side airbag plug, kind: plug, circuit: restraint, then: leave}
        replaced: yes
      seat:
        name: Driver seat
        release: lift
        how: Work on the left side of the driver's seat. Hold the lever with a broad screwdriver, sideways.
        refit_how: Check the passenger airbag, the driver airbag and the lamps on both sides.
"""

import re
from collections.abc import Iterable, Iterator

from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.record.fields import Field
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import message

LEVEL = Level.ERROR

_SIDE = re.compile(
    r"""
    \b (?:driver|passenger) (?:['’]?s['’]?)?
        (?: \s+ sides? \b (?! \s+ (?:air\s?)?bag | \s+ (?:impact|curtain) )   # a side airbag is a thing
          | [-_] sides? \b )
    | \b sides? \s+ of \s+ the \s+ (?:driver|passenger) \b (?= \s* (?:[.,;:)] | $) )
    | \b (?:near|off) -? sides? \b
    | \b (?:kerb|curb) [-\s]* sides? \b
    | (?<![\w/]) [no] / s [fr]? (?![\w/])
    """,
    re.IGNORECASE | re.VERBOSE,
)

_MAYBE = re.compile(r"side|/s", re.IGNORECASE)
"""What is in every such phrase: most texts are told by it to have none."""

_UNSPOKEN = ("enum", "pattern", "quantity", "drive")
"""What marks a text in the schema as a word from a list, an id or a value."""

_CONDITION = ("common", ("$defs", "when"))


def check(subject: Subject) -> Iterator[Finding]:
    """Every phrase of a vehicle record that gives a side without saying left or right."""
    yield from _look(subject.fields)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The same for a gear record."""
    yield from _look(subject.fields)


def _look(fields: Iterable[Field]) -> Iterator[Finding]:
    for field in fields:
        for pointer, key, text in _texts(field):
            if not _MAYBE.search(text):
                continue
            phrases = (" ".join(match[0].split()) for match in _SIDE.finditer(text))
            for phrase in dict.fromkeys(phrases):
                yield Finding(pointer, message("rules/side-word/no-side", phrase=phrase), key=key)


def _texts(field: Field) -> Iterator[tuple[Pointer, bool, str]]:
    """(place, whether it is a key, text): free text, and ids where they are given."""
    known = field.node.schema
    spoken = known.get("type") == "string" and not any(word in known for word in _UNSPOKEN)
    if isinstance(field.value, str) and spoken:
        yield field.pointer, False, field.value
    elif isinstance(field.value, dict) and "propertyNames" in known and field.node.home != _CONDITION:
        yield from (((*field.pointer, key), True, key) for key in field.value)
