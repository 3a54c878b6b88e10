"""What can be worked at: every opening at every side, each with a mark of its own."""

from dataclasses import dataclass

from undertrim.derive.procedure import planning
from undertrim.publish.facts import names, words
from undertrim.record.model import VehicleRecord
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class ShownTarget:
    """An opening at a side, with a short mark of capital letters that tells it from the others."""

    id: str
    opening: str
    side: str
    name: Value
    mark: str
    when: Value
    clauses: words.Clauses


def targets(record: VehicleRecord) -> list[ShownTarget]:
    """Every opening at every side, with a short mark of capital letters that tells it from the others."""
    found = []
    marks: set[str] = set()
    for target in planning.targets(record):
        opening = record.openings[target.opening]
        mark = _mark(target.opening, target.side, marks)
        marks.add(mark)
        found.append(
            ShownTarget(
                id=str(target),
                opening=target.opening,
                side=target.side,
                name=names.job(record, target),
                mark=mark,
                when=words.others(record, opening.when, opening),
                clauses=words.clauses(opening.when),
            )
        )
    return found


def _mark(opening: str, side: str, taken: set[str]) -> str:
    mark = "".join(word[0] for word in opening.split("-")).upper() + side[:1].upper()
    number = 2
    while mark in taken:
        mark = f"{mark.rstrip('0123456789')}{number}"
        number += 1
    return mark
