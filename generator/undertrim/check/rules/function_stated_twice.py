"""A function is stated once for each car.

## What it finds

An entry of `functions` that also stands on a pin at the radio, two entries on one function, and one function on two pins at one end of the wires (the
radio, the loom of a door, a speaker), where both apply to one car.
Ground, spare pins and data lines may be there several times, and so may anything where a `note` on one of the
two pins gives the reason: some plugs have two feeds.

## Why it matters

Two answers to "where is the feed?" are none. The tech joins the wire that was forgotten when the other was
mended.

## Bad

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: speed}
          2: {function: front-left-plus}
          3: {function: ground}
          4: {function: front-left-plus}    # here
      second:
        name: Second radio plug
        view: wires
        rows: 1
        columns: 4
        pins:
          1: {function: front-left-plus}    # here
          2: {function: ground}
    functions:
      speed: {by: data}    # here
      reverse: {by: wire, note: At the lamp}
      reverse-too: {function: reverse, by: data}    # here

error: 'front-left-plus' is on pin 2 of 'main' and on pin 4 of 'main' (keep one, say with 'when' which cars have which, or say in a 'note' why there are two)
error: 'front-left-plus' is on pin 2 of 'main' and on pin 1 of 'second' (keep one, say with 'when' which cars have which, or say in a 'note' why there are two)
error: 'speed' is by 'data' here and on pin 1 of 'main' (remove it here, or say with 'when' which cars have which)
error: 'reverse' is also said under 'reverse' (keep one, or say with 'when' which cars have which)

## Good

    variants:
      sound:
        ask: Is there an amplifier?
        choices:
          plain: {label: No amplifier}
          amplified: {label: Amplifier}
    parts:
      brace:
        name: Brace of the plain radio
        when: {sound: plain}
        release: slide
        tethers:
          bass: {name: Bass plug, kind: plug}
      amplifier:
        name: Amplifier
        release: slide
        tethers:
          bass: {name: Bass plug, kind: plug, when: {sound: amplified}}
    connectors:
      bass:
        name: Bass plug of the plain radio
        at: brace/bass
        view: wires
        rows: 1
        columns: 2
        pins:
          1: {function: bass-plus}
      bass-amplified:
        name: Bass plug of the amplifier
        at: amplifier/bass
        view: wires
        rows: 1
        columns: 2
        pins:
          1: {function: bass-plus}
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: amplifier-turn-on, when: {sound: amplified}}
          2: {function: ground}
          3: {function: ground}
          4: {function: data-high}
          5: {function: data-high}
          6: {function: battery-feed}
          7: {function: battery-feed, note: A second feed on a fuse of its own; both carry the amplifier.}
          8: {function: battery-feed, note: The third.}
      amplified:
        name: Amplifier plug
        when: {sound: amplified}
        view: wires
        rows: 1
        columns: 4
        pins:
          1: {function: front-left-plus}
      plain:
        name: Speaker plug
        when: {sound: plain}
        view: wires
        rows: 1
        columns: 4
        pins:
          1: {function: front-left-plus}
    functions:
      amplifier-turn-on: {by: absent, when: {sound: plain}}
      speed: {by: data}
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping

from undertrim.check.findings import Finding, Subject
from undertrim.check.pins import Contact, contacts
from undertrim.derive.cars import together
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR

_MANY = ("ground", "spare", "data-high", "data-low", "data-single")


def check(subject: Subject) -> Iterator[Finding]:
    """Every function that some car has from two places."""
    pins: dict[tuple[str, str], list[Contact]] = defaultdict(list)
    for contact in contacts(subject.record):
        pins[contact.pin.function, contact.connector.end].append(contact)
    for (function, _), found in pins.items():
        if function not in _MANY:
            yield from _twice(function, found)
    yield from _two_entries(subject)
    yield from _also_on_a_pin(subject, {name: found for (name, end), found in pins.items() if end == "radio"})


def _twice(function: str, found: list[Contact]) -> Iterator[Finding]:
    """Each pin that repeats an earlier one, with the first that it repeats."""
    for place, second in enumerate(found):
        first = next((one for one in found[:place] if _unexplained(one, second)), None)
        if first:
            pins = {"first": first.said, "second": second.said}
            said = message("rules/function-stated-twice/on-two-pins", function=function, **pins)
            about = (function, first.connector.id, first.pin.id)
            yield Finding((*second.place, "function"), said, about=about)


def _unexplained(one: Contact, other: Contact) -> bool:
    """Whether some car has both, and neither says why."""
    return together(*one.conditions, *other.conditions) and not (one.pin.note or other.pin.note)


def _two_entries(subject: Subject) -> Iterator[Finding]:
    """Entries that say where one function is, in one car."""
    facts = list(subject.record.functions.values())
    for place, fact in enumerate(facts):
        before = (one for one in facts[:place] if one.of == fact.of and together(one.when, fact.when))
        for other in list(before)[:1]:
            said = message("rules/function-stated-twice/two-entries", function=fact.of, other=other.id)
            yield Finding(("functions", fact.id), said, key=True, about=(other.id,))


def _also_on_a_pin(subject: Subject, pins: Mapping[str, list[Contact]]) -> Iterator[Finding]:
    for name, fact in subject.record.functions.items():
        for contact in pins.get(fact.of, ()):
            if together(fact.when, *contact.conditions):
                pin = contact.said
                found = message("rules/function-stated-twice/also-on-a-pin", function=fact.of, by=fact.by, pin=pin)
                about = (contact.connector.id, contact.pin.id)
                yield Finding(("functions", name), found, key=True, about=about)
                break
