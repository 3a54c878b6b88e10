"""Divides what is written once, with facts that differ between cars, into one form for each kind of car.

A fact may be a list of values, each with the cars it holds for: `impedance: [{when: {sound: plain}, is: 4 ohm}, ...]`. The block
around it that can have a `when` then stands in the whole once for each kind of car, with the values of that car. All that looks at
the whole knows blocks with a `when` already, so nothing else need know of such lists. What can have a `side` stands there once for
each side in the same way: the side is one more question, which no record asks and each place answers.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from undertrim.record.shapes import Shape
from undertrim.record.source import Data, Pointer

WHEN, SIDE, IS, UNKNOWN = "when", "side", "is", "unknown"
BY_SIDE = "@side"
"""The side among questions about the car; no variant has this id."""
SIDES = ("left", "right")

Clauses = dict[str, list[str]]
"""Cars: by variant the choices that they may have, in the order of the record."""


@dataclass(frozen=True, slots=True)
class Picked:
    """A value that stands elsewhere than where its field was typed; `key` is that field, `own` tells that the block itself says it, `of_key` that the value is that key."""

    value: Data
    typed: Pointer
    key: Pointer
    own: bool = False
    of_key: bool = False


@dataclass(frozen=True, slots=True)
class Entry:
    """One value of a fact, with the cars that it is typed for; none where that is no condition."""

    value: Data
    typed: Pointer
    cars: Clauses | None
    stands: Pointer
    """Where the entry was typed, as against its value."""
    beside: str = ""
    """A field that stands beside the value, where none has a place."""


@dataclass(frozen=True, slots=True)
class Fact:
    """A fact that differs: the steps that lead to it in its block, where its key was typed, and its values."""

    steps: Pointer
    typed: Pointer
    shape: Shape
    entries: tuple[Entry, ...]
    within: Clauses
    """The cars of a block inside the one that stands for itself, such as a pin."""

    def pick(self, car: Mapping[str, str]) -> int | None:
        """The number of the first entry that holds for a car, or may; of a car that has no such block any will do."""
        unsure = (i for i, entry in enumerate(self.entries) if entry.cars is None)
        return next(iter((*self.holding(car), *unsure)), None) if holds(self.within, car) else 0

    def holding(self, car: Mapping[str, str]) -> list[int]:
        """The numbers of the entries that hold for a car."""
        return [i for i, entry in enumerate(self.entries) if entry.cars is not None and holds(entry.cars, car)]


def differs(shape: Shape | None, value: Data) -> bool:
    """Whether a value is a list of values with the cars that they hold for."""
    if shape is None or IS in shape.fields:
        return False
    if isinstance(value, dict):
        return IS in value and {WHEN, SIDE, IS} >= value.keys() > {IS}
    lists_blocks = shape.items is not None and shape.items.varies
    return isinstance(value, list) and any(
        isinstance(entry, dict) and (_is_said(entry) or (WHEN in entry and not lists_blocks)) for entry in value
    )


def _is_said(entry: dict[str, Data]) -> bool:
    """Whether an entry says for whom its value is."""
    return IS in entry and (WHEN in entry or SIDE in entry)


def facts(shape: Shape, block: Data, typed: Pointer) -> tuple[Fact, ...]:
    """What differs in a block and in no block inside it that stands in the whole for itself."""
    return tuple(_facts(shape, block, (), typed, {}))


def _facts(shape: Shape, value: Data, steps: Pointer, typed: Pointer, within: Clauses) -> Iterator[Fact]:
    key = typed
    if isinstance(value, Picked):
        value, typed, key = value.value, value.typed, value.key
    if differs(shape, value):
        yield Fact(steps, key, shape, tuple(_entries(value, typed)), within)
        return
    if steps and shape.varies and isinstance(value, dict):
        within = both(within, clauses(value.get(WHEN)) or {}) or within
    for step, inner in (
        value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    ):
        below = shape.items if isinstance(step, int) else shape.below(step)
        if below and not divides(shape, below):
            yield from _facts(below, inner, (*steps, step), (*typed, step), within)


def divides(around: Shape, below: Shape) -> bool:
    """Whether what stands in a list or under ids of its own can stand there once for each kind of car."""
    return below.varies and (around.free_ids or around.items is below)


def _entries(value: Data, typed: Pointer) -> Iterator[Entry]:
    for i, entry in enumerate(value) if isinstance(value, list) else [(-1, value)]:
        place = typed if i < 0 else (*typed, i)
        if not isinstance(entry, dict) or not (WHEN in entry or _is_said(entry)):
            yield Entry(entry, place, None, place)
        elif IS in entry:
            beside = next((key for key in entry if key not in (WHEN, SIDE, IS)), "")
            yield Entry(entry[IS], (*place, IS), _for(entry), place, beside)
        else:
            yield Entry({key: inner for key, inner in entry.items() if key != WHEN}, place, clauses(entry[WHEN]), place)


def _for(entry: dict[str, Data]) -> Clauses | None:
    """The cars of an entry, and its side."""
    cars = clauses(entry[WHEN]) if WHEN in entry else {}
    if cars is None or SIDE not in entry:
        return cars
    return {**cars, BY_SIDE: [entry[SIDE]]} if entry[SIDE] in SIDES else None


def clauses(when: Data) -> Clauses | None:
    """A condition as typed, each variant with a list; None where it is none."""
    if isinstance(when, Picked):
        when = when.value
    if not isinstance(when, dict) or not when:
        return None
    made = {variant: [said] if isinstance(said, str) else said for variant, said in when.items()}
    good = all(isinstance(said, list) and said and all(isinstance(one, str) for one in said) for said in made.values())
    return made if good else None


def typed_when(cars: Clauses) -> Data:
    """The same as it is typed: one choice without brackets."""
    return {name: said[0] if len(said) == 1 else list(said) for name, said in cars.items() if name != BY_SIDE}


def holds(cars: Clauses, car: Mapping[str, str]) -> bool:
    """Whether a car is among some, as far as it is told."""
    return all(car.get(variant, said[0]) in said for variant, said in cars.items())


def both(one: Clauses, other: Clauses) -> Clauses | None:
    """The cars that are among both; None where there can be none."""
    made = dict(one)
    for variant, said in other.items():
        made[variant] = [choice for choice in made.get(variant, said) if choice in said]
    return made if all(made.values()) else None


def formed(block: Data, found: tuple[Fact, ...], picks: tuple[int | None, ...]) -> Data:
    """The block with the values of one kind of car; what is not known of it says so where that can be said.

    Where no word can say it, somebody must: the first value stands there meanwhile, so that nothing is told twice.
    """
    for fact, pick in zip(found, picks, strict=True):
        if pick is None and not fact.steps:
            return None
        entry = fact.entries[pick or 0]
        put: Picked | None = Picked(entry.value, entry.typed, fact.typed)
        if pick is None and fact.shape.may_be_unknown:
            put = Picked(UNKNOWN, fact.typed, fact.typed)
        elif entry.value == UNKNOWN and fact.shape.is_open:
            put = None
        block = _put(block, fact.steps, put)
    return block


def without(block: Data, found: tuple[Fact, ...]) -> Data:
    """The block with the first value of each fact, as if it had been typed alone."""
    for fact in found:
        block = _put(block, fact.steps, fact.entries[0].value)
    return block


def _put(value: Data, steps: Pointer, put: Data) -> Data:
    """A copy of a value with what stands at the end of some steps changed, or left out."""
    if not steps:
        return put
    if isinstance(value, Picked):
        return replace(value, value=_put(value.value, steps, put))
    if isinstance(value, list):
        return [_put(inner, steps[1:], put) if i == steps[0] else inner for i, inner in enumerate(value)]
    if len(steps) == 1 and put is None:
        return {key: inner for key, inner in value.items() if key != steps[0]}
    return {key: _put(inner, steps[1:], put) if key == steps[0] else inner for key, inner in value.items()}
