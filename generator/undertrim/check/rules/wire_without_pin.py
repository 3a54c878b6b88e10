"""A wire that is in no recorded plug is somewhere.

## What it finds

A function that is there `by: wire` with no `note`, and with no pin in any car it speaks of.

## Why it matters

"There is a wire" sends the tech looking for it through half the car.

## Bad

    functions:
      reverse: {by: wire}    # here

warning: 'reverse' is there by wire, and nothing says where (add a 'note' with the place, or record its pin)

## Good

    functions:
      reverse: {by: wire, note: At the left rear lamp.}
      parking-brake: {by: data}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.check.pins import contacts
from undertrim.derive.cars import together
from undertrim.record.model import FunctionFact
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every wire without a place."""
    for fact in subject.record.functions.values():
        if fact.by == "wire" and not fact.note and not _on_a_pin(subject, fact):
            found = message("rules/wire-without-pin/nothing-says-where", function=fact.of)
            yield Finding(("functions", fact.id), found, key=True)


def _on_a_pin(subject: Subject, fact: FunctionFact) -> bool:
    """Whether some car it speaks of has it on a pin: then it is stated twice, which is another rule's business."""
    pins = (
        contact
        for contact in contacts(subject.record)
        if contact.pin.function == fact.of and contact.connector.at_radio
    )
    return any(together(fact.when, *contact.conditions) for contact in pins)
