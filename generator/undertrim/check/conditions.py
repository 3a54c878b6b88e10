"""Conditions that no car can meet as written: a variant or a choice that is declared nowhere."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from undertrim.derive import cars
from undertrim.record.model import VehicleRecord, When
from undertrim.record.source import Pointer


@dataclass(frozen=True, slots=True)
class Undeclared:
    """A `when` at `pointer` names a `variant` that does not exist, or a `choice` that it does not have.

    `choice` is None in the first case; `index` is the choice's place in the clause.
    """

    pointer: Pointer
    variant: str
    choice: str | None = None
    index: int = 0


def undeclared(record: VehicleRecord) -> Iterator[Undeclared]:
    """Every variant and choice that a `when` names and nothing declares."""
    known = cars.variants(record)
    for pointer, when in cars.conditions(record):
        yield from _of(pointer, when, known)


def _of(pointer: Pointer, when: When, known: Mapping[str, cars.AnyVariant]) -> Iterator[Undeclared]:
    for variant, choices in when.clauses:
        if variant not in known:
            yield Undeclared(pointer, variant)
            continue
        for index, choice in enumerate(choices):
            if choice not in known[variant].choices:
                yield Undeclared(pointer, variant, choice, index)
