"""Which cars a record covers: its variants, those that matter, and every combination of their choices."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from itertools import product
from math import prod
from typing import TypeAlias, get_args, get_type_hints

from undertrim.derive.once import once
from undertrim.record.combinations import MOST_CARS, TooMany, said
from undertrim.record.implied import LABELLED, LISTS, choice_id
from undertrim.record.model import Built, Choice, Variant, VehicleRecord, When
from undertrim.record.source import Pointer
from undertrim.words import Message, Value, message

_MODEL = When.__module__.rpartition(".")[0]


@dataclass(frozen=True, slots=True)
class ImpliedChoice:
    """One answer to a question that no record asks: `tell`, and `label` where the record has none, are words of the program's own."""

    id: str
    label: Value
    tell: Message
    built: Built | None = None


@dataclass(frozen=True, slots=True)
class Implied:
    """A variant that follows from the vehicle: its question and answers are words of the program's own."""

    id: str
    ask: Message
    choices: Mapping[str, ImpliedChoice]


AnyChoice: TypeAlias = Choice | ImpliedChoice
AnyVariant: TypeAlias = Variant | Implied


def variants(record: VehicleRecord) -> dict[str, AnyVariant]:
    """The record's variants and those that follow from the vehicle, where there are several sides, bodies, gearboxes and so on."""
    found: dict[str, AnyVariant] = dict(record.variants)
    for name, listed in LISTS.items():
        choices = getattr(record.vehicle, listed)
        if len(choices) > 1 and name not in found:
            found[name] = _implied(name, tuple(choices))
    return found


@cache
def _implied(name: str, choices: tuple[str, ...]) -> Implied:
    made = (answer(name, choice) for choice in choices)
    return Implied(name, message(f"{name}/ask"), {choice.id: choice for choice in made})


def answer(name: str, choice: str) -> ImpliedChoice:
    """An entry of one of the lists of the vehicle as an answer."""
    if name in LABELLED:
        return ImpliedChoice(choice_id(name, choice), choice, message(f"{name}/tell"))
    return ImpliedChoice(choice, message(f"{name}/{choice}"), message(f"{name}/tell-{choice}"))


def label(known: Mapping[str, AnyVariant], name: str, choice: str) -> Value:
    """A choice by its label; one that is not known by its id."""
    choices: Mapping[str, AnyChoice] = known[name].choices if name in known else {}
    return choices[choice].label if choice in choices else choice


@once
def conditions(record: VehicleRecord) -> tuple[tuple[Pointer, When], ...]:
    """Every `when` of the record with the place it stands at."""
    return tuple(_walk((), record))


@once
def named(record: VehicleRecord) -> Mapping[Pointer, frozenset[str]]:
    """The variants that the conditions in a section of the record name, and in each thing of it, by its place: `("parts", "radio")`."""
    found: dict[Pointer, set[str]] = {}
    for place, when in conditions(record):
        for length in (1, 2):
            found.setdefault(place[:length], set()).update(when.variants)
    return {place: frozenset(variants) for place, variants in found.items()}


def _walk(place: Pointer, value: object) -> Iterator[tuple[Pointer, When]]:
    if isinstance(value, When):
        if value.clauses:
            yield place, value
    elif isinstance(value, Mapping):
        for key, inner in value.items():
            yield from _walk((*place, key), inner)
    elif isinstance(value, tuple):
        for index, inner in enumerate(value):
            yield from _walk((*place, index), inner)
    else:
        kind: type = type(value)
        for name in _telling(kind):
            if inner := getattr(value, name):
                yield from _walk((*place, name), inner)


@cache
def _telling(kind: type) -> tuple[str, ...]:
    """The fields of a class of the model in which a condition can stand; none for what is no such class."""
    if not is_dataclass(kind) or not kind.__module__.startswith(_MODEL):
        return ()
    hints = get_type_hints(kind)
    return tuple(entry.name for entry in fields(kind) if _may_hold(hints[entry.name]))


def _may_hold(hint: object) -> bool:
    """Whether a value of this type can be or hold a condition."""
    inner = get_args(hint)
    return hint is When or any(map(_may_hold, inner)) or (isinstance(hint, type) and bool(_telling(hint)))


def asked(record: VehicleRecord) -> dict[str, AnyVariant]:
    """The variants that some fact depends on, in the order they are declared."""
    used = {name for _, when in conditions(record) for name in when.variants}
    return {name: variant for name, variant in variants(record).items() if name in used}


def assignments(record: VehicleRecord, fixed: Mapping[str, str] | None = None) -> list[dict[str, str]]:
    """Every combination of choices of the asked variants that agrees with `fixed`. Raises TooMany."""
    return told_apart(record, asked(record), fixed)


def told_apart(
    record: VehicleRecord, names: Collection[str], fixed: Mapping[str, str] | None = None
) -> list[dict[str, str]]:
    """Every combination of choices of some variants that agrees with `fixed`; they are counted before they are made. Raises TooMany."""
    choices = [
        [(name, choice) for choice in variant.choices if (fixed or {}).get(name, choice) == choice]
        for name, variant in variants(record).items()
        if name in names
    ]
    if prod(map(len, choices)) > MOST_CARS:
        raise TooMany(message("cars/too-many", combine=said(map(len, choices)), most=MOST_CARS))
    return [dict(combination) for combination in product(*choices)]


def together(*conditions: When) -> bool:
    """Whether there can be a car in which all of these hold: no variant is left without a choice."""
    left: dict[str, set[str]] = {}
    for variant, choices in (clause for when in conditions for clause in when.clauses):
        left[variant] = left.get(variant, set(choices)) & set(choices)
    return all(left.values())
