"""Moves the text of a record from one format to the next, by numbered steps; each loses no comment, no order and no fact."""

from collections.abc import Callable

from undertrim.record.migrations import to_2
from undertrim.record.migrations.moved import CannotMove, Moved
from undertrim.record.migrations.same import checked
from undertrim.record.schema import load, whole
from undertrim.record.source import Pointer, Source, read_text

__all__ = ["NEWEST", "CannotMove", "Moved", "format_of", "moved"]

STEPS: dict[int, Callable[[Source], str]] = {2: to_2.migrate}
"""By the format that each leads to."""

NEWEST = max(STEPS)


def format_of(source: Source) -> int | None:
    """The format of a vehicle record as typed; None where it says none that this program knows."""
    typed = source.as_typed.data
    said = typed.get("format") if isinstance(typed, dict) else None
    known = load("vehicle")["properties"]["format"]["maximum"]
    return int(said) if isinstance(said, str) and whole(said) and 1 <= int(said) <= known else None


def moved(source: Source) -> Moved:
    """A record, as typed, in the newest format. Raises CannotMove where its text does not take that."""
    before = source
    added: tuple[Pointer, ...] = ()
    while (now := format_of(before)) is not None and now < NEWEST:
        after = read_text(STEPS[now + 1](before), source.path)
        added = (*added, *checked(before, after))
        before = after
    return Moved(before.text, added)
