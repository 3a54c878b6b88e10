"""Everything in a record that its schema does not allow, as sentences with a file, line and column."""

from collections.abc import Iterable

from undertrim.record import combinations
from undertrim.record.complaint import Complaint
from undertrim.record.nearness import nearest
from undertrim.record.problem import Level, Problem
from undertrim.record.refusals import refusals
from undertrim.record.sentences import write
from undertrim.record.source import MAX_PROBLEMS, Data, Pointer, Source

__all__ = ["RULE", "Complaint", "as_problem", "complaints", "nearest", "too_many"]

RULE = "schema"


def complaints(source: Source, name: str) -> tuple[Complaint, ...]:
    """Everything in the data of `source` that the schema called `name` does not allow, first per place.

    At most `MAX_PROBLEMS`, then one that says there are more.
    """
    if not isinstance(source.data, dict):
        return (Complaint((), _no_record(source.data), "begin with 'format: 1'"),)
    found: dict[tuple[Pointer, str], Complaint] = {}
    for refusal in refusals(source.data, name):
        for complaint in write(refusal):
            topic = complaint.message if complaint.key or complaint.lacks else ""
            found.setdefault((complaint.pointer, topic), complaint)
            if len(found) > MAX_PROBLEMS:
                return (*list(found.values())[:MAX_PROBLEMS], _MORE)
    beyond = combinations.complaint(source.data) if name == "vehicle" else ()
    return _without_echoes((*found.values(), *beyond))


_MORE = Complaint((), f"more than {MAX_PROBLEMS} problems", "mend those shown; the rest was not looked at")


def too_many(found: Iterable[Complaint]) -> bool:
    """Whether there were more complaints than are given."""
    return _MORE in found


def _no_record(data: Data) -> str:
    if data is None:
        return "the file holds no record"
    return f"a {'list' if isinstance(data, list) else 'text'} stands where the record should be"


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
    return Problem(source.path, position, Level.ERROR, RULE, complaint.message, complaint.hint)
