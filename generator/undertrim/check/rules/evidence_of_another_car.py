"""Evidence comes from a car of this record.

## What it finds

A piece of evidence, or the stamp of verification, whose car cannot be one of this record: a year or a month of build outside
what the record covers, a steering side it does not have, a variant or choice that is not declared, a choice that was not
built in that month.

## Why it matters

A record begins as a copy of its neighbour, and the neighbour's measurements stay in it. Every number then has a source, and
every one of them is of the wrong car.

## Bad

    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys, built: {from: 2014-01, to: 2016-05}}
          map: {label: Map radio, tell: A MAP key, built: {from: 2016-05, to: 2018-01}}
    evidence:
      e1: {how: seen, on: 2026-03-02, by: rk, car: "2011, right-hand drive, map radio"}    # here
      e2:
        how: measured
        on: 2026-03-02
        by: rk
        with: Calliper 0.05 mm
        car:
          built: 2018-04    # here
          is: {radio: mapp, roof: glass}    # here
      e3:
        how: seen
        on: 2026-03-02
        by: rk
        car:
          year: 2014    # here
          built: 2017-02
          is: {radio: plain}    # here

error: no car of this record has its wheel on the right: it covers left (correct the side, or add it to 'drive_side')
error: no car of this record is of 2011: it covers 2014 to 2018 (if it is one, write its month of build as 'built'; else the evidence belongs to another record)
error: no car of this record is built in 2018-04: it covers 2014-01 until before 2018-01 (if it is one, 'built' of the record is too narrow; else the evidence belongs to another record)
error: 'radio' has no choice 'mapp' (did you mean 'map'?)
error: no variant 'roof' (variants here: radio)
error: a car built in 2017-02 is not of 2014 (look at its plate, and correct 'year' or 'built')
error: 'radio' is 'plain' only in cars built from 2014-01 until before 2016-05 (look at its plate, and correct the month, the year or the choice)

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left, right]
      high_voltage: no
    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}
    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, car: "2016, left-hand drive, map radio, new windscreen"}
      e2: {how: seen, on: 2026-03-09, by: tw, car: {year: 2018, built: 2017-12, side: right, is: {radio: plain}}}
      e3: {how: told, on: 2026-03-09, by: tw, car: {year: unknown, side: left, is: {radio: unknown}}}
      e4: {how: maker, on: 2026-03-09, by: tw, car: 2014 to 2018}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.evidence.holding import Look, Misfit, Why, looks, misfits
from undertrim.derive.evidence.seen import DRIVE_SIDE
from undertrim.record.nearness import suggestion
from undertrim.record.problem import Level
from undertrim.words import Message, all_of, message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Everything said of a car that no car of this record can be."""
    if not all(subject.intact(place) for place in (("variants",), ("vehicle",))):
        return
    for look in looks(subject.record):
        for misfit in misfits(subject.record, look.car):
            yield _finding(look, misfit)


def _finding(look: Look, misfit: Misfit) -> Finding:
    typed = look.car is not None and not look.car.text
    place = (*look.pointer, "car", *misfit.field) if typed else (*look.pointer, "car")
    about = (misfit.has[0], misfit.value) if misfit.why in (Why.CHOICE, Why.CHOICE_THEN) else ()
    return Finding(place, _said(misfit), key=typed and misfit.why is Why.VARIANT, about=about)


def _said(misfit: Misfit) -> Message:
    value, has = misfit.value, misfit.has
    match misfit.why:
        case Why.YEAR:
            return _year(misfit)
        case Why.MONTH_BESIDE_YEAR:
            return message("rules/evidence-of-another-car/month-beside-year", month=has[0], year=value)
        case Why.BUILT:
            return message("rules/evidence-of-another-car/built", month=value, first=has[0], end=has[1])
        case Why.SIDE:
            sides = all_of(*(message(f"sides/{side}") for side in has))
            return message("rules/evidence-of-another-car/side", side=message(f"sides/{value}"), sides=sides)
        case Why.VARIANT:
            return message("rules/evidence-of-another-car/no-variant", variant=value, hint=_no_variant(value, has))
        case Why.CHOICE:
            hint = suggestion(value, has[1:], message("nearness/choices"))
            return message("rules/evidence-of-another-car/no-choice", variant=has[0], choice=value, hint=hint)
        case Why.CHOICE_THEN:
            built = {"first": has[1], "end": has[2]}
            return message("rules/evidence-of-another-car/choice-then", variant=has[0], choice=value, **built)


def _year(misfit: Misfit) -> Message:
    first, last = misfit.has
    if misfit.until:
        span = {"year": misfit.value, "until": misfit.until}
        return message("rules/evidence-of-another-car/years", first=first, last=last, **span)
    return message("rules/evidence-of-another-car/year", year=misfit.value, first=first, last=last)


def _no_variant(name: str, known: tuple[str, ...]) -> Message:
    if name == DRIVE_SIDE:
        return message("rules/evidence-of-another-car/write-side")
    if known:
        return suggestion(name, known, message("nearness/variants"))
    return message("rules/evidence-of-another-car/in-note")
