"""Finds and reads the records of a workspace: a folder that holds `records/`."""

import os
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from operator import attrgetter
from pathlib import Path

from undertrim.record import build, complaints
from undertrim.record.gear import GearRecord
from undertrim.record.mending import without
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level, Position, Problem
from undertrim.record.root import root
from undertrim.record.sharing import Sisters
from undertrim.record.sisters import Shelf
from undertrim.record.source import Pointer, Source, read
from undertrim.record.spreading import spread
from undertrim.words import message

KINDS = {"vehicles": "vehicle", "gear": "gear"}
SUFFIXES = (".yaml", ".yml")


@dataclass(frozen=True)
class Entry:
    """One record file as read: `record` is None where the file is too broken to go on with.

    `dropped` are the places whose values were left out because the schema does not allow them.
    """

    path: Path
    kind: str
    source: Source
    problems: tuple[Problem, ...]
    record: VehicleRecord | GearRecord | None
    dropped: frozenset[Pointer] = frozenset()

    @property
    def sisters(self) -> "tuple[Entry, ...]":
        """The records that it takes from."""
        return tuple(one for one in self.source.origin.sisters if isinstance(one, Entry)) if self.source.origin else ()

    @property
    def id(self) -> str:
        """The file's stem."""
        return self.path.stem

    @property
    def address(self) -> str:
        """`<folder>/<id>`: for a vehicle `<make>/<id>`, unique over the collection."""
        return address(self.path)


@dataclass(frozen=True)
class Workspace:
    """A folder with `records/vehicles`, `records/gear` and `records/handbook`."""

    root: Path

    @classmethod
    def holding(cls, start: Path) -> "Workspace":
        """The workspace that holds `start`, looking upward. Raises NoWorkspace."""
        return cls(root(start))

    @cached_property  # asked several times for every record
    def records(self) -> Path:
        """The records folder."""
        return self.root / "records"

    def files(self, paths: Iterable[Path] = ()) -> list[Path]:
        """All record files, or those among and below `paths`, sorted."""
        found = {path for start in (tuple(paths) or (self.records,)) for path in _yaml_below(_absolute(start))}
        records = self.records.resolve()
        by_folder: dict[Path, list[Path]] = defaultdict(list)
        for path in found:
            by_folder[path.parent].append(path)
        real = ((folder.resolve(), every) for folder, every in by_folder.items())
        ours = (p for folder, every in real for p in every if _inside(folder, p.name, records) not in ("", "handbook"))
        return sorted(ours, key=attrgetter("parts"))

    def kind(self, path: Path) -> str:
        """Which schema a file follows, by the folder it is in; empty for a file that is no record."""
        return KINDS.get(self._section(path), "")

    def _section(self, path: Path) -> str:
        """The folder right below `records` that holds a file, or its name where there is none; empty outside."""
        return _inside(path.parent.resolve(), path.name, self.records.resolve())

    def load(self, path: Path) -> Entry:
        """Read one file; one that points out of the records, or is in no folder of theirs, is refused unread."""
        kind, shown = self.kind(path), self.shown(path)
        refusal = None if kind else message("yaml/outside")
        if not _leads_into(path, self.records):
            refusal = message("yaml/link")
        if refusal:
            problem = Problem(shown, Position(1, 1), Level.ERROR, "yaml", refusal)
            return Entry(path, kind, Source.empty(shown), (problem,), None)
        return self.entry(path, read(path, shown))

    def entry(self, path: Path, source: Source) -> Entry:
        """A record of this workspace from its source, with what it takes from the others."""
        return entry(path, self.kind(path), source, self._shelf(path))

    def whole(self, path: Path, source: Source) -> Source:
        """A vehicle's source as a whole, with what it takes from the others."""
        return spread(source, self._shelf(path))

    def _shelf(self, path: Path) -> Shelf:
        return Shelf(self.records / "vehicles", path, self._alone)

    def _alone(self, path: Path) -> Entry:
        """A record by itself, as others take from it."""
        return entry(path, self.kind(path), read(path, self.shown(path)))

    def shown(self, path: Path) -> Path:
        """The path as problems print it: relative to the working directory where it is below it."""
        return _shown_folder(path.parent, Path.cwd()) / path.name


@lru_cache(maxsize=4096)
def _shown_folder(folder: Path, here: Path) -> Path:
    """Asked for every file, and there are few folders."""
    return Path(os.path.relpath(folder)) if _absolute(folder).is_relative_to(here) else folder


def address(path: Path) -> str:
    """`<folder>/<stem>`, by which a record is called from others."""
    return f"{path.parent.name}/{path.stem}"


def _leads_into(path: Path, records: Path) -> bool:
    try:
        return path.resolve().is_relative_to(records.resolve())
    except (RuntimeError, OSError):  # links that lead round in a circle, in older and newer Pythons
        return False


def _inside(folder: Path, name: str, records: Path) -> str:
    """The first step from `records` to a file in `folder`; empty outside."""
    step = len(records.parts)
    return (*folder.parts[step:], name)[0] if folder.parts[:step] == records.parts else ""


def _absolute(path: Path) -> Path:
    """The path from the root, links kept."""
    return Path(os.path.abspath(path))  # noqa: PTH100 - `resolve` would follow links


def entry(path: Path, kind: str, source: Source, sisters: Sisters | None = None) -> Entry:
    """A record file from its source: the whole that it says, as far as the schema allows it, and problems for the rest."""
    if source.data is None and source.problems:
        return Entry(path, kind, source, source.problems, None)
    if kind == "vehicle":
        source = spread(source, sisters)
    found = complaints.complaints(source, kind)
    told = dict.fromkeys(complaints.as_problem(source, complaint) for complaint in found)  # said once, it is told once
    problems = (*source.problems, *told)
    if complaints.too_many(found):
        return Entry(path, kind, source, problems, None)
    data, dropped = without(source.data, found, kind)
    if kind == "vehicle" and source.origin:
        data = source.origin.marked(data)
    record = _build(data, kind, sure=not found)
    if isinstance(record, VehicleRecord) and source.origin and source.origin.taken:
        record = replace(record, taken=source.origin.taken)
    return Entry(path, kind, source, problems, record, dropped)


def _build(data: object, kind: str, *, sure: bool) -> VehicleRecord | GearRecord | None:
    """The typed record; None where what the schema refused was needed."""
    if not isinstance(data, dict):
        return None
    try:
        return build.vehicle(data) if kind == "vehicle" else build.gear(data)
    except (KeyError, TypeError, ValueError, AttributeError):
        if sure:
            raise
        return None


def _yaml_below(start: Path) -> Iterator[Path]:
    """The record files at or below a path; hidden ones are an editor's, and a folder is no file by any name."""
    if start.is_dir():
        for folder, folders, names in os.walk(start, onerror=_unreadable):
            folders[:] = [name for name in folders if not name.startswith(".")]
            yield from (Path(folder, name) for name in names if name.endswith(SUFFIXES) and not name.startswith("."))
    elif start.suffix in SUFFIXES:
        yield start


def _unreadable(error: OSError) -> None:
    """What cannot be looked into may hold anything: nothing that is said of the rest would be true of the whole."""
    raise error
