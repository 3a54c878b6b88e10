"""The words that the text of a visit to a vehicle may have, for what reads and writes it elsewhere than here (`derive/visit/text.py`)."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive import cars
from undertrim.derive.visit.between import kinds
from undertrim.record.model import VehicleRecord


@dataclass(frozen=True, slots=True)
class VisitWords:
    """Every variant with its choices, also those that nothing depends on, and by what names an opening the kinds of gear that may stand between there.

    `written` has the id that an opening, or what is reached for, is written under, by its own; `takes` the kind of gear that an opening takes.
    """

    variants: Mapping[str, Sequence[str]]
    written: Mapping[str, str]
    takes: Mapping[str, str]
    between: Mapping[str, Sequence[str]]


def visit_words(record: VehicleRecord) -> VisitWords:
    """The words of a record."""
    openings = record.openings.values()
    return VisitWords(
        {name: list(variant.choices) for name, variant in cars.variants(record).items()},
        {job.id: job.written for job in record.jobs.values()},
        {one.id: one.takes.kind for one in openings},
        {name: list(kinds(one)) for one in reversed(openings) for name in (one.written, one.id)},
    )
