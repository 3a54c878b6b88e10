"""The collections that a shop's own one lies on: `collections` in its `undertrim.toml`, lower ones first.

Each is a folder relative to that file (a git submodule is one), or `package:NAME` for an installed Python package that carries `records/`. A
shared one may lie on others itself. Nothing is ever written into any of them: whoever writes asks `Workspace.is_own`.
"""

import os
import re
from collections.abc import Iterator
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path

from undertrim.record.collection import NAME, BadSettings, settings
from undertrim.record.problem import printable
from undertrim.words import Message, message, quoted
from undertrim.work.refused import Refused

PACKAGE = "package:"
ADDITIONS, NOTES = "additions", "notes"
"""Folders of `records/`: what a layer adds to the vehicles of those below it, and what it notes for itself."""


@dataclass(frozen=True, slots=True)
class Shared:
    """A collection below the own one: what it is called, and the folder that holds its `records/`."""

    name: str
    root: Path

    @property
    def records(self) -> Path:
        """Its records folder."""
        return self.root / "records"


class NotOwn(Refused):
    """A record of a shared collection was to be written."""

    def __init__(self, path: Path, collection: str) -> None:
        super().__init__(message("layers/not-own", path=printable(str(path)), collection=collection))


@dataclass(frozen=True, slots=True)
class Layered:
    """A shared vehicle's record with what the layers above it add.

    `origins` has for each line of `text` the file and the line that it is from. `evidence` are the ids of what the own layer brought.
    """

    text: str
    origins: tuple[tuple[Path, int], ...]
    evidence: frozenset[str]


def shared(root: Path) -> tuple[Shared, ...]:
    """The collections that the one at `root` lies on, lower ones first, each once. Raises BadSettings."""
    return tuple({one.root: one for one in _below(root.resolve(), (root.resolve(),))}.values())


def _below(root: Path, above: tuple[Path, ...]) -> Iterator[Shared]:
    path = root / NAME
    for named in settings(root).collections:
        found = _found(path, root, named)
        if found.root in above:
            round_ = " → ".join(map(str, (*above[above.index(found.root) :], found.root)))
            raise _bad(path, named, message("layers/circle", name=quoted(named), round=round_))
        yield from _below(found.root, (*above, found.root))
        yield found


def named_on(root: Path, typed: str, here: Path) -> str:
    """What the settings of a collection at `root` say for a shared one that is typed `here`. Raises BadSettings where there is none."""
    named = typed
    if not typed.startswith(PACKAGE):
        folder = (here / Path(typed).expanduser()).resolve()
        try:
            named = Path(os.path.relpath(folder, root.resolve())).as_posix()
        except ValueError:  # another drive
            named = folder.as_posix()
    _found(root / NAME, root, named)
    return named


def _found(path: Path, root: Path, named: str) -> Shared:
    """One collection by what is typed. Raises BadSettings."""
    is_package = named.startswith(PACKAGE)
    folder = _package(path, named) if is_package else root / Path(named).expanduser()
    if not folder.is_dir():
        raise _bad(path, named, message("layers/no-folder", name=quoted(named), folder=str(folder)))
    if not (folder / "records").is_dir():
        raise _bad(path, named, message("layers/no-records", name=quoted(named), folder=str(folder)))
    usual = named.removeprefix(PACKAGE) if is_package else folder.resolve().name
    return Shared(settings(folder).name or usual, folder.resolve())


def _package(path: Path, named: str) -> Path:
    """Where an installed package is; none of its code is run."""
    name = named.removeprefix(PACKAGE)
    try:
        spec = find_spec(name) if name.isidentifier() else None
    except (ImportError, ValueError):
        spec = None
    places = list(spec.submodule_search_locations or ()) if spec else []
    if not places:
        raise _bad(path, named, message("layers/no-package", name=quoted(named), package=name))
    return next((Path(place) for place in places if (Path(place) / "records").is_dir()), Path(places[0]))


def _bad(path: Path, named: str, said: Message) -> BadSettings:
    """The refusal with the line and the column at which the entry stands."""
    if not path.is_file():
        return BadSettings(path, said)
    text = path.read_text(encoding="utf-8")
    start = max(text.find("collections"), 0)
    found = re.compile(f"[\"']{re.escape(named)}[\"']").search(text, start)
    before = text[: found.start() if found else start]
    line, column = before.count("\n") + 1, len(before) - before.rfind("\n")
    return BadSettings(Path(f"{path}:{line}:{column}"), said)
