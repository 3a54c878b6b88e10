"""The record of a new car, laid out the one way and checked before it is written."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from undertrim.check.runner import check_entry
from undertrim.check.starting import sisters
from undertrim.record import layout
from undertrim.record.beginning import NewCar, begun
from undertrim.record.layout import modeline
from undertrim.record.problem import Level, Problem
from undertrim.record.source import Pointer, read_text
from undertrim.record.starting import sharing
from undertrim.record.store import Entry, Workspace


@dataclass(frozen=True, slots=True)
class Fresh:
    """A record that is not written yet, and what the check says of it."""

    entry: Entry
    problems: tuple[Problem, ...]
    left: tuple[Pointer, ...] = ()
    """What nobody may take from the sister."""

    @property
    def errors(self) -> tuple[Problem, ...]:
        """What is in the way of writing it."""
        return tuple(problem for problem in self.problems if problem.level is Level.ERROR)

    def write(self) -> None:
        """Write it. Raises FileExistsError where something is there, and OSError."""
        path = self.entry.path
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("x", encoding="utf-8", newline="\n") as file:
            file.write(self.entry.source.as_typed.text)


def fresh(place: Workspace, car: NewCar) -> Fresh:
    """The record that begins for a car."""
    path = place.own("vehicles", car.path)
    entry = place.entry(path, read_text(_laid(place, path, begun(car)), place.shown(path)))
    return Fresh(entry, tuple(check_entry(entry)))


def like(place: Workspace, car: NewCar, other: Entry) -> Fresh:
    """The record that begins with what it shares with another one: nothing of that counts as seen."""
    path, name = place.own("vehicles", car.path), sisters.called(place, other)

    def written(left: Sequence[Pointer]) -> str:
        return _laid(place, path, begun(car, list(sharing(name, other.source, left))))

    entry, left = sisters.shared_with(place, path, other, written)
    return Fresh(entry, tuple(check_entry(entry)), tuple(left))


def _laid(place: Workspace, path: Path, text: str) -> str:
    shorter = layout.shorter(read_text(text, path))
    line = modeline.wanted(path, "vehicle", place.root)
    return layout.laid_out(place.whole(path, shorter), "vehicle", line)
