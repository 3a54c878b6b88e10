"""How the shares of what is known, measured and verified went, month by month, as git has kept the records."""

import hashlib
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from undertrim.derive.evidence.account import Shares, account
from undertrim.record.history.base import Revision
from undertrim.record.history.git import Repository
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

MOST = 24
"""So many months are looked at. Our own choice: two years."""


@dataclass(frozen=True, slots=True)
class Month:
    """A month (`2026-11`) with the number of vehicles and the shares of all their facts at its last commit."""

    month: str
    vehicles: int
    shares: Shares


def over_time(place: Workspace, held: Path, progress: Callable[[int, int], None] | None = None) -> Iterator[Month]:
    """The last months in which a record changed, the earliest first. What was there is put into `held`, an empty folder. Raises NoHistory.

    A record is read again only where its text is another one; what it takes from others does not count for it.
    """
    repository = Repository.holding(place.root)
    months = last_of_each(repository.commits(place.records))[-MOST:]
    known: dict[str, Shares] = {}
    for number, (month, commit) in enumerate(months, 1):
        folder = held / month
        (folder / "records").mkdir(parents=True)
        then = Revision(place, repository, commit, month, folder)
        then.fetch(name for name in then.names() if name.startswith("records/vehicles/"))
        every = [_shares(then.workspace, path, known) for path in then.workspace.files()]
        yield Month(month, len(every), sum(every, Shares()))
        if progress:
            progress(number, len(months))


def last_of_each(commits: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    """The newest commit of each month with its month, the earliest month first; `commits` are the newest first, with their days."""
    found: dict[str, str] = {}
    for commit, day in commits:
        found.setdefault(day[:7], commit)
    return sorted(found.items())


def _shares(place: Workspace, path: Path, known: dict[str, Shares]) -> Shares:
    key = hashlib.sha256(path.read_bytes()).hexdigest()
    if key not in known:
        entry = place.load(path)
        known[key] = Shares()
        if isinstance(entry.record, VehicleRecord):
            known[key] = account(entry.record, entry.source, entry.address).shares
    return known[key]
