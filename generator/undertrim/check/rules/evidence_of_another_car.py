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
from undertrim.record.complaints import nearest
from undertrim.record.problem import Level

LEVEL = Level.ERROR

_NONE = "no car of this record"
_OTHER = "else the evidence belongs to another record"


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
    message, hint = _said(misfit.value, misfit.has)[misfit.why]
    about = (misfit.has[0], misfit.value) if misfit.why in (Why.CHOICE, Why.CHOICE_THEN) else ()
    return Finding(place, message, hint, key=typed and misfit.why is Why.VARIANT, about=about)


def _said(value: str, has: tuple[str, ...]) -> dict[Why, tuple[str, str]]:
    """Message and way out for every reason; `has` is read by the one that is asked for."""
    first, last = has[:1] or ("",), has[-1:] or ("",)
    span = f"{has[-2] if len(has) > 1 else first[0]} until before {last[0]}"
    return {
        Why.YEAR: (
            f"{_NONE} is of {value}: it covers {first[0]} to {last[0]}",
            f"if it is one, write its month of build as 'built'; {_OTHER}",
        ),
        Why.MONTH_BESIDE_YEAR: (
            f"a car built in {first[0]} is not of {value}",
            "look at its plate, and correct 'year' or 'built'",
        ),
        Why.BUILT: (
            f"{_NONE} is built in {value}: it covers {span}",
            f"if it is one, 'built' of the record is too narrow; {_OTHER}",
        ),
        Why.SIDE: (
            f"{_NONE} has its wheel on the {value}: it covers {' and '.join(has)}",
            "correct the side, or add it to 'drive_side'",
        ),
        Why.VARIANT: (f"no variant '{value}'", _no_variant(value, has)),
        Why.CHOICE: (f"'{first[0]}' has no choice '{value}'", nearest(value, list(has[1:]), "its choices")),
        Why.CHOICE_THEN: (
            f"'{first[0]}' is '{value}' only in cars built from {span}",
            "look at its plate, and correct the month, the year or the choice",
        ),
    }


def _no_variant(name: str, known: tuple[str, ...]) -> str:
    if name == DRIVE_SIDE:
        return "write 'side: left' or 'side: right' beside 'is'"
    return nearest(name, list(known), "variants here") if known else "say it in 'note', or declare it under 'variants'"
