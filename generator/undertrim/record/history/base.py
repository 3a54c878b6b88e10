"""What the records were compared with: at a revision of git or in another folder, as a workspace of its own that holds what is asked for."""

import filecmp
import os
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Protocol

from undertrim.record import photo_files
from undertrim.record.history.git import NoHistory, Repository
from undertrim.record.history.pairs import Pair, paired
from undertrim.record.layers import ADDITIONS
from undertrim.record.problem import printable
from undertrim.record.store import KINDS, SUFFIXES, Workspace
from undertrim.words import message


class Base(Protocol):
    """How the records were. Names are paths below the workspace, such as `records/gear/kits/x.yaml`."""

    @property
    def workspace(self) -> Workspace:
        """A workspace that holds as much of it as was fetched."""

    @property
    def called(self) -> str:
        """What it is called where the comparison is told."""

    def differing(self) -> list[str]:
        """The record files that are not what they were."""

    def added(self) -> list[str]:
        """The names that shared records may have to which the own layer adds something else than it did; the workspace has what it added."""

    def fetch(self, names: Iterable[str]) -> None:
        """Have these files in the workspace, where they were there."""

    def names(self) -> list[str]:
        """All record files that were there."""


@dataclass(frozen=True)
class Revision:
    """The records at a commit; `held` is a folder of our own for what was fetched of it."""

    here: Workspace
    repository: Repository
    commit: str
    called: str
    held: Path
    _fetched: set[str] = field(default_factory=set)

    @property
    def workspace(self) -> Workspace:
        """Where what was fetched is held; what it lies on is as it is here."""
        return replace(self.here, root=self.held)

    def differing(self) -> list[str]:
        """By git's own comparison of names, so that no file is read that is what it was; a changed photograph counts for its record."""
        return sorted({record for name in self._differing() for record in _records(name)})

    def _differing(self) -> Iterator[str]:
        top = self._prefix()
        return (name.removeprefix(top) for name in self.repository.differing(self.commit, self.here.records))

    def added(self) -> list[str]:
        """By the same comparison."""
        names = [name for name in self._differing() if _is_addition(name)] if self.here.shared else []
        self.fetch(names)
        return sorted(record for name in names for record in _added_to(name))

    def fetch(self, names: Iterable[str]) -> None:
        """Write what the commit has of them, with the photographs of each, into the folder."""
        wanted = [name for name in dict.fromkeys(names) if name not in self._fetched]
        self._fetched.update(wanted)
        top = self._prefix()
        photos = [name for name in self._photos(wanted) if name not in self._fetched]
        self._fetched.update(photos)
        asked = [f"{top}{name}" for name in (*wanted, *photos)]
        for name, content in self.repository.contents(self.commit, asked).items():
            path = self.held / name.removeprefix(top)
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(content)

    def names(self) -> list[str]:
        """By the tree of the commit."""
        top = self._prefix()
        found = self.repository.names(self.commit, self.here.records)
        return [name.removeprefix(top) for name in found if _is_record(name.removeprefix(top))]

    def _photos(self, names: Iterable[str]) -> Iterator[str]:
        top = self._prefix()
        for name in names:
            folder = photo_files.folder(self.here.root / name)
            if name.startswith("records/vehicles/") and folder.parent.is_dir():
                yield from (one.removeprefix(top) for one in self.repository.names(self.commit, folder))

    def _prefix(self) -> str:
        """What stands before a path of the workspace in its name in git; empty where the workspace is the top."""
        place = self.repository.name(self.here.root)
        return "" if place == "." else f"{place}/"


@dataclass(frozen=True)
class Folder:
    """The records in another folder."""

    here: Workspace
    workspace: Workspace
    called: str

    def differing(self) -> list[str]:
        """By comparing the files."""
        names = {name for place in (self.here, self.workspace) for name in _names(place)}
        return sorted(name for name in names if not self._is_same(name))

    def added(self) -> list[str]:
        """By comparing the files."""
        names = {name for place in (self.here, self.workspace) if place.shared for name in _additions(place)}
        return sorted(record for name in names if not self._is_same(name) for record in _added_to(name))

    def _is_same(self, name: str) -> bool:
        return _same(self.here.root / name, self.workspace.root / name)

    def fetch(self, names: Iterable[str]) -> None:
        """All of it is there."""

    def names(self) -> list[str]:
        """By the files."""
        return sorted(_names(self.workspace))


def base(here: Workspace, named: str, held: Path) -> Base:
    """What somebody names: a folder with records, else a revision, of which what is asked for is put into the empty folder `held`. Raises NoHistory."""
    folder = Path(named)
    if named and (folder / "records").is_dir():
        return Folder(here, Workspace.holding(folder, here.taking), printable(named))
    try:
        repository = Repository.holding(here.root)
        commit = repository.commit(named)
    except NoHistory as error:
        if named and folder.exists():
            raise NoHistory(message("history/no-records", folder=printable(named))) from error
        raise
    root = held.resolve()
    (root / "records").mkdir()
    return Revision(here, repository, commit, printable(named), root)


def pairs(found: Base, here: Workspace) -> list[Pair]:
    """Each record that is not what it was, before and now; one that was renamed is one pair."""
    names = found.differing()
    found.fetch(names)
    return paired(names, found.workspace.root, here.root)


def _records(name: str) -> Iterator[str]:
    """The record that a file belongs to: itself, or the one whose photograph it is."""
    path = Path(name)
    if _is_record(name):
        yield name
    elif path.parent.parent.name == photo_files.FOLDER:
        yield (path.parents[2] / f"{path.parent.name}.yaml").as_posix()


def _is_record(name: str) -> bool:
    path = Path(name)
    ours = name.startswith(("records/vehicles/", "records/gear/"))
    return ours and path.suffix in SUFFIXES and not any(part.startswith(".") for part in path.parts)


def _is_addition(name: str) -> bool:
    return name.startswith(f"records/{ADDITIONS}/") and name.endswith(".json")


def _additions(place: Workspace) -> Iterator[str]:
    for file in (place.records / ADDITIONS).glob("*/*.json"):
        yield file.relative_to(place.root).as_posix()


def _added_to(name: str) -> Iterator[str]:
    """The names that the record may have to which an addition is."""
    yield from (f"records/{section}/{Path(name).parent.name}/{Path(name).stem}.yaml" for section in KINDS)


def _names(place: Workspace) -> Iterator[str]:
    own = (Path(os.path.relpath(path, place.root)).as_posix() for path in place.own_files())
    return (name for name in own if _is_record(name))


def _same(one: Path, other: Path) -> bool:
    return one.is_file() and other.is_file() and filecmp.cmp(one, other, shallow=True)
