"""What is not known yet, as data: the matrix of cars and openings, its share, and what to measure next."""

from dataclasses import dataclass
from typing import Any

from undertrim.derive import coverage
from undertrim.derive.measuring import next_to_measure
from undertrim.derive.required_facts import lacking, required_facts
from undertrim.publish.encoding import said
from undertrim.record.model import Opening, VehicleRecord
from undertrim.words import Message, Value

Data = dict[str, Any]

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


def report(record: VehicleRecord, address: str) -> Data:
    """All there is to say of one vehicle's coverage."""
    matrix = coverage.matrix(record)
    facts: Data = said(
        {
            "vehicle": address,
            **share(matrix.share),
            "openings": [_opening(record, item) for item in record.openings.values()],
            "cars": [{"car": dict(row.car), "label": row.label, "cells": dict(row.cells)} for row in matrix.rows],
            "missing": _missing(record, matrix),
            "next": [{"kind": task.kind, "place": task.place, "words": task.words} for task in next_to_measure(record)],
        }
    )
    return facts


def summary(record: VehicleRecord) -> Coverage:
    """What a page shows of one vehicle's coverage."""
    matrix = coverage.matrix(record)
    tasks = tuple(task.words for task in next_to_measure(record))
    return Coverage(matrix.share.said, _missing(record, matrix), tasks[:FEW], max(0, len(tasks) - FEW))


def share(found: coverage.Share) -> Data:
    """A share as numbers and in words."""
    shown = {"answered": found.answered, "cells": found.cells, "percent": found.percent, "share": found.said}
    facts: Data = said(shown)
    return facts


def _opening(record: VehicleRecord, item: Opening) -> Data:
    facts = required_facts(record, item)
    return {
        "id": item.id,
        "name": item.name,
        "facts_wanted": len(facts),
        "facts_lacking": [fact.name for fact in lacking(record, item)],
    }


def _missing(record: VehicleRecord, matrix: coverage.Matrix) -> tuple[MissingCell, ...]:
    return tuple(
        MissingCell(name, record.openings[name].name, tuple(row.label for row in rows))
        for name, rows in matrix.missing.items()
    )
