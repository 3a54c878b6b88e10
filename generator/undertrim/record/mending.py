"""Leaves out of a record what the schema refuses, so that the rest can still be looked at in the same run."""

from collections.abc import Iterable, Iterator

from undertrim.record.complaint import Complaint
from undertrim.record.copying import copied
from undertrim.record.fields import Node, root
from undertrim.record.source import Data, Pointer

_NOT_YET = (("parts",), ("openings",))
"""What a record must have and one that has just been begun has not: it is a record all the same, so that the preview can show it."""


def without(data: Data, complaints: Iterable[Complaint], kind: str) -> tuple[Data, frozenset[Pointer]]:
    """A copy of `data` without what was complained about, and every place that is not as it was meant.

    What needs a value that goes, goes with it; a list goes as a whole, so that the entries of one that stays keep
    their places. The data is None where nothing is left. `kind` is the schema that was complained by.
    """
    given = tuple(complaints)
    if not given:
        return data, frozenset()
    meant = {place for complaint in given for place in _places(complaint)}
    gone = {_whole(root(kind), place) for complaint in given if not complaint.stays for place in _places(complaint)}
    if () in gone:
        return None, frozenset(meant | gone)
    kept = copied(data)
    for place in gone:
        _drop(kept, place)
    return kept, frozenset(meant | gone)


def _places(complaint: Complaint) -> Iterator[Pointer]:
    """The places a complaint is about: where something is missing, the place it should have."""
    if complaint.lacks:
        yield from ((*complaint.pointer, name) for name in complaint.lacks)
        return
    yield complaint.pointer
    if complaint.meant:
        yield (*complaint.pointer[:-1], complaint.meant)


def _whole(node: Node, place: Pointer) -> Pointer:
    """The least place around `place`, or itself, that a record can do without."""
    least: Pointer = ()
    for depth, step in enumerate(place, 1):
        if isinstance(step, str) and (step not in _required(node) or place[:depth] in _NOT_YET):
            least = place[:depth]
        below = node.child(step)
        if below is None:
            break
        node = below
    return least


def _required(node: Node) -> frozenset[str]:
    """The fields that a mapping must have, and those of which it must have one."""
    one_of = (name for branch in node.schema.get("oneOf", ()) for name in branch["required"])
    return frozenset((*node.schema.get("required", ()), *one_of))


def _drop(data: Data, place: Pointer) -> None:
    for step in place[:-1]:
        try:
            data = data[step]
        except (KeyError, IndexError, TypeError):
            return
    if isinstance(data, dict):
        data.pop(place[-1], None)
