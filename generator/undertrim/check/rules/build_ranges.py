"""The months of the choices of one variant follow each other, over the whole record.

## What it finds

Where choices of a variant have `built`, the months of build that decide: months that two choices claim, months
of the record that none does, a choice none of whose months are the record's, one that ends before it begins, and
a choice without `built` beside others that have it. Months are half open: `to` is the first that is not covered.

## Why it matters

The plug stayed the same and its pins moved. A car from a month that two choices claim, or none, gets the wrong
map, and a feed meets a speaker.

## Bad

    variants:
      plug:
        ask: When was it built?
        choices:
          early: {label: Early, built: {from: 2014-01, to: 2016-06}}
          middle: {label: Middle, built: {from: 2016-05, to: 2017-01}}    # here
          late: {label: Late, built: {from: 2017-03, to: 2017-12}}    # here
      dash:
        ask: Which dash is it?
        choices:
          first: {label: First, built: {from: 2013-01, to: 2013-12}}    # here
          second: {label: Second, built: {from: 2014-02, to: 2019-01}}    # here
          third: {label: Third, built: {from: 2016-02, to: 2016-02}}    # here
          other: {label: Other}    # here

error: 'early' and 'middle' overlap in 2016-05 (let one end where the other begins)
error: 'middle' and 'late' leave a gap [2017-01, 2017-03) (let one end where the other begins)
error: after 'late' the record goes on: gap in 2017-12 (let the last choice end where the record does, in 2018-01)
error: 'first' [2013-01, 2013-12) has no month of the record's [2014-01, 2018-01) (mend the months, or remove the choice)
error: before 'second' the record begins: gap in 2014-01 (let the first choice begin where the record does, in 2014-01)
error: 'third' ends in 2016-02, no later than it begins (months are half open: 'to' is the first month not covered)
error: 'other' has no months, and other choices of 'dash' have (add 'built', or make another variant of what the month does not decide)

## Good

    variants:
      plug:
        ask: When was it built?
        choices:
          late: {label: Late, built: {from: 2016-05, to: 2019-01}}
          early: {label: Early, built: {from: 2014-01, to: 2016-05}}
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}
"""

from collections.abc import Iterator

from undertrim.check import months
from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Built, Choice, Variant
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every variant whose months do not follow each other."""
    span = subject.record.vehicle.built
    for variant in subject.record.variants.values():
        if subject.intact(("variants", variant.id)) and any(one.built for one in variant.choices.values()):
            yield from _variant(variant, span)


def _variant(variant: Variant, span: Built) -> Iterator[Finding]:
    ranges: list[tuple[Choice, Built]] = []
    for choice in variant.choices.values():
        if choice.built is None:
            found = message("rules/build-ranges/no-months", choice=choice.id, variant=variant.id)
            yield Finding(("variants", variant.id, "choices", choice.id), found)
        elif (finding := _impossible(_place(variant, choice), choice.id, choice.built, span)) is not None:
            yield finding
        else:
            ranges.append((choice, choice.built))
    ranges.sort(key=lambda item: item[1].from_.index)
    yield from _between(variant, ranges)
    if ranges:
        yield from _ends(variant, ranges, span)


def _impossible(place: Pointer, name: str, built: Built, span: Built) -> Finding | None:
    """Months that no car of the record can have."""
    if built.from_.index >= built.to.index:
        return Finding(place, message("rules/build-ranges/ends-too-soon", choice=name, month=built.to))
    if months.common(built, span) is None:
        own, whole = months.span(built.from_, built.to), months.span(span.from_, span.to)
        return Finding(place, message("rules/build-ranges/outside-the-record", choice=name, span=own, whole=whole))
    return None


def _between(variant: Variant, ranges: list[tuple[Choice, Built]]) -> Iterator[Finding]:
    """Each choice against the one before it that lasts longest."""
    for count, (other, second) in enumerate(ranges[1:], 1):
        one, first = _longest(ranges[:count])
        if common := months.common(first, second):
            shared = months.within(common.from_, common.to)
            found = message("rules/build-ranges/overlap", one=one.id, other=other.id, months=shared)
            yield Finding(_place(variant, other), found, about=(one.id,))
        elif first.to.index < second.from_.index:
            between = months.within(first.to, second.from_)
            found = message("rules/build-ranges/gap", one=one.id, other=other.id, months=between)
            yield Finding(_place(variant, other), found, about=(one.id,))


def _ends(variant: Variant, ranges: list[tuple[Choice, Built]], span: Built) -> Iterator[Finding]:
    """Months of the record before the first choice and after the last."""
    first, begins = ranges[0]
    last, ends = _longest(ranges)
    if begins.from_.index > span.from_.index:
        gap = months.within(span.from_, begins.from_)
        found = message("rules/build-ranges/gap-before-first", choice=first.id, months=gap, month=span.from_)
        yield Finding(_place(variant, first), found)
    if ends.to.index < span.to.index:
        gap = months.within(ends.to, span.to)
        found = message("rules/build-ranges/gap-after-last", choice=last.id, months=gap, month=span.to)
        yield Finding(_place(variant, last), found)


def _longest(ranges: list[tuple[Choice, Built]]) -> tuple[Choice, Built]:
    """The choice that ends last; of two that end together, the first."""
    return max(ranges, key=lambda item: item[1].to.index)


def _place(variant: Variant, choice: Choice) -> Pointer:
    return ("variants", variant.id, "choices", choice.id, "built")
