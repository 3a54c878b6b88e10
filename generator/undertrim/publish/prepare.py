"""Prepares what each vehicle publishes: page body, data, sheets. Work already done for the same record and program is reused."""

import json
import os
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime
from functools import lru_cache, partial
from pathlib import Path
from typing import Any

from undertrim import resources
from undertrim.check.shelf import stock
from undertrim.derive.fit.stock import Stock
from undertrim.publish import beside, facts, pages
from undertrim.publish.facts import Facts
from undertrim.record.digests import Digests, joined
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

FEW = 4
"""With fewer vehicles than this to prepare, starting more processes is not worth it."""

Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Prepared:
    """One vehicle's files in the cache and the few facts that other pages need.

    `beside` are the files beside the page by their name: data and sheets. Two with a folder of the same name are the same.
    """

    address: str
    folder: Path
    summary: Mapping[str, Any]

    beside: tuple[tuple[str, Path], ...]

    @property
    def body(self) -> str:
        """The page body."""
        return (self.folder / "body.html").read_text(encoding="utf-8")


_SUMMARY = (
    "address",
    "id",
    "make",
    "model",
    "years",
    "first_year",
    "last_year",
    "phase",
    "built",
    "bodies",
    "also_called",
    "demo",
    "title",
)


@dataclass(frozen=True, slots=True)
class Keyed:
    """A vehicle record, the site it is prepared for, the state of the stock, and the name of the folder that its files then have."""

    path: Path
    site_url: str
    gear: str
    key: str


def keys(workspace: Workspace, paths: Sequence[Path], site_url: str, digests: Digests) -> list[Keyed]:
    """The vehicles at `paths`, and the gear that is held against them, as they are now."""
    gear = _gear_key(workspace, digests)
    return [Keyed(path, site_url, gear, _key(path, site_url, gear, digests)) for path in paths]


def prepare(
    workspace: Workspace,
    keyed: Sequence[Keyed],
    *,
    sheets: bool,
    progress: Progress | None,
    memory: Mapping[str, Prepared] | None = None,
) -> list[Prepared]:
    """Prepare the vehicles, in parallel when there are several; `memory` holds some of an earlier time by their key."""
    before = memory or {}
    known = {
        item.key: found
        for item in keyed
        if (found := before.get(item.key) or _known(workspace, item.key, sheets=sheets))
    }
    fresh = _prepare_all(workspace, [item for item in keyed if item.key not in known], sheets=sheets)
    made = (known[item.key] if item.key in known else next(fresh) for item in keyed)
    return list(_counted(made, len(keyed), progress))


def _prepare_all(workspace: Workspace, keyed: Sequence[Keyed], *, sheets: bool) -> Iterator[Prepared]:
    work = partial(_prepare, workspace, sheets=sheets)
    if len(keyed) < FEW:
        yield from map(work, keyed)
        return
    with ProcessPoolExecutor(max_workers=os.cpu_count()) as pool:
        yield from pool.map(work, keyed, chunksize=max(1, min(16, len(keyed) // 8)))


def _counted(results: Iterator[Prepared], total: int, progress: Progress | None) -> Iterator[Prepared]:
    for number, item in enumerate(results, 1):
        if progress:
            progress(number, total)
        yield item


def _known(workspace: Workspace, key: str, *, sheets: bool) -> Prepared | None:
    """What an earlier run left under a key, if it was finished."""
    folder = cache_folder(workspace) / key
    try:
        summary = json.loads((folder / _done(sheets=sheets)).read_text(encoding="utf-8"))
        names = sorted(name for name in os.listdir(folder) if name.startswith(_BESIDE))  # noqa: PTH208 - 5,000 times
    except (OSError, ValueError):
        return None
    beside = tuple((name.removeprefix(_BESIDE), folder / name) for name in names if sheets or not name.endswith(".pdf"))
    return Prepared(summary["address"], folder, summary, beside)


_BESIDE = "beside-"


def _done(*, sheets: bool) -> str:
    return "summary-sheets.json" if sheets else "summary.json"


def _prepare(workspace: Workspace, item: Keyed, *, sheets: bool) -> Prepared:
    """Make a vehicle's files. Where it is being edited meanwhile, they are made again, so that a key never lies."""
    while True:
        shelf, gear = _shelf(workspace, item.gear)
        entry = workspace.load(item.path)
        made = facts.vehicle(entry, today(), shelf)
        now = replace(item, gear=gear, key=_key(item.path, item.site_url, gear, Digests()))
        if now == item:
            break
        item = now
    assert isinstance(entry.record, VehicleRecord)
    printed = beside.sheets(entry.record, made, item.site_url, today()) if sheets else ()
    _write(made, cache_folder(workspace) / item.key, [beside.data(made), *printed], sheets=sheets)
    prepared = _known(workspace, item.key, sheets=sheets)
    assert prepared, "what was just written is there"
    return prepared


@lru_cache(maxsize=1)
def _shelf(workspace: Workspace, gear: str) -> tuple[Stock, str]:
    """The stock, and the key of the state it was read in; `gear` is the state it should have."""
    while True:
        shelf, now = stock(workspace), _gear_key(workspace, Digests())
        if now == gear:
            return shelf, now
        gear = now


def _write(made: Facts, folder: Path, files: Iterable[tuple[str, bytes]], *, sheets: bool) -> None:
    """Write a vehicle's files; the summary comes last, so that a half-made folder is never taken for done."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "body.html").write_text(pages.vehicle(made), encoding="utf-8")
    for name, content in files:
        (folder / f"{_BESIDE}{name}").write_bytes(content)
    summary = json.dumps({key: made[key] for key in _SUMMARY}, ensure_ascii=False)
    for name in {_done(sheets=False), _done(sheets=sheets)}:
        (folder / name).write_text(summary, encoding="utf-8")


def today() -> date:
    """The day of the build; SOURCE_DATE_EPOCH overrides it for reproducible builds."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH")
    return datetime.fromtimestamp(int(epoch), UTC).date() if epoch else date.today()


def cache_folder(workspace: Workspace) -> Path:
    """Where prepared files are kept between builds."""
    return workspace.root / ".undertrim" / "cache" / "pages"


def _key(path: Path, site_url: str, gear: str, digests: Digests) -> str:
    """Changes with the record's place and content, the stock, the site's address, the program itself and, for the ages, the month."""
    place = "/".join(path.parts[-2:])
    return joined(digests.of(path), place, gear, site_url, resources.program(), f"{today():%Y-%m}")


def _gear_key(workspace: Workspace, digests: Digests) -> str:
    """Changes with any gear record."""
    folder = workspace.records / "gear"
    paths = workspace.files([folder]) if folder.is_dir() else []
    return joined(*(f"{path.relative_to(folder)} {digests.of(path)}" for path in paths))
