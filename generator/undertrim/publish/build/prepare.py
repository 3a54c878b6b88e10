"""Prepares what each vehicle publishes: page body, data, sheets. Work already done for the same record and program is reused."""

import os
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime
from functools import lru_cache, partial
from pathlib import Path
from typing import Any

from undertrim import resources
from undertrim.check.shelf import stock
from undertrim.derive import cars
from undertrim.derive.fit.stock import Stock
from undertrim.publish import facts
from undertrim.publish.build import beside, stored
from undertrim.publish.build.failures import Broken, Failure, broken, failure, making, refused
from undertrim.publish.build.stored import Stored
from undertrim.publish.facts import Facts
from undertrim.publish.facts.vehicle import Unplannable
from undertrim.publish.web import pages
from undertrim.record.digests import Digests, joined
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry, Workspace
from undertrim.words import language, message, speaking, spoken
from undertrim.work.crew import Crew, Failed
from undertrim.work.refused import Refused

Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Prepared:
    """One vehicle's files in the cache and the few facts that other pages need.

    `beside` are the files beside the page, by their names there and in the cache: data and sheets. Two with a folder of the same name
    are the same.
    """

    files: Stored
    beside: tuple[tuple[str, str], ...]

    @property
    def address(self) -> str:
        """The vehicle's `<make>/<id>`."""
        return str(self.summary["address"])

    @property
    def folder(self) -> Path:
        """Where its files are."""
        return self.files.folder

    @property
    def summary(self) -> Mapping[str, Any]:
        """The few facts."""
        return self.files.summary

    @property
    def body(self) -> str:
        """The page body. Raises stored.Damaged."""
        return self.files.content(_BODY).decode()


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
    "built_from",
    "built_to",
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
    crew: Crew | None = None,
    doubted: bool = False,
) -> list[Prepared | Failure]:
    """Prepare the vehicles, each by a worker; a vehicle that fails stops no other.

    `memory` holds some of an earlier time by their key. Files that are `doubted` are read through before they are used again.
    """
    before = memory or {}
    known = {
        item.key: found
        for item in keyed
        if (found := before.get(item.key) or finished(workspace, item.key, sheets=sheets))
        and (not doubted or found.files.whole())
    }
    fresh = _prepare_all(workspace, [item for item in keyed if item.key not in known], crew, sheets=sheets)
    made = (known[item.key] if item.key in known else next(fresh) for item in keyed)
    return list(_counted(made, len(keyed), progress))


def _prepare_all(
    workspace: Workspace, keyed: Sequence[Keyed], crew: Crew | None, *, sheets: bool
) -> Iterator[Prepared | Failure]:
    workers = crew or Crew()
    try:
        for item, made in zip(
            keyed, workers.each(partial(_prepare, workspace, sheets=sheets, tag=spoken().tag), keyed), strict=True
        ):
            shown = workspace.shown(item.path)
            yield failure(shown, _address(item.path), made) if isinstance(made, Failed) else made
    finally:
        if crew is None:
            workers.close()


def _counted(
    results: Iterator[Prepared | Failure], total: int, progress: Progress | None
) -> Iterator[Prepared | Failure]:
    for number, item in enumerate(results, 1):
        if progress:
            progress(number, total)
        yield item


def _address(path: Path) -> str:
    return f"{path.parent.name}/{path.stem}"


def finished(workspace: Workspace, key: str, *, sheets: bool) -> Prepared | None:
    """What an earlier run left under a key, if it was finished."""
    files = stored.read(cache_folder(workspace) / key, _done(sheets=sheets))
    if not files:
        return None
    beside = ((name.removeprefix(_BESIDE), name) for name in sorted(files.digests) if name.startswith(_BESIDE))
    return Prepared(files, tuple(beside))


_BODY, _BESIDE = "body.html", "beside-"


def _done(*, sheets: bool) -> str:
    return "summary-sheets.json" if sheets else "summary.json"


