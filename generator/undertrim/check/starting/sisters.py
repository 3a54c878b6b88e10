"""What a new record may take from that of a sister: all, but for what would be wrong for a car of which nothing more is known."""

from collections.abc import Callable, Iterable
from pathlib import Path

from undertrim.check.borrowed import IN_TAKEN
from undertrim.check.runner import check_entry
from undertrim.record.problem import Level, Problem
from undertrim.record.source import Pointer, read_text
from undertrim.record.starting import unsure
from undertrim.record.store import Entry, Workspace


def shared_with(
    place: Workspace, path: Path, other: Entry, written: Callable[[list[Pointer]], str]
) -> tuple[Entry, list[Pointer]]:
    """The record that is `written` with what is left out of the sister, and that: the least with which the check refuses nothing that is taken."""
    left = sorted(unsure(other.source))
    while True:
        fresh = place.entry(path, read_text(written(left), place.shown(path)))
        more = _wrong(check_entry(fresh)) - {(), *left}
        if not more:
            return fresh, left
        left += sorted(more)


def called(place: Workspace, other: Entry) -> str:
    """The id of a record; with its make where another one has that id."""
    same = [path for path in place.every("vehicles") if path.stem == other.id]
    return other.id if len(same) == 1 else other.address


def _wrong(problems: Iterable[Problem]) -> set[Pointer]:
    """The things that are taken and in which an error is; nothing for any other."""
    errors = (problem for problem in problems if problem.level is Level.ERROR)
    return {tuple(str(one.said.values["place"]).split("/")) if one.said.code == IN_TAKEN else () for one in errors}
