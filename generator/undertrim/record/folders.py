"""Where the records of a workspace stand: in its own folder, and in the shared collections that it lies on. Nothing is read here."""

import os
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache
from operator import attrgetter
from pathlib import Path, PurePath

from undertrim.record.layers import ADDITIONS, NOTES, Shared
from undertrim.record.sisters import vehicle_files

KINDS = {"vehicles": "vehicle", "gear": "gear"}
SUFFIXES = (".yaml", ".yml")


@dataclass(frozen=True)
class Folders:
    """A folder with `records/vehicles`, `records/gear` and `records/handbook`, and the `shared` collections that it lies on, lower ones first."""

    root: Path
    shared: tuple[Shared, ...] = ()

    @cached_property  # asked several times for every record
    def records(self) -> Path:
        """The own records folder: what is written is written there."""
        return self.root / "records"

    @cached_property
    def _homes(self) -> tuple[Path, ...]:
        """The records folders, the own one first and then from the highest one down."""
        return (self.records, *(one.records for one in reversed(self.shared)))

    def files(self, paths: Iterable[Path] = ()) -> list[Path]:
        """All record files, or those among and below `paths`, sorted. A shared one in whose place there is an own one is left out."""
        found = {path for start in (tuple(paths) or self._homes) for path in _yaml_below(_absolute(start))}
        homes = [home.resolve() for home in self._homes]
        by_folder: dict[Path, list[Path]] = defaultdict(list)
        for path in found:
            by_folder[path.parent].append(path)
        real = ((folder.resolve(), every) for folder, every in by_folder.items())
        ours = (p for folder, every in real for p in every if _section(folder, p.name, homes) not in ("", "handbook"))
        return sorted(self._uncovered(ours), key=attrgetter("parts"))

    def every(self, section: str) -> list[Path]:
        """The record files of a section, `vehicles` or `gear`, in the order of their addresses."""
        folders = [home / section for home in self._homes]
        return sorted(self.files(folder for folder in folders if folder.is_dir()), key=lambda path: path.parts[-2:])

    def all_of(self) -> list[Path]:
        """The record files of both sections."""
        return [path for section in KINDS for path in self.every(section)]

    def own(self, section: str, path: PurePath | str) -> Path:
        """Where a record of that section is to stand that is the shop's own."""
        return self.records / section / path

    def own_files(self, paths: Iterable[Path] = ()) -> list[Path]:
        """Like `files`, without those that may not be written."""
        return [path for path in self.files(paths) if self.is_own(path)]

    def is_own(self, path: Path) -> bool:
        """Whether a record is in the own collection, so that it may be written."""
        return not self.shared or self._home(path) == self.records

    def note(self, path: Path) -> Path:
        """Where the private note on a vehicle stands, if there is one."""
        return self.records / NOTES / path.parent.name / f"{path.stem}.txt"

    def addition(self, path: Path) -> Path:
        """Where the own collection keeps what it adds to a shared record: a claims file."""
        return self.records / ADDITIONS / path.parent.name / f"{path.stem}.json"

    def additions(self, path: Path) -> list[Path]:
        """What layers above it add to a shared record, the lowest first."""
        if not self.shared or not self.kind(path):
            return []
        home, homes = self._home(path), [*(one.records for one in self.shared), self.records]
        above = homes[homes.index(home) + 1 :] if home in homes else []
        files = (Path(one, *self.addition(path).parts[-3:]) for one in above)
        return [file for file in files if file.is_file()]

    def at(self, name: str) -> Path:
        """A record by its name below a collection, such as `records/gear/kits/x.yaml`: the own one, else the highest that is there."""
        found = (home.parent / name for home in self._homes)
        return next((path for path in found if path.is_file()), self.root / name)

    def name(self, path: Path) -> str:
        """The name of a record below its collection, as `at` takes it."""
        own = path.is_relative_to(self.root) and self.is_own(path)
        return path.relative_to(self.root).as_posix() if own else "/".join((self.records.name, *path.parts[-3:]))

    def kind(self, path: Path) -> str:
        """Which schema a file follows, by the folder it is in; empty for a file that is no record."""
        section = _section(path.parent.resolve(), path.name, [home.resolve() for home in self._homes])
        return KINDS.get(section, "")

    def beside(self) -> list[Path]:
        """The vehicles from which others may take, by address."""
        found = {file.parts[-2:]: file for home in reversed(self._homes) for file in vehicle_files(home / "vehicles")}
        return [found[key] for key in sorted(found)]

    def _home(self, path: Path) -> Path | None:
        """The records folder that holds a file."""
        folder = path.parent.resolve()
        return next((home for home in self._homes if folder.is_relative_to(home.resolve())), None)

    def _uncovered(self, paths: Iterable[Path]) -> Iterable[Path]:
        """Those in whose place none of a higher layer stands."""
        if not self.shared:
            return paths
        return (
            path for path in paths if not any(home.joinpath(*path.parts[-3:]).is_file() for home in self._above(path))
        )

    def covered(self, path: Path) -> list[Path]:
        """The shared records in whose place an own one stands: all go by one address."""
        lower = self._homes[1:] if self.is_own(path) else ()
        return [file for home in lower if (file := home.joinpath(*path.parts[-3:])).is_file()]

    def _above(self, path: Path) -> tuple[Path, ...]:
        home = self._home(path)
        return self._homes[: self._homes.index(home)] if home else ()

    def shown(self, path: Path) -> Path:
        """The path as problems print it: relative to the working directory where it is below it."""
        return _shown_folder(path.parent, Path.cwd()) / path.name


@lru_cache(maxsize=4096)
def _shown_folder(folder: Path, here: Path) -> Path:
    """Asked for every file, and there are few folders."""
    return Path(os.path.relpath(folder)) if _absolute(folder).is_relative_to(here) else folder


def _section(folder: Path, name: str, homes: Iterable[Path]) -> str:
    """The folder right below some `records` that holds a file, or its name where there is none; empty outside."""
    return next((found for home in homes if (found := _inside(folder, name, home))), "")


def _inside(folder: Path, name: str, records: Path) -> str:
    """The first step from `records` to a file in `folder`; empty outside."""
    step = len(records.parts)
    return (*folder.parts[step:], name)[0] if folder.parts[:step] == records.parts else ""


def _absolute(path: Path) -> Path:
    """The path from the root, links kept."""
    return Path(os.path.abspath(path))  # noqa: PTH100 - `resolve` would follow links


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