def _prepare(workspace: Workspace, item: Keyed, *, sheets: bool, tag: str) -> Prepared | Failure:
    """Make a vehicle's files in the language of a tag, or say why they cannot be made."""
    if tag != spoken().tag:  # a worker may have been started before anybody said which, or know nothing of it
        with speaking(language(tag)):
            return _prepare(workspace, item, sheets=sheets, tag=tag)
    shown, address = workspace.shown(item.path), _address(item.path)
    try:
        return _made(workspace, item, sheets=sheets)
    except (Unplannable, cars.TooMany) as error:
        return refused(shown, address, error.said)
    except Broken as error:
        return broken(shown, address, error)


def _made(workspace: Workspace, item: Keyed, *, sheets: bool) -> Prepared:
    """The same; where the record is being edited meanwhile, they are made again, so that a key never lies."""
    while True:
        shelf, gear = _shelf(workspace, item.gear)
        entry = workspace.load(item.path)
        made = _facts(entry, shelf)
        now = replace(item, gear=gear, key=_key(item.path, item.site_url, gear, Digests()))
        if now == item:
            break
        item = now
    _write(entry, made, item, cache_folder(workspace) / item.key, sheets=sheets)
    prepared = finished(workspace, item.key, sheets=sheets)
    assert prepared, "what was just written is there"
    return prepared


def _facts(entry: Entry, shelf: Stock) -> Facts:
    if not isinstance(entry.record, VehicleRecord):
        raise Unplannable(message("building/no-record"))
    with making(message("building/its-plan")):
        return facts.vehicle(entry, today(), shelf)


@lru_cache(maxsize=1)
def _shelf(workspace: Workspace, gear: str) -> tuple[Stock, str]:
    """The stock, and the key of the state it was read in; `gear` is the state it should have."""
    while True:
        shelf, now = stock(workspace), _gear_key(workspace, Digests())
        if now == gear:
            return shelf, now
        gear = now


def _write(entry: Entry, made: Facts, item: Keyed, folder: Path, *, sheets: bool) -> None:
    """Write a vehicle's files: those of the page by themselves, and with the sheets where they are wanted."""
    summary = {key: made[key] for key in _SUMMARY}
    with making(message("building/its-page")):
        page = (_BODY, pages.vehicle(made).encode())
    with making(message("building/its-data")):
        name, data = beside.data(made)
    files = [page, (f"{_BESIDE}{name}", data)]
    stored.write(folder, files, summary, [_done(sheets=False)])
    if sheets:
        assert isinstance(entry.record, VehicleRecord)
        printed = beside.sheets(entry.record, made, item.site_url, today())
        named = ((f"{_BESIDE}{name}", content) for name, content in printed)
        stored.write(folder, [*files, *named], summary, [_done(sheets=True)])


class BadDay(Refused):
    """SOURCE_DATE_EPOCH names no day."""


def today() -> date:
    """The day of the build; SOURCE_DATE_EPOCH overrides it for reproducible builds. Raises BadDay."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH")
    if not epoch:
        return date.today()
    try:
        return datetime.fromtimestamp(int(epoch), UTC).date()
    except (ValueError, OverflowError, OSError) as error:
        raise BadDay(message("building/no-day", typed=repr(epoch[:40]))) from error


def cache_folder(workspace: Workspace) -> Path:
    """Where prepared files are kept between builds."""
    return workspace.root / ".undertrim" / "cache" / "pages"


def _key(path: Path, site_url: str, gear: str, digests: Digests) -> str:
    """Changes with the record's place and content, the stock, the site's address, the program itself and, for the ages, the month."""
    place = "/".join(path.parts[-2:])
    return joined(digests.of(path), place, gear, site_url, resources.program(), spoken().tag, f"{today():%Y-%m}")


def _gear_key(workspace: Workspace, digests: Digests) -> str:
    """Changes with any gear record."""
    folder = workspace.records / "gear"
    paths = workspace.files([folder]) if folder.is_dir() else []
    return joined(*(f"{path.relative_to(folder)} {digests.of(path)}" for path in paths))
