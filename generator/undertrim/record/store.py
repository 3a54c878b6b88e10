"""Reads the records of a workspace: a folder that holds `records/`, and the shared collections that it lies on."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from pathlib import Path

from undertrim.record import layers, plain_files
from undertrim.record.digests import Digests, joined
from undertrim.record.entries import Entry, address, entry
from undertrim.record.folders import KINDS, SUFFIXES, Folders
from undertrim.record.layers import Layered, NotOwn
from undertrim.record.problem import Level, Position, Problem
from undertrim.record.root import root
from undertrim.record.sisters import Shelf, sisters_digest
from undertrim.record.source import Source, read, read_text
from undertrim.record.spreading import spread
from undertrim.record.whose import NOBODYS, Whose
from undertrim.record.writing import write_text
from undertrim.words import message

__all__ = ["KINDS", "SUFFIXES", "Entry", "Workspace", "address", "entry"]

_LONGEST_NOTE = 20_000
"""Bytes of a private note that are shown."""

Taking = Callable[["Workspace", Path], Layered]
"""What makes a shared vehicle's record with what the layers above it add; it takes answers, which is done further up."""


@dataclass(frozen=True)
class Workspace(Folders):
    """The records of a folder, and of those that it lies on: it reads all of them and writes its own alone.

    Without `taking`, shared vehicles are read as they are, without what is added to them.
    """

    taking: Taking | None = field(default=None, compare=False)

    @classmethod
    def holding(cls, start: Path, taking: Taking | None = None) -> "Workspace":
        """The workspace that holds `start`, looking upward. Raises NoWorkspace and BadSettings."""
        home = root(start)
        return cls(home, layers.shared(home), taking)

    @property
    def bare(self) -> "Workspace":
        """The same without what is added to shared vehicles."""
        return replace(self, taking=None)

    def renewed(self) -> "Workspace":
        """The same on what its settings name now; one that was not found by them stays. Raises BadSettings."""
        return replace(self, shared=layers.shared(self.root)) if self.taking else self

    def refuse_shared(self, path: Path) -> None:
        """Raise NotOwn for a record that may not be written."""
        if not self.is_own(path):
            raise NotOwn(self.shown(path), self.whose(path).collection)

    def write(self, path: Path, text: str) -> None:
        """Put a text in the place of an own record's. Raises NotOwn, and OSError."""
        self.refuse_shared(path)
        write_text(path, text)

    def whose(self, path: Path) -> Whose:
        """Whose a record is, by where it stands; with the private note on it."""
        if not self.shared:
            return NOBODYS
        home = self._home(path)
        note = _text(self.note(path)) if self.kind(path) == "vehicle" else ""
        return Whose(
            next((one.name for one in self.shared if one.records == home), ""), home == self.records, note=note
        )

    def state(self, path: Path, digests: Digests) -> str:
        """Changes with all that is said of a record: its file, what is added to it, the note on it, whose it is. Raises OSError."""
        if not self.shared:
            return digests.of(path)
        whose = self.whose(path)
        files = [path, *(self.additions(path) if self.taking else ())]
        return joined(*map(digests.of, files), whose.collection, whose.note)

    def load(self, path: Path) -> Entry:
        """Read one file; one that points out of the records, or is in no folder of theirs, is refused unread."""
        kind, shown = self.kind(path), self.shown(path)
        refusal = None if kind else message("yaml/outside")
        if not any(_leads_into(path, home) for home in self._homes):
            refusal = message("yaml/link")
        if refusal:
            problem = Problem(shown, Position(1, 1), Level.ERROR, "yaml", refusal)
            return Entry(path, kind, Source.empty(shown), (problem,), None)
        source, layered = self._read(path)
        return self._signed(self.entry(path, source), layered)

    def _signed(self, found: Entry, layered: Layered | None) -> Entry:
        """A record that says whose it is."""
        if not self.shared or not found.record:
            return found
        whose = self.whose(found.path)
        whose = replace(whose, evidence=layered.evidence) if layered else whose
        return replace(found, record=replace(found.record, whose=whose))

    def _read(self, path: Path) -> tuple[Source, Layered | None]:
        """What a file says, with what is added to it."""
        layered = self.layered(path)
        return (read_text(layered.text, self.shown(path)) if layered else read(path, self.shown(path))), layered

    def layered(self, path: Path) -> Layered | None:
        """A shared vehicle with what the layers above it add; None where they add nothing."""
        return self.taking(self, path) if self.taking and self.additions(path) else None

    def entry(self, path: Path, source: Source) -> Entry:
        """A record of this workspace from its source, with what it takes from the others."""
        return entry(path, self.kind(path), source, self._shelf(path))

    def whole(self, path: Path, source: Source) -> Source:
        """A vehicle's source as a whole, with what it takes from the others."""
        return spread(source, self._shelf(path))

    def _shelf(self, path: Path) -> Shelf:
        return Shelf(self.beside, path, self._alone)

    def beside_state(self, path: Path, digests: Digests) -> str:
        """Changes with every record that the one at `path` may take from; empty where it takes from none. Raises OSError."""
        return sisters_digest(self.beside, path, digests, lambda other: self.state(other, digests))

    def _alone(self, path: Path) -> Entry:
        """A record by itself, as others take from it."""
        return entry(path, self.kind(path), self._read(path)[0])

    def is_same(self, one: Path, other: Path) -> bool:
        """Whether two records say the same, however they are laid out."""
        return one.read_bytes() == other.read_bytes() or read(one).data == read(other).data is not None


def _leads_into(path: Path, records: Path) -> bool:
    try:
        return path.resolve().is_relative_to(records.resolve())
    except (RuntimeError, OSError):  # links that lead round in a circle, in older and newer Pythons
        return False


def _text(path: Path) -> str:
    """The text of a note; nothing where there is none that can be read."""
    try:
        return plain_files.read(path, _LONGEST_NOTE).decode("utf-8", "replace").strip()
    except (OSError, plain_files.NotPlain):
        return ""
