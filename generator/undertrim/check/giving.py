"""What a shop's own layer has that the shared collections below it lack, and what of it hides nothing any more."""

import shutil
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from undertrim.check import layering
from undertrim.derive.claims import Deed, Outcome
from undertrim.record import claims, photo_files
from undertrim.record.claims import Answer, writing
from undertrim.record.store import Workspace

CLAIMS = "claims.json"
"""The answers of a gift; its records stand below `records/` beside it."""


@dataclass(frozen=True, slots=True)
class Added:
    """An answer of the own layer about a shared vehicle, and what came of it."""

    path: Path
    answer: Answer
    outcome: Outcome


@dataclass(frozen=True, slots=True)
class Gift:
    """What may be given: answers about shared vehicles, and whole records that no shared collection has."""

    answers: tuple[Added, ...]
    records: tuple[Path, ...]

    def of(self, paths: Sequence[Path]) -> "Gift":
        """What of it is about these records."""
        answers = (one for one in self.answers if one.path in paths)
        return Gift(tuple(answers), tuple(one for one in self.records if one in paths))

    @property
    def paths(self) -> list[Path]:
        """The records that something is given of."""
        return list(dict.fromkeys([*(one.path for one in self.answers), *self.records]))


def gift(place: Workspace) -> Gift:
    """All that the own layer has and the shared collections lack. What the check refuses is none of it, nor is a note."""
    answers = (one for one in added(place) if one.outcome.changes)
    records = (path for path in place.all_of() if place.is_own(path))
    return Gift(tuple(answers), tuple(path for path in records if not place.covered(path)))


def added(place: Workspace) -> Iterator[Added]:
    """Every answer of the own layer that can be read, with what came of it."""
    for path in place.all_of():
        file = place.addition(path)
        if place.is_own(path) or not file.is_file():
            continue
        answers = layering.answers_of(claims.read(file), path)
        for answer, outcome in zip(answers, layering.made(place, path).outcomes, strict=True):
            yield Added(path, answer, outcome)


def write(place: Workspace, given: Gift, folder: Path) -> None:
    """Write a gift into a folder: its answers as a claims file, its records with their photographs as they stand. Raises OSError."""
    folder.mkdir(parents=True, exist_ok=True)
    if given.answers:
        typed = [{**layering.about(one.path), **writing.as_typed(one.answer)} for one in given.answers]
        (folder / CLAIMS).write_text(writing.file_text(typed), encoding="utf-8", newline="\n")
    for path in given.records:
        copy(path, folder / place.name(path))


def copy(path: Path, target: Path) -> None:
    """Put a record with its photographs where there is none. Raises OSError."""
    target.parent.mkdir(parents=True, exist_ok=True)
    with target.open("xb") as file:
        file.write(path.read_bytes())
    album = photo_files.album(path)
    for name in album.names:
        there = photo_files.folder(target) / name
        there.parent.mkdir(parents=True, exist_ok=True)
        there.write_bytes(album.content(name))


def clear(place: Workspace) -> Iterator[tuple[Path, str]]:
    """Remove what hides nothing any more, and tell of each the file and the answer's address (empty for a whole record). Raises BadFile and OSError."""
    kept: dict[Path, list[Answer]] = {}
    for one in added(place):
        idle = not one.outcome.changes and one.outcome.deed is not Deed.REFUSED
        kept.setdefault(one.path, []).extend([] if idle else [one.answer])
        if idle:
            yield place.addition(one.path), one.answer.about
    for path, answers in kept.items():
        if len(answers) < len(layering.own(place, path)):
            writing.put(place.addition(path), layering.about(path), answers)
    for path in place.own_files():
        if any(place.is_same(other, path) for other in place.covered(path)):
            path.unlink()
            shutil.rmtree(photo_files.folder(path), ignore_errors=True)
            yield path, ""
