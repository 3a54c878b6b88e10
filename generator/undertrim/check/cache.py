"""Remembers what was found in each file, for as long as the file and the program stay what they are.

What is kept may be damaged or gone at any time: then the file is looked at again. It holds no path, so that it serves from
any working directory. The rules look at nothing but the file, its photographs and the records that it takes from; what they say
of the collection is never kept.
"""

import json
import os
from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from undertrim import resources
from undertrim.check import kept
from undertrim.check.findings import Details
from undertrim.check.one_file import CRASH, LIMIT, Looked, card
from undertrim.record import photo_files
from undertrim.record.digests import Digests, joined
from undertrim.record.ledger import Ledger
from undertrim.record.leftovers import sweep
from undertrim.record.store import Workspace

ALL, CARD = "all", "card"
"""All that there is to say of a file, or its card alone."""

UNKEPT = frozenset({CRASH, LIMIT, "evidence-after-today", "file-name"})
"""Rules whose word is not kept: a crash or a limit says nothing of the record, how to rename depends on what else is there, and a
day to come will be past. That no day is to come stays true, so a record without such a finding is kept like any other."""


class Cache:
    """The findings of a workspace, one file each in `.undertrim/cache/check`; of all of them in short in the ledger `check.json` beside it,
    and in `meetings.json` what the rules found that hold records against each other."""

    def __init__(self, workspace: Workspace, digests: Digests | None = None) -> None:
        caches = workspace.root / ".undertrim" / "cache"
        self.folder = caches / "check"
        self.program = resources.program()
        self.meetings = Ledger(caches / "meetings.json")
        self._digests = digests or remembered(workspace)
        self._briefs = Ledger(caches / "check.json")
        self._memory: dict[str, Looked] = {}
        self._places: dict[Path, str] = {}

    def __getstate__(self) -> dict[str, Any]:
        """What a worker process needs: not what this one remembers."""
        return {**self.__dict__, "_digests": Digests(), "_memory": {}, "_places": {}}

    def get(self, workspace: Workspace, path: Path, part: str = ALL) -> Looked | None:
        """What was found in a file, if it is still known; `part` CARD asks for what the collection rules want of it."""
        key, shown = self._key(workspace, path, part), workspace.shown(path)
        found = self._memory.get(key)
        if found and found.path == shown and self._briefs.get(key):
            return found
        return self._thawed(workspace, path, key) if key else None

    def keep(self, workspace: Workspace, path: Path, work: Callable[[], Looked], part: str = ALL) -> Looked:
        """Look at a file by `work` and remember it, unless the file changed meanwhile."""
        key = self._key(workspace, path, part)
        found = work()
        lasting = UNKEPT.isdisjoint(problem.rule for problem in found.problems)
        if key and lasting and key == self._key(workspace, path, part):
            with suppress(OSError):
                _write(self.folder / key, *kept.frozen(found))
                return replace(found, key=key)
        return found

    def entered(self, workspace: Workspace, path: Path, found: Looked) -> Looked:
        """The same as `keep` gave it, somewhere; what was kept is entered in the ledger, and gives its details when asked."""
        return self._thawed(workspace, path, found.key) or found if found.key else found

    def _thawed(self, workspace: Workspace, path: Path, key: str) -> Looked | None:
        brief = self._briefs.get(key) or _read(self.folder / key)[0]
        try:
            found = kept.thawed(brief, path, workspace.shown(path), partial(self._details, workspace, path, key), key)
        except DAMAGED:
            return None
        self._briefs.put(key, brief)
        self._memory[key] = found
        return found

    def _details(self, workspace: Workspace, path: Path, key: str) -> Details:
        """The details that were kept; where they are gone or damaged, those of the file as it is now."""
        try:
            return kept.details(_read(self.folder / key)[1])
        except DAMAGED:
            now = card(workspace.load(path))
            return now.details if now else Details()

    def save(self) -> None:
        """Write the ledgers at the end of a run: what was asked for in it is all that is known to the next one."""
        for ledger in (self._briefs, self.meetings, self._digests.ledger):
            ledger.save()

    def sweep(self) -> None:
        """Remove what belongs to none of the files asked for since this was made."""
        sweep(self.folder, self._memory)

    def _key(self, workspace: Workspace, path: Path, part: str) -> str:
        """Changes with a record's place, its content, its photographs and the program; empty for what is no ordinary file of the records."""
        folder = self._place(workspace, path.parent)
        try:
            if not folder or path.is_symlink():
                return ""
            photos = photo_files.state(path, self._digests)
            beside = workspace.beside_state(path, self._digests)
            said = workspace.state(path, self._digests)
            return joined(said, folder, path.name, photos, self.program, part, *filter(None, [beside]))
        except OSError:
            return ""

    def _place(self, workspace: Workspace, folder: Path) -> str:
        """Where in the records a folder is; empty outside, and for one that is reached by a link."""
        if folder not in self._places:
            real, records = folder.resolve(), workspace.records.resolve()
            inside = real.is_relative_to(records) and folder.parts[-2:] == real.parts[-2:]
            self._places[folder] = (
                f"{workspace.kind(folder / 'x.yaml')} {real.relative_to(records).as_posix()}" if inside else ""
            )
        return self._places[folder]


DAMAGED = (OSError, KeyError, TypeError, ValueError, AttributeError, ImportError)
"""What comes of reading something else than what was written."""


def remembered(workspace: Workspace) -> Digests:
    """The digests of a workspace's files, in the ledger `files.json` of its cache."""
    return Digests(Ledger(workspace.root / ".undertrim" / "cache" / "files.json"), workspace.root)


def _read(kept_in: Path) -> tuple[dict[str, Any], dict[str, Any]]:
    """What was written, in short and the details; nothing where it is not whole."""
    try:
        digest, brief, details = kept_in.read_text(encoding="utf-8").split("\n")
        return (json.loads(brief), json.loads(details)) if digest == joined(brief, details) else ({}, {})
    except DAMAGED:
        return {}, {}


def _write(path: Path, *known: dict[str, Any]) -> None:
    """Write in one piece, so that another process never sees half of it."""
    texts = [json.dumps(one, ensure_ascii=False, separators=(",", ":")) for one in known]
    path.parent.mkdir(parents=True, exist_ok=True)
    aside = path.with_suffix(f".{os.getpid()}")
    aside.write_text("\n".join((joined(*texts), *texts)), encoding="utf-8")
    aside.replace(path)
