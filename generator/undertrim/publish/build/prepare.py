"""Prepares what each vehicle publishes: bodies of pages, data, sheets. Work already done for the same record and program is reused."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import lru_cache, partial
from pathlib import Path

from undertrim.check.shelf import stock
from undertrim.derive.evidence.account import Account, account
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fact_names import fact_name
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.joining import Joining
from undertrim.publish.build import beside, prepared
from undertrim.publish.build.day import today
from undertrim.publish.build.failures import Broken, Failure, broken, failure, making, refused
from undertrim.publish.build.keyed import Keyed, address, gear_key
from undertrim.publish.build.prepared import Prepared, cache_folder, finished, pages_at
from undertrim.publish.encoding import Published, compact
from undertrim.publish.facts import everywhere, finding
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.facts.photos import shown
from undertrim.publish.facts.shelf import in_words
from undertrim.publish.facts.vehicle import Unplannable
from undertrim.publish.facts.with_stock import worked_out
from undertrim.publish.web import pages
from undertrim.publish.web.downloads import Downloads
from undertrim.publish.web.editions import Edition, editions
from undertrim.record.combinations import TooMany
from undertrim.record.digests import Digests
from undertrim.record.ledger import Ledger
from undertrim.record.model import VehicleRecord
from undertrim.record.photo_files import Album, album
from undertrim.record.store import Entry, Workspace
from undertrim.words import language, message, speaking
from undertrim.work.crew import Crew, Failed
from undertrim.work.workers import Workers

Progress = Callable[[int, int], None]


def prepare(
    workspace: Workspace,
    keyed: Sequence[Keyed],
    *,
    sheets: bool,
    progress: Progress | None,
    memory: Ledger | None = None,
    crew: Workers | None = None,
    doubted: bool = False,
) -> list[Prepared | Failure]:
    """Prepare the vehicles, each by a worker; a vehicle that fails stops no other.

    `memory` knows what was prepared at an earlier time. Files that are `doubted` are read through before they are used again.
    """
    memory = memory or Ledger()
    known = {
        item.path: found
        for item in keyed
        if (found := finished(workspace, item.key, item.with_stock, sheets=sheets, known=memory))
        and (not doubted or found.whole())
    }
    fresh = _prepare_all(workspace, [item for item in keyed if item.path not in known], crew, sheets=sheets)
    made = list(
        _counted((known[item.path] if item.path in known else next(fresh) for item in keyed), len(keyed), progress)
    )
    for item, one in zip(keyed, made, strict=True):
        if isinstance(one, Prepared) and item.path not in known:
            prepared.remember(memory, one, sheets=sheets)
    return made


def _prepare_all(
    workspace: Workspace, keyed: Sequence[Keyed], crew: Workers | None, *, sheets: bool
) -> Iterator[Prepared | Failure]:
    workers = crew or Crew()
    try:
        for item, made in zip(keyed, workers.each(partial(_prepare, workspace, sheets=sheets), keyed), strict=True):
            shown = workspace.shown(item.path)
            yield failure(shown, address(item.path), made) if isinstance(made, Failed) else made
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


def _prepare(workspace: Workspace, item: Keyed, *, sheets: bool) -> Prepared | Failure:
    """Make a vehicle's files in all languages of the site, or say why they cannot be made."""
    shown, name = workspace.shown(item.path), address(item.path)
    try:
        with speaking(language(item.languages[0])):  # what is said once is said in the first
            return _made(workspace, item, sheets=sheets)
    except (Unplannable, TooMany) as error:
        return refused(shown, name, error.said)
    except Broken as error:
        return broken(shown, name, error)


def _made(workspace: Workspace, item: Keyed, *, sheets: bool) -> Prepared:
    """The same; where the record is being edited meanwhile, they are made again, so that a key never lies."""
    while True:
        shelf, gear = _shelf(workspace, item.gear)
        now = item.now(gear, shelf)
        files = pages_at(workspace, now.key, sheets=sheets)
        entry, photos = workspace.load(item.path), album(item.path)
        if not isinstance(entry.record, VehicleRecord):
            raise Unplannable(message("building/no-record"))
        made = None if files and files.whole() else _facts(entry, photos, item.languages)
        scripts = _with_stock(entry, entry.record, shelf, item.languages)
        if item.now(gear, shelf) == now:
            break
    if made is not None:
        _write(entry, made, photos, now, cache_folder(workspace) / now.key, sheets=sheets)
    prepared.keep_shelf(cache_folder(workspace) / now.with_stock, scripts)
    found = finished(workspace, now.key, now.with_stock, sheets=sheets)
    assert found, "what was just written is there"
    return found


