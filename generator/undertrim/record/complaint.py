"""What a contributor reads about one place that the schema refuses."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.record.numerals import quoted
from undertrim.record.source import Pointer


@dataclass(frozen=True, slots=True)
class Complaint:
    """One sentence about one place; `key` points at the key instead of its value.

    `lacks` are the fields of which one is missing there; `meant` is the field that a wrong key most likely stands
    for. `stays` tells that the value is of the right kind, so that the rest can be looked at with it.
    """

    pointer: Pointer
    message: str
    hint: str = ""
    key: bool = False
    lacks: tuple[str, ...] = ()
    meant: str = ""
    stays: bool = False


Complaints = Iterator[Complaint]


def has_key(pointer: Pointer) -> bool:
    """Whether what stands there has a key of its own, as against a list entry or the whole record."""
    return bool(pointer) and isinstance(pointer[-1], str)


def place_name(pointer: Pointer) -> str:
    """A place in words: the name of the field, or the number of the entry in its list."""
    names = [step for step in pointer if isinstance(step, str)]
    if not names:
        return "the record"
    last = pointer[-1]
    return f"entry {last + 1} of {quoted(names[-1])}" if isinstance(last, int) else quoted(last)
