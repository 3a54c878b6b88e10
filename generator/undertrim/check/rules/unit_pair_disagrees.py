"""A value given in two units is one value.

## What it finds

A length or torque in a text or note with its conversion behind it, `62 mm (2.44 in)` or `2 in = 51 mm`, where
the two differ: a torque by more than 3 %, a length by more than its coarser figure can tell.

## Why it matters

One of the two was mis-keyed or converted with the wrong factor. Whoever reads the other one overtightens a
seat bolt by a third.

## Bad

    preps:
      seat-bolts:
        name: Seat loosened
        sets: {seat: forward}
        held_by: [{bolt: T50, count: 4, torque: 40 N.m}]
        how: Take out the four T50 bolts.
        restore: Put the bolts in and tighten them to 40 N.m (40 lbf.ft).    # here

error: '40 N.m' and '40 lbf.ft' do not agree (it is 40 N·m (29.5 lbf·ft))

    duties:
      clock: {kept_by: stays, note: It sits 50 mm (2 in) lower.}    # here
    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, note: "The opening is 182 x 53 mm (7.2 x 2.2 in)."}    # here

error: '182 x 53 mm' and '7.2 x 2.2 in' do not agree (it is 53 mm (2.09 in))
error: '50 mm' and '2 in' do not agree (it is 50 mm (1.97 in))

## Good

    preps:
      seat-bolts:
        name: Seat loosened
        sets: {seat: forward}
        held_by: [{bolt: T50, count: 4, torque: 40 N.m}]
        how: Take out the four T50 bolts with a 7/32 in (5.5 mm) key.
        restore: Tighten them to 40 N.m (29.5 lbf.ft), those of a wheel to 110 N.m (81 lbf.ft).
    duties:
      clock: {kept_by: stays, note: "It sits 62 mm (2.4 in) lower, 20 mm (16 mm on later cars) back."}
"""

from collections.abc import Iterator

from undertrim.check import mentions
from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.record import units
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.words import message

LEVEL = Level.ERROR

TORQUE = 0.03
"""Share by which two figures for one torque may differ: rounding to whole units does as much. Common practice, no source."""


def check(subject: Subject) -> Iterator[Finding]:
    """Every pair in a vehicle record whose two values differ."""
    yield from _pairs(subject)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """Every pair in a gear record whose two values differ."""
    yield from _pairs(subject)


def _pairs(subject: Subject | GearSubject) -> Iterator[Finding]:
    for pointer, text in subject.texts:
        for one, other in mentions.twins(text, mentions.find(text)):
            wrong = _wrong(one.quantities, other.quantities) if other else None
            if other and wrong:
                right = wrong
                found = message("rules/unit-pair-disagrees/disagree", one=one.text, other=other.text, right=right)
                yield Finding(pointer, found)


def _wrong(one: tuple[Quantity, ...], other: tuple[Quantity, ...]) -> Quantity | None:
    """The first value whose conversion is another; `182 x 53 mm` are two values."""
    both = zip(reversed(one), reversed(other), strict=False)
    return next((first for first, second in both if not _agree(first, second)), None)


def _agree(one: Quantity, other: Quantity) -> bool:
    if one.kind == other.kind == "torque":
        return abs(one.value - other.value) <= TORQUE * max(one.value, other.value)
    return units.agree(one, other)
