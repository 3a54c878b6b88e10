"""The files that are kept of a vehicle, and what an earlier run left of them."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache, partial
from pathlib import Path
from typing import Any

from undertrim.derive.evidence.account import Account
from undertrim.derive.finding.rows import Row
from undertrim.publish.build import stored
from undertrim.publish.build.stored import Stored
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts import account
from undertrim.record.ledger import Ledger
from undertrim.record.store import Workspace
from undertrim.words import spoken

_BODY, _BESIDE, _OWN, _PLACES = "body-", "beside-", "own-", "places-"

_SUMMARY = (  # of each language: some of it is in words
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
class Prepared:
    """One vehicle's files in the cache and the few facts that other pages need.

    `beside` are the files beside the pages that stand once for all languages, by their names there and in the cache: data, pictures and sheets. `shelf` has its files there: what follows
    from it and the stock.
    """

    files: Stored
    shelf: Stored
    beside: tuple[tuple[str, str], ...]

    @property
    def address(self) -> str:
        """The vehicle's `<make>/<id>`."""
        return str(next(iter(self.files.summary.values()))["address"])

    @property
    def keys(self) -> tuple[str, str]:
        """The names of the folders where its files are, and where that of the shelf is. Two with the same are the same."""
        return self.files.folder.name, self.shelf.folder.name

    def whole(self) -> bool:
        """Whether every file is there as it was written."""
        return self.files.whole() and self.shelf.whole()

    @property
    def own(self) -> Mapping[str, str]:
        """The scripts beside its pages in the reader's language, by their names there, as `files` has them."""
        begun = f"{_OWN}{spoken().tag}-"
        return {name.removeprefix(begun): name for name in self.files.digests if name.startswith(begun)}

    @property
    def with_stock(self) -> Mapping[str, str]:
        """Its files on the shelf in the reader's language, by the name of the page that asks for one, as `shelf` has them."""
        begun = f"{spoken().tag}-"
        own = (name for name in self.shelf.digests if name.startswith(begun))
        return {name.removeprefix(begun).removesuffix(".js"): name for name in own}

    @property
    def summary(self) -> Mapping[str, Any]:
        """The few facts, in the language of the reader."""
        return self.files.summary[spoken().tag]  # type: ignore[no-any-return] # a part of what JSON held

    def speaks(self, tags: Iterable[str]) -> bool:
        """Whether its pages are there in these languages."""
        return set(tags) <= self.files.summary.keys()

    def body(self, view: str) -> str:
        """The body of a page by the name of its view, in the language of the reader. Raises stored.Damaged."""
        return self.files.content(_body(spoken().tag, view)).decode()

    def digest(self, view: str) -> str:
        """The digest of the same."""
        return self.files.digests[_body(spoken().tag, view)]

    def places(self) -> dict[str, tuple[str, Callable[[], bytes]]]:
        """Its openings for the pages of gear: in the language of the reader, by the kind of gear their digest, and how to get them as JSON (raises stored.Damaged)."""
        names = [name for name in self.files.digests if name.startswith(f"{_PLACES}{spoken().tag}-")]
        return {_kind(name): (self.files.digests[name], partial(self.files.content, name)) for name in names}


def finished(
    workspace: Workspace, key: str, with_stock: str, *, sheets: bool, known: Ledger | None = None
) -> Prepared | None:
    """What an earlier run left under the two keys of a vehicle, if both were finished; `known` spares the look at the disk."""
    files = pages_at(workspace, key, sheets=sheets, known=known)
    shelf = _stored(workspace, with_stock, _done(sheets=False), known) if files else None
    if not files or not shelf:
        return None
    beside = ((name.removeprefix(_BESIDE), name) for name in sorted(files.digests) if name.startswith(_BESIDE))
    return Prepared(files, shelf, tuple(beside))


def pages_at(workspace: Workspace, key: str, *, sheets: bool, known: Ledger | None = None) -> Stored | None:
    """The files that rest on the record alone, if an earlier run finished them."""
    return _stored(workspace, key, _done(sheets=sheets), known)


def _stored(workspace: Workspace, key: str, done: str, known: Ledger | None) -> Stored | None:
    folder = cache_folder(workspace) / key
    plain = known.get(f"{key} {done}") if known else None
    found = Stored(folder, plain["summary"], plain["digests"]) if plain else stored.read(folder, done)
    if known and found and not plain:
        _remember(known, found, done)
    return found


def remember(known: Ledger, made: Prepared, *, sheets: bool) -> None:
    """Enter what was prepared."""
    _remember(known, made.files, _done(sheets=sheets))
    _remember(known, made.shelf, _done(sheets=False))


def _remember(known: Ledger, made: Stored, done: str) -> None:
    known.put(f"{made.folder.name} {done}", {"summary": made.summary, "digests": made.digests})


def keep(
    folder: Path,
    summary: Mapping[str, Published],
    bodies: Mapping[str, Mapping[str, str]],
    beside: Sequence[tuple[str, bytes]],
    own: Mapping[str, Mapping[str, bytes]],
    places: Mapping[str, Mapping[str, bytes]],
    *,
    sheets: bool,
) -> None:
    """Keep in a folder of the cache the bodies of a vehicle's pages, by language and view, the files beside them, by language the scripts beside them and its openings for each kind of gear; `sheets` says that they are all."""
    files = [(_body(tag, view), body.encode()) for tag, views in bodies.items() for view, body in views.items()]
    files += [(f"{_BESIDE}{name}", content) for name, content in beside]
    files += [(f"{_OWN}{tag}-{name}", content) for tag, of in own.items() for name, content in of.items()]
    files += [(f"{_PLACES}{tag}-{kind}.json", content) for tag, of in places.items() for kind, content in of.items()]
    stored.write(folder, files, summary, [_done(sheets=sheets)])


def summary(made: Published, row: Row, rests: Account) -> Published:
    """The few facts that other pages need of a vehicle, how it is found, and what its facts rest on."""
    return {**{key: made[key] for key in _SUMMARY}, "row": said(list(row)), "account": account.plain(rests)}


def keep_shelf(folder: Path, scripts: Mapping[str, Mapping[str, str]]) -> None:
    """Keep a vehicle's files on the shelf, by language and page, in a folder of the cache."""
    files = [(f"{tag}-{view}.js", text.encode()) for tag, views in scripts.items() for view, text in views.items()]
    stored.write(folder, files, {}, [_done(sheets=False)])


def _body(tag: str, view: str) -> str:
    return f"{_BODY}{tag}-{view}.html"


def _kind(name: str) -> str:
    return name.removesuffix(".json").rpartition("-")[2]


def _done(*, sheets: bool) -> str:
    return "summary-sheets.json" if sheets else "summary.json"


def remembered(workspace: Workspace) -> Ledger:
    """The lists of all that was prepared, in one file."""
    return Ledger(cache_folder(workspace).with_name("pages.json"))


@lru_cache(maxsize=16)  # asked for every vehicle
def cache_folder(workspace: Workspace) -> Path:
    """Where prepared files are kept between builds."""
    return workspace.root / ".undertrim" / "cache" / "pages"
