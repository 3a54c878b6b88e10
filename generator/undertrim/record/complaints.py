"""Everything in a record that its schema does not allow, with a file, line and column."""

from collections.abc import Iterable

from undertrim.record import combinations
from undertrim.record.complaint import Complaint
from undertrim.record.problem import Level, Problem
from undertrim.record.refusals import refusals
from undertrim.record.sentences import sort, write
from undertrim.record.source import MAX_PROBLEMS, Data, Pointer, Source
from undertrim.words import Message, message

__all__ = ["RULE", "Complaint", "as_problem", "complaints", "too_many"]

RULE = "schema"


def complaints(source: Source, name: str) -> tuple[Complaint, ...]:
    """Everything in the data of `source` that the schema called `name` does not allow, first per place.

    At most `MAX_PROBLEMS`, then one that says there are more.
    """
    if not isinstance(source.data, dict):
        return (Complaint((), _no_record(source.data)),)
    found: dict[tuple[Pointer, Message | None], Complaint] = {}
    for refusal in refusals(source.data, name):
        for complaint in write(refusal):
            found.setdefault((complaint.pointer, complaint.topic), complaint)
            if len(found) > MAX_PROBLEMS:
                return (*list(found.values())[:MAX_PROBLEMS], _MORE)
    beyond = combinations.complaint(source.data) if name == "vehicle" else ()
    return _without_echoes((*found.values(), *beyond))


_MORE = Complaint((), message("schema/too-many", most=MAX_PROBLEMS))


def too_many(found: Iterable[Complaint]) -> bool:
    """Whether there were more complaints than are given."""
    return _MORE in found


def _no_record(data: Data) -> Message:
    return message("schema/no-record") if data is None else message("schema/not-a-record", found=sort(data))


def _without_echoes(found: Iterable[Complaint]) -> tuple[Complaint, ...]:
    """Without what is only missing because its key is misspelt, which is said already."""
    given = list(found)
    misspelt = {(*complaint.pointer[:-1], complaint.meant) for complaint in given if complaint.meant}
    return tuple(
        complaint for complaint in given if not any((*complaint.pointer, name) in misspelt for name in complaint.lacks)
    )


def as_problem(source: Source, complaint: Complaint) -> Problem:
    """A complaint with its file, line and column."""
    position = source.position(complaint.pointer, key=complaint.key)
    return Problem(source.path, position, Level.ERROR, RULE, complaint.said)
