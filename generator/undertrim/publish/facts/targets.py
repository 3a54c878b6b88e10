"""What can be worked at: every opening, and what is reached for, at every side, each with a mark of its own."""

from dataclasses import dataclass

from undertrim.derive.procedure import planning
from undertrim.publish.facts import names, words
from undertrim.record.model import Opening, VehicleRecord
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class ShownTarget:
    """An opening at a side, or what is reached `for` its own sake (no opening then), with a short mark of capital letters that tells it from the others.

    `whole` is its name at every side.
    """

    id: str
    opening: str
    side: str
    name: Value
    whole: Value
    mark: str
    when: Value
    clauses: words.Clauses


def targets(record: VehicleRecord) -> list[ShownTarget]:
    """Every job at every side, with a short mark of capital letters that tells it from the others."""
    found, named = [], record.jobs
    marks: set[str] = set()
    for target in planning.targets(record):
        job = named[target.job]
        mark = _mark(target.job, target.side, marks)
        marks.add(mark)
        found.append(
            ShownTarget(
                id=str(target),
                opening=target.job,
                side=target.side,
                name=names.job(record, target),
                whole=names.job(record, planning.Target(target.job)),
                mark=mark,
                when=words.others(record, job.when, job) if isinstance(job, Opening) else words.when(record, job.when),
                clauses=words.clauses(job.when),
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
