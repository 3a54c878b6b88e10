"""One record file as read, and the record that it makes."""

from dataclasses import dataclass, replace
from pathlib import Path

from undertrim.record import build, complaints
from undertrim.record.gear import GearRecord
from undertrim.record.mending import without
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Problem
from undertrim.record.sharing import Sisters
from undertrim.record.source import Pointer, Source
from undertrim.record.spreading import spread


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


def address(path: Path) -> str:
    """`<folder>/<stem>`, by which a record is called from others."""
    return f"{path.parent.name}/{path.stem}"


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