def _facts(entry: Entry, photos: Album, tags: Sequence[str]) -> Mapping[str, Published]:
    with making(message("building/its-plan")):
        return facts.in_each(entry, today(), photos, tuple(map(language, tags)))


def _with_stock(entry: Entry, record: VehicleRecord, shelf: Joining, tags: Sequence[str]) -> dict[str, dict[str, str]]:
    """The vehicle's files on the shelf, by language and page."""
    known = Vehicle(reckoned(record), entry.address, shelf.of(entry.address), clearances())
    found = {}
    with making(message("building/its-joints")):
        worked = worked_out(known)
        for tag in tags:
            with speaking(language(tag)):
                found[tag] = in_words(known.address, worked)
    return found


@lru_cache(maxsize=1)
def _shelf(workspace: Workspace, gear: str) -> tuple[Joining, str]:
    """The stock, and the key of the state it was read in; `gear` is the state it should have."""
    while True:
        shelf, now = stock(workspace), gear_key(workspace, Digests())
        if now == gear:
            return Joining(shelf), now
        gear = now


def _write(
    entry: Entry, said: Mapping[str, Published], photos: Album, item: Keyed, folder: Path, *, sheets: bool
) -> None:
    """Write a vehicle's files: those of the pages by themselves, and with the sheets where they are wanted.

    The pages and what they load are in each language. Data and sheets are in the first: a program reads the one, and the sheets cost ten times the pages.
    """
    assert isinstance(entry.record, VehicleRecord)
    made = said[item.languages[0]]
    wanted = beside.printing(entry.record, made, item.papers)
    with making(message("building/its-page")):
        bodies = {one.tag: _bodies(said[one.tag], wanted.downloads, one) for one in editions(item.languages)}
    with making(message("building/its-data")):
        with_page = [beside.data(made), *shown(entry, entry.record, photos).files()]
        own = {one.tag: _scripts(entry.record, said[one.tag], one) for one in editions(item.languages)}
    rests = account(entry.record, entry.source, entry.address, fact_name)
    summary = {one.tag: _summary(entry.record, said[one.tag], one, rests) for one in editions(item.languages)}
    places = {one.tag: _places(entry.record, said[one.tag], one) for one in editions(item.languages)}
    prepared.keep(folder, summary, bodies, with_page, own, places, sheets=False)
    if sheets:
        printed = beside.sheets(wanted, made, item.site_url, today())
        prepared.keep(folder, summary, bodies, [*with_page, *printed], own, places, sheets=True)


def _bodies(made: Published, downloads: Downloads, edition: Edition) -> Mapping[str, str]:
    """The bodies of a vehicle's pages in one language."""
    folder = f"vehicles/{made['address'].partition('/')[0]}/"
    with speaking(edition.speech):
        return pages.vehicle(made, downloads, edition.beside(folder))


def _scripts(record: VehicleRecord, made: Published, edition: Edition) -> Mapping[str, bytes]:
    """What its pages load of it when somebody looks for something or finds it not so, in one language."""
    with speaking(edition.speech):
        return dict((beside.found(made), beside.claimable(record, made)))


def _summary(record: VehicleRecord, made: Published, edition: Edition, rests: Account) -> Published:
    """The few facts that other pages need of a vehicle, in one language."""
    with speaking(edition.speech):
        return prepared.summary(made, finding.row(record, made["address"]), rests)


def _places(record: VehicleRecord, made: Published, edition: Edition) -> Mapping[str, bytes]:
    """Its openings for the pages of gear, in one language."""
    with speaking(edition.speech):
        return {kind: compact(one).encode() for kind, one in everywhere.places(record, made).items()}
