"""Everything in a record that its schema does not allow, with a file, line and column."""

from collections.abc import Iterable
from itertools import chain

from undertrim.record import combinations, placeholders, sharing
from undertrim.record.complaint import Complaint
from undertrim.record.fields import root
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
        return (Complaint((), _no_record(source.data, name)),)
    found: dict[tuple[Pointer, Message | None, bool], Complaint] = {}
    told: set[tuple[Pointer, Message | None]] = set()
    faults = source.origin.faults if source.origin else ()
    written = (complaint for refusal in refusals(source.data, name) for complaint in write(refusal))
    for complaint in chain(faults, placeholders.complaints(source, name), written):
        told.add((_said_at(source, complaint.pointer), complaint.topic))
        if len(told) > MAX_PROBLEMS:
            return (*found.values(), _MORE)
        found.setdefault((complaint.pointer, complaint.topic, complaint.typed), complaint)
    beyond = combinations.complaint(source.data) if name == "vehicle" else ()
    return _without_echoes((*found.values(), *beyond), _lost(faults))


def _said_at(source: Source, pointer: Pointer) -> Pointer:
    """What is said once may be wrong in many places, and is one problem."""
    return source.origin.said_at(pointer) if source.origin else pointer


_MORE = Complaint((), message("schema/too-many", most=MAX_PROBLEMS))


def too_many(found: Iterable[Complaint]) -> bool:
    """Whether there were more complaints than are given."""
    return _MORE in found


def _no_record(data: Data, name: str) -> Message:
    newest = root(name).schema["properties"]["format"]["maximum"]
    if data is None:
        return message("schema/no-record", format=newest)
    return message("schema/not-a-record", found=sort(data), format=newest)


def _lost(faults: Iterable[Complaint]) -> set[Pointer]:
    """The sections that may be missing only since they could not be taken from another record."""
    return (
        {(name,) for name in sharing.SECTIONS}
        if any(fault.pointer[:1] == (sharing.FIELD,) for fault in faults)
        else set()
    )


def _without_echoes(found: Iterable[Complaint], lost: set[Pointer]) -> tuple[Complaint, ...]:
    """Without what is only missing because its key is misspelt or it could not be taken, which is said already."""
    given = list(found)
    misspelt = lost | {(*complaint.pointer[:-1], complaint.meant) for complaint in given if complaint.meant}
    return tuple(
        complaint for complaint in given if not any((*complaint.pointer, name) in misspelt for name in complaint.lacks)
    )


def as_problem(source: Source, complaint: Complaint) -> Problem:
    """A complaint with its file, line and column."""
    known = source.as_typed if complaint.typed else source
    position = known.position(complaint.pointer, key=complaint.key)
    return Problem(source.path, position, Level.ERROR, RULE, complaint.said)
