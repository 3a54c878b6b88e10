"""How a wire behaves suits what it does.

## What it finds

A `behaves` that the function cannot have: a switched feed that is `steady` is live at all times and therefore a
battery feed, a battery feed that is `on-off` is a switched one, a speaker wire has no behaviour of its own. It
looks at pins, at functions on no pin, and at the leads and contacts of gear. Any function may come as a data
`message`. Which behaviours go with a function is practice beside the meaning of the words, no source.

## Why it matters

One of the two is wrong. Where feeds were exchanged, the receiver forgets its stations or flattens the battery.

## Bad

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: battery-feed, behaves: on-off}    # here
          2: {function: switched-feed, behaves: steady}    # here
          3: {function: front-left-plus, behaves: pulses}    # here
    functions:
      speed: {by: wire, behaves: closes-to-ground}    # here

warning: 'battery-feed' with 'on-off': it may be 'steady' (meter it, then mend the function or how it behaves: this is how 'switched-feed' behaves)
warning: 'switched-feed' with 'steady': it may be 'on-off' (meter it, then mend the function or how it behaves: this is how 'battery-feed' behaves)
warning: 'front-left-plus' with 'pulses': it has no behaviour of its own (meter it, then mend the function or how it behaves)
warning: 'speed' with 'closes-to-ground': it may be 'pulses' (meter it, then mend the function or how it behaves)

    gear:
      kind: leads
      maker: Pellworth
      model: Cord 8
      leads:
        battery: {function: battery-feed, behaves: steady}
        switched: {function: switched-feed, behaves: steady}    # here

warning: 'switched-feed' with 'steady': it may be 'on-off' (meter it, then mend the function or how it behaves: this is how 'battery-feed' behaves)

## Good

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: battery-feed, behaves: steady}
          2: {function: switched-feed, behaves: on-off}
          3: {function: illumination, behaves: dimmed-ground}
          4: {function: wheel-buttons, behaves: unknown}
          5: {function: front-left-plus}
    functions:
      speed: {by: data, behaves: message}

A lead that wants what its function gives:

    gear:
      kind: leads
      maker: Pellworth
      model: Cord 8
      leads:
        switched: {function: switched-feed, behaves: on-off}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.check.pins import contacts
from undertrim.derive.wiring.functions import behaviours, may_behave
from undertrim.derive.wiring.never import acts_as
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import Message, message, one_of, quoted

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every pin, and every function on no pin, that behaves in a way that it cannot."""
    for contact in contacts(subject.record):
        yield from _look(contact.place, contact.pin.function, contact.pin.behaves)
    for name, fact in subject.record.functions.items():
        yield from _look(("functions", name), fact.of, fact.behaves)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The same for the leads of gear and the contacts of its plugs."""
    facts = subject.record.gear
    for name, lead in facts.leads.items():
        yield from _look(("gear", "leads", name), lead.function, lead.behaves)
    for plug, held in facts.plugs.items():
        for pin, lead in held.items():
            yield from _look(("gear", "plugs", plug, pin), lead.function, lead.behaves)


def _look(place: Pointer, function: str, behaves: str) -> Iterator[Finding]:
    if not behaves or may_behave(function, behaves):
        return
    hint, may = _hint(function, acts_as(function, behaves)), one_of(*map(quoted, behaviours(function)))
    if may.values:
        found = message(
            "rules/behaviour-against-function/may-be", function=function, behaves=behaves, may=may, hint=hint
        )
    else:
        found = message("rules/behaviour-against-function/has-none", function=function, behaves=behaves, hint=hint)
    yield Finding((*place, "behaves"), found)


def _hint(function: str, other: str) -> Message:
    if other == function:
        return message("rules/behaviour-against-function/meter")
    return message("rules/behaviour-against-function/meter-other", other=other)
