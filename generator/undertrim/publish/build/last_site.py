"""What the last build left in its folder, so that the next one takes over what has not changed instead of writing it again.

A file is taken over if it is to be what it was and nobody touched it since: it is the same file of the disk, as long and as old. It gets a
second name in the new site (a link, or a copy where the disk has no links), so that the old site stands until the new one does. What is known of the
last site is only a shortcut: where it is lost, or of another folder, all is written.
"""

import os
import shutil
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from undertrim.publish.web.placing import Piece
from undertrim.publish.web.shells import Shell
from undertrim.publish.web.site import Shells
from undertrim.record.digests import joined
from undertrim.record.ledger import Ledger
from undertrim.record.store import Workspace

_Stamp = list[int]


@dataclass(frozen=True)
class Framed:
    """What the site engine made: what it rests on, the shells of our pages by where each language stands, the files with the marks that a device keeps them by (none for some)."""

    frame: str
    shells: Mapping[str, Shells]
    files: Mapping[str, str]

    @property
    def marks(self) -> Mapping[str, str]:
        """The files that pages show or load, with their marks."""
        return {name: mark for name, mark in self.files.items() if mark}


@dataclass(frozen=True)
class LastSite:
    """The site that stands in a folder: the key and the stamp of each of its files by name, and what the engine made of them."""

    out: Path
    framed: Framed | None = None
    files: Mapping[str, tuple[str, _Stamp]] = field(default_factory=dict)

    def frame(self, frame: str) -> Framed | None:
        """What the engine made for this frame, if all of it is there still."""
        known = self.framed
        if not known or known.frame != frame or not all(self._untouched(name) for name in known.files):
            return None
        return known

    def has(self, name: str, key: str) -> bool:
        """Whether a file stands there as it should be."""
        return name in self.files and self.files[name][0] == key and self._untouched(name)

    def take(self, names: Iterable[str], fresh: Path) -> None:
        """Let some of its files stand in another folder too; their folders are there."""
        for name in names:
            old, new = f"{self.out}/{name}", f"{fresh}/{name}"
            try:
                os.link(old, new)
            except OSError:
                shutil.copy2(old, new)

    def _untouched(self, name: str) -> bool:
        return name in self.files and _stamp(f"{self.out}/{name}") == self.files[name][1]


def lay(fresh: Path, framed: Framed, pieces: Mapping[str, Piece], last: LastSite) -> LastSite:
    """Put all of a site into a fresh folder, where the engine may have put its own files already; what then is in it."""
    keys = {name: joined(piece.key) for name, piece in pieces.items()}
    taken = [name for name, key in keys.items() if last.has(name, key)]
    if framed is last.framed:
        taken += framed.files
    for folder in {name.rpartition("/")[0] for name in (*pieces, *taken)}:
        (fresh / folder).mkdir(parents=True, exist_ok=True)
    last.take(taken, fresh)
    known = {name: last.files[name] for name in taken}
    for name in pieces.keys() - known.keys():
        pieces[name].write(fresh / name)
    made = {name: keys.get(name, "") for name in (*pieces, *framed.files) if name not in known}
    return LastSite(
        last.out, framed, {**known, **{name: (key, _stamp(f"{fresh}/{name}")) for name, key in made.items()}}
    )


def read(workspace: Workspace, out: Path) -> LastSite:
    """What is known of the site in a folder; nothing, if another one was built since."""
    plain = _ledger(workspace).get(_name(out))
    try:
        shells = {place: _shells(texts) for place, texts in plain["shells"].items()}
        files = {name: (key, stamp) for name, (key, stamp) in plain["files"].items()}
        return LastSite(out, Framed(plain["frame"], shells, plain["framed"]), files)
    except (KeyError, TypeError, ValueError, AttributeError):
        return LastSite(out)


def write(workspace: Workspace, site: LastSite) -> None:
    """Remember a site that stands."""
    assert site.framed
    plain: dict[str, Any] = {"frame": site.framed.frame, "framed": site.framed.files, "files": site.files}
    plain["shells"] = {
        place: {group: shell.text for group, shell in shells.items()} for place, shells in site.framed.shells.items()
    }
    ledger = _ledger(workspace)
    ledger.put(_name(site.out), plain)
    ledger.save()


def _shells(texts: Mapping[str, str]) -> Shells:
    return {group: Shell(group, text) for group, text in texts.items()}


def _ledger(workspace: Workspace) -> Ledger:
    return Ledger(workspace.root / ".undertrim" / "cache" / "site.json")


def _name(out: Path) -> str:
    return joined(str(out))


def _stamp(path: str) -> _Stamp:
    """What a file is known by; nothing where there is none. A link to it changes none of this."""
    try:
        found = os.lstat(path)
    except OSError:
        return []
    return [found.st_mtime_ns, found.st_size, found.st_ino, found.st_mode]
