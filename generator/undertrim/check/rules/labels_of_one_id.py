"""Engines and trim levels are told apart by what a condition calls them.

## What it finds

Two entries of `engines` or of `trim_levels` that have the same id (small letters and digits, with hyphens between), or an entry that has none.

## Why it matters

A condition names an engine or a trim level by that id. Of two that share it, the second can never be asked for.

## Bad

    vehicle: {make: Brindleway, model: Otter, built: {from: 2014-01, to: 2018-01}, drive_side: [left], high_voltage: no, engines: ["1.4 petrol", "1-4 Petrol"], trim_levels: [Touring, "+"]}    # here

error: '+' has no letter or digit by which a condition could name it (write it in letters)
error: '1.4 petrol' and '1-4 Petrol' are both '1-4-petrol' in a condition (leave one of them out, or tell them apart in letters or digits)

## Good

    vehicle: {make: Brindleway, model: Otter, built: {from: 2014-01, to: 2018-01}, drive_side: [left], high_voltage: no, engines: ["1.4 petrol", "1.6 diesel"], trim_levels: [Touring, Touring Plus]}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.identity import slug
from undertrim.record.implied import LABELLED, LISTS
from undertrim.record.problem import Level
from undertrim.words import message, quoted

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every label whose id is empty or that of one before it."""
    for variant in sorted(LABELLED):
        yield from _of_one_id(LISTS[variant], getattr(subject.record.vehicle, LISTS[variant]))


def _of_one_id(field: str, labels: tuple[str, ...]) -> Iterator[Finding]:
    first: dict[str, str] = {}
    for number, label in enumerate(labels):
        place, name = ("vehicle", field, number), slug(label)
        if not name:
            yield Finding(place, message("rules/labels-of-one-id/no-id", label=quoted(label)))
        elif name in first:
            found = message(
                "rules/labels-of-one-id/same", one=quoted(first[name]), other=quoted(label), id=quoted(name)
            )
            yield Finding(place, found)
        first.setdefault(name, label)
