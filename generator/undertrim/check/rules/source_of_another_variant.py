"""A fact about some cars rests on evidence from one of them.

## What it finds

A block under a `when`, or one inside such a block, whose evidence all comes from cars that the condition leaves out. One piece
from a car that has it is enough, and so is a piece that names no car, such as the maker's information.

## Why it matters

Nobody can have measured a part at a car that does not have it. Either the condition is wrong or the source is, and the tech of one
of the two cars gets the other's page.

## Bad

    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}
    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, car: "2016, map radio", with: Calliper 0.05 mm}
      e2: {how: seen, on: 2026-03-02, by: rk, car: {year: 2014, is: {radio: plain}}}
    parts:
      brace:
        name: Brace
        release: unscrew
        when: {radio: map}
        source: e2    # here
      radio:
        name: Factory radio
        release: slide
        after: [brace]
        replaced: yes
        source: e1
        tethers:
          main: {name: Main plug, kind: plug}
          tape: {name: Tape plug, kind: plug, when: {radio: plain}}    # here

error: 'brace' is only in cars with radio=map, and 'e2' is of a car with radio=plain (name evidence from a car that has it, or correct 'when')
error: 'tape' is only in cars with radio=plain, and 'e1' is of a car with radio=map (name evidence from a car that has it, or correct 'when')

## Good

    variants:
      radio:
        ask: Which radio is in the dash?
        choices:
          plain: {label: Plain radio, tell: Six number keys}
          map: {label: Map radio, tell: A MAP key}
    evidence:
      e1: {how: measured, on: 2026-03-02, by: rk, car: "2016, map radio", with: Calliper 0.05 mm}
      e2: {how: seen, on: 2026-03-02, by: rk, car: {year: 2014, is: {radio: plain}}}
      e3: {how: maker, on: 2026-03-02, by: rk}
    parts:
      brace:
        name: Brace
        release: unscrew
        when: {radio: map}
        source: [e1, e2]
      radio:
        name: Factory radio
        release: slide
        after: [brace]
        replaced: yes
        source: [e1, e3]
        tethers:
          main: {name: Main plug, kind: plug}
          tape: {name: Tape plug, kind: plug, when: {radio: plain}}
          map: {name: Map plug, kind: plug, when: {radio: map}, source: e3}
"""

from collections.abc import Iterator, Mapping

from undertrim.check import affected, sources
from undertrim.check.findings import Finding, Subject
from undertrim.derive.evidence.seen import answers, seen
from undertrim.record.model import When
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import Items, Message, message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every block whose evidence is all from cars that do not have it."""
    record = subject.record
    known = {item.id: answers(record, seen(record, item.car)) for item in record.evidence.values()}
    conditions = dict(sources.conditions(subject.fields))
    named = sources.by_block(subject.fields)
    for block in sorted({*conditions, *named}, key=lambda place: [str(step) for step in place]):
        when = When(tuple(clause for place in _around(block) for clause in conditions.get(place, ())))
        place = next((place for place in reversed(_around(block)) if place in named), None)
        led = subject.source.origin.led if subject.source.origin else ()
        if place is not None and block not in led and (block in named or block in conditions) and subject.intact(block):
            yield from _excluded(block, when, named[place], known, (*block, "source" if block in named else "when"))


def _excluded(
    block: Pointer, when: When, names: tuple[str, ...], known: Mapping[str, Mapping[str, str]], place: Pointer
) -> Iterator[Finding]:
    if not when.clauses or any(when.holds(known.get(name, {})) for name in names):
        return
    cars = Items(tuple(_of_a_car(name, _apart(when, known[name])) for name in names), "comma")
    owner = next(str(step) for step in reversed(block) if isinstance(step, str) and step not in ("held_by", "after"))
    only = affected.choices(dict(when.clauses), "and")
    found = message("rules/source-of-another-variant/other-cars", block=owner, only=only, evidence=cars)
    clauses = [word for name, choices in when.clauses for word in (name, *choices)]
    others = [word for name in names for pair in _apart(when, known[name]).items() for word in pair]
    yield Finding(place, found, about=(owner, *names, *clauses, *others))


def _of_a_car(name: str, car: Mapping[str, str]) -> Message:
    return message("rules/source-of-another-variant/of-a-car", evidence=name, car=affected.one(car))


def _apart(when: When, car: Mapping[str, str]) -> dict[str, str]:
    """The choices of a car that keep it out."""
    return {name: car[name] for name, choices in when.clauses if car.get(name, choices[0]) not in choices}


def _around(block: Pointer) -> list[Pointer]:
    """A block and all around it, outermost first."""
    return [block[:length] for length in range(len(block) + 1)]
