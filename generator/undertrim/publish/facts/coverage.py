"""What is not known yet, as data: the matrix of cars and openings, its share, and what to measure next."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive import coverage
from undertrim.derive.measuring import Task, next_to_measure
from undertrim.derive.required_facts import lacking, required_facts
from undertrim.publish.encoding import Spread
from undertrim.record.model import Opening, VehicleRecord
from undertrim.words import Message, Value

FEW = 5
"""How many things to measure a page names."""


@dataclass(frozen=True, slots=True)
class MissingCell:
    """An opening with the cars of which nobody has said whether they have it."""

    opening: str
    name: str
    cars: tuple[Value, ...]


@dataclass(frozen=True, slots=True)
class Coverage:
    """What a page shows of it: the share in words, the missing cells, the first FEW things to measure, and how many are left."""

    share: Message
    missing: tuple[MissingCell, ...]
    next: tuple[Value, ...]
    more: int


@dataclass(frozen=True, slots=True)
class ShownShare:
    """How many cells have an answer, of how many, in whole per cent and in words."""

    answered: int
    cells: int
    percent: int
    share: Message


@dataclass(frozen=True, slots=True)
class CoveredOpening:
    """An opening with how many facts are wanted of it, and the names of those that nobody has recorded."""

    id: str
    name: str
    facts_wanted: int
    facts_lacking: Sequence[Value]


@dataclass(frozen=True, slots=True)
class CarRow:
    """A row of the matrix: a kind of car, and for each opening whether it has it."""

    car: Mapping[str, str]
    label: Value
    cells: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Report:
    """All there is to say of one vehicle's coverage; `next` is everything that is left to find out."""

    vehicle: str
    share: Spread[ShownShare]
    openings: Sequence[CoveredOpening]
    cars: Sequence[CarRow]
    missing: Sequence[MissingCell]
    next: Sequence[Task]


def report(record: VehicleRecord, address: str) -> Report:
    """All there is to say of one vehicle's coverage."""
    matrix = coverage.matrix(record)
    return Report(
        vehicle=address,
        share=share(matrix.share),
        openings=[_opening(record, item) for item in record.openings.values()],
        cars=[CarRow(dict(row.car), row.label, dict(row.cells)) for row in matrix.rows],
        missing=_missing(record, matrix),
        next=next_to_measure(record),
    )


def summary(record: VehicleRecord) -> Coverage:
    """What a page shows of one vehicle's coverage."""
    matrix = coverage.matrix(record)
    tasks = tuple(task.words for task in next_to_measure(record))
    return Coverage(matrix.share.said, _missing(record, matrix), tasks[:FEW], max(0, len(tasks) - FEW))


def share(found: coverage.Share) -> ShownShare:
    """A share as numbers and in words."""
    return ShownShare(found.answered, found.cells, found.percent, found.said)


def _opening(record: VehicleRecord, item: Opening) -> CoveredOpening:
    facts = required_facts(record, item)
    return CoveredOpening(
        id=item.id,
        name=item.name,
        facts_wanted=len(facts),
        facts_lacking=[fact.name for fact in lacking(record, item)],
    )


def _missing(record: VehicleRecord, matrix: coverage.Matrix) -> tuple[MissingCell, ...]:
    return tuple(
        MissingCell(name, record.openings[name].name, tuple(row.label for row in rows))
        for name, rows in matrix.missing.items()
    )
