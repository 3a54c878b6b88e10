"""The record of a new car, laid out the one way and checked before it is written."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from undertrim.check.runner import check_entry
from undertrim.record import layout
from undertrim.record.beginning import NewCar, begun
from undertrim.record.layout import modeline
from undertrim.record.problem import Level, Problem
from undertrim.record.source import read_text
from undertrim.record.store import Entry, Workspace


@dataclass(frozen=True, slots=True)
class Fresh:
    """A record that is not written yet, and what the check says of it."""

    entry: Entry
    problems: tuple[Problem, ...]

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


def fresh(place: Workspace, car: NewCar, shared: Sequence[str] = ()) -> Fresh:
    """The record that begins for a car; `shared` are the lines by which it takes from a sister."""
    path = place.records / "vehicles" / car.path
    entry = place.entry(path, read_text(_laid(place, path, begun(car, shared)), place.shown(path)))
    return Fresh(entry, tuple(check_entry(entry)))


def _laid(place: Workspace, path: Path, text: str) -> str:
    shorter = layout.shorter(read_text(text, path))
    line = modeline.wanted(path, "vehicle", place.root)
    return layout.laid_out(place.whole(path, shorter), "vehicle", line)
