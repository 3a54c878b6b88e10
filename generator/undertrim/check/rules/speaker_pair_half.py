"""A speaker has two wires.

## What it finds

A car in which the plus of a speaker is on a pin and its minus is nowhere, or the other way round: neither on
a pin of that car nor under `functions`.

## Why it matters

The tech joins one wire and looks for the other at whatever is left in the plug. Taken from a wrong pair, it
plays out of phase; taken from the body, it ends the output of the receiver.

## Bad

    variants:
      sound:
        ask: Which speakers are there?
        choices:
          plain: {label: Front only, tell: No grilles in the rear doors}
          more: {label: Front and rear, tell: Grilles in the rear doors}
    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: front-left-plus}    # here
          2: {function: front-right-minus}    # here
          3: {function: rear-left-plus, when: {sound: more}}
          4: {function: rear-left-minus}    # here

warning: 'front-left-plus' is on a pin and 'front-left-minus' is nowhere (record its pin, or say under 'functions' how the car has it, if only as 'unknown')
warning: 'front-right-minus' is on a pin and 'front-right-plus' is nowhere (record its pin, or say under 'functions' how the car has it, if only as 'unknown')
warning: 'rear-left-minus' is on a pin and 'rear-left-plus' is nowhere where sound=plain (record its pin, or say under 'functions' how the car has it, if only as 'unknown')

## Good

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: front-left-plus}
          3: {function: front-right-plus}
          4: {function: microphone-plus}
      second:
        name: Second radio plug
        view: wires
        rows: 2
        columns: 4
        pins:
          1: {function: front-left-minus}
    functions:
      front-right-minus: {by: unknown}
"""

from collections import defaultdict
from collections.abc import Iterator

from undertrim.check.affected import which
from undertrim.check.findings import Finding, Subject
from undertrim.check.pins import Contact, contacts
from undertrim.derive.wiring.leads import is_sound
from undertrim.record.model import Assignment
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING

_OTHER = {"plus": "minus", "minus": "plus"}


def check(subject: Subject) -> Iterator[Finding]:
    """Every wire of a speaker whose partner is not recorded, with the cars."""
    ends: dict[str, list[Contact]] = defaultdict(list)
    for contact in contacts(subject.record):
        if is_sound(contact.pin.function):
            ends[contact.connector.end].append(contact)
    for found in ends.values():
        yield from _halves(subject, found)


def _halves(subject: Subject, found: list[Contact]) -> Iterator[Finding]:
    """Those at one end of the wires: the radio, the looms of the doors, the speakers."""
    first = {contact.pin.function: contact for contact in reversed(found)}
    for function, contact in reversed(first.items()):
        name, _, pole = function.rpartition("-")
        other = f"{name}-{_OTHER[pole]}"
        if hit := [car for car in subject.cars if _alone(subject, found, function, other, car)]:
            where = which(hit, subject.cars)
            alone = message("rules/speaker-pair-half/alone", wire=function, other=other, where=where)
            yield Finding((*contact.place, "function"), alone)


def _alone(subject: Subject, found: list[Contact], function: str, other: str, car: Assignment) -> bool:
    """Whether a car has the one wire, and nothing is said of the other."""
    there = {contact.pin.function for contact in found if all(when.holds(car) for when in contact.conditions)}
    stated = subject.record.function_fact(other, car) is not None
    return function in there and other not in there and not stated
