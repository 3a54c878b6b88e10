"""Which cars a record covers: its variants, those that matter, and every combination of their choices."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from itertools import product
from math import prod
from typing import get_args, get_type_hints

from undertrim.record.combinations import MOST_CARS, said
from undertrim.record.model import Choice, Variant, VehicleRecord, When
from undertrim.words import SaidError, message

_MODEL = When.__module__.rpartition(".")[0]
_WHEEL = {"left": "Left-hand drive", "right": "Right-hand drive"}
_TELL = {"left": "Steering wheel on the left", "right": "Steering wheel on the right"}


class TooMany(SaidError):  # noqa: N818 - it names what happened
    """The choices of a record combine to more cars than can be gone through."""


def variants(record: VehicleRecord) -> dict[str, Variant]:
    """The record's variants and those that follow from the vehicle: `drive-side` and `body`, where there are several."""
    found = dict(record.variants)
    if len(record.vehicle.drive_side) > 1:
        choices: dict[str, Choice] = {
            side: Choice(side, _WHEEL[side], _TELL[side]) for side in record.vehicle.drive_side
        }
        found.setdefault("drive-side", Variant("drive-side", "On which side is the steering wheel?", choices))
    if len(record.vehicle.bodies) > 1:
        bodies = {body: Choice(body, body.capitalize(), "The shape of the body") for body in record.vehicle.bodies}
        found.setdefault("body", Variant("body", "Which body does it have?", bodies))
    return found


def conditions(record: VehicleRecord) -> Iterator[tuple[tuple[str | int, ...], When]]:
    """Every `when` of the record with the place it stands at."""
    yield from _walk((), record)


def _walk(place: tuple[str | int, ...], value: object) -> Iterator[tuple[tuple[str | int, ...], When]]:
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


def asked(record: VehicleRecord) -> dict[str, Variant]:
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
