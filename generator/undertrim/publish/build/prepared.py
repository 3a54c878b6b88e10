"""The files that are kept of a vehicle, and what an earlier run left of them."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache, partial
from pathlib import Path
from typing import Any

from undertrim.derive.finding.rows import Row
from undertrim.publish.build import stored
from undertrim.publish.build.stored import Stored
from undertrim.publish.encoding import Published, said
from undertrim.record.ledger import Ledger
from undertrim.record.store import Workspace
from undertrim.words import spoken

_BODY, _BESIDE, _PLACES = "body-", "beside-", "places-"

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

    `beside` are the files beside the pages, by their names there and in the cache: data and sheets. Two with a folder of the same name
    are the same.
    """

    files: Stored
    beside: tuple[tuple[str, str], ...]

    @property
    def address(self) -> str:
        """The vehicle's `<make>/<id>`."""
        return str(next(iter(self.files.summary.values()))["address"])

    @property
    def folder(self) -> Path:
        """Where its files are."""
        return self.files.folder

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


def finished(workspace: Workspace, key: str, *, sheets: bool, known: Ledger | None = None) -> Prepared | None:
    """What an earlier run left under a key, if it was finished; `known` spares the look at the disk."""
    folder, done = cache_folder(workspace) / key, _done(sheets=sheets)
    plain = known.get(f"{key} {done}") if known else None
    files = Stored(folder, plain["summary"], plain["digests"]) if plain else stored.read(folder, done)
    if not files:
        return None
    beside = ((name.removeprefix(_BESIDE), name) for name in sorted(files.digests) if name.startswith(_BESIDE))
    found = Prepared(files, tuple(beside))
    if known and not plain:
        remember(known, found, sheets=sheets)
    return found


def remember(known: Ledger, made: Prepared, *, sheets: bool) -> None:
    """Enter what was prepared."""
    plain = {"summary": made.files.summary, "digests": made.files.digests}
    known.put(f"{made.folder.name} {_done(sheets=sheets)}", plain)


def keep(
    folder: Path,
    summary: Mapping[str, Published],
    bodies: Mapping[str, Mapping[str, str]],
    beside: Sequence[tuple[str, bytes]],
    places: Mapping[str, Mapping[str, bytes]],
    *,
    sheets: bool,
) -> None:
    """Keep in a folder of the cache the bodies of a vehicle's pages, by language and view, the files beside them, and by language its openings for each kind of gear; `sheets` says that they are all."""
    files = [(_body(tag, view), body.encode()) for tag, views in bodies.items() for view, body in views.items()]
    files += [(f"{_BESIDE}{name}", content) for name, content in beside]
    files += [(f"{_PLACES}{tag}-{kind}.json", content) for tag, of in places.items() for kind, content in of.items()]
    stored.write(folder, files, summary, [_done(sheets=sheets)])


def summary(made: Published, row: Row) -> Published:
    """The few facts that other pages need of a vehicle, and how it is found."""
    return {**{key: made[key] for key in _SUMMARY}, "row": said(list(row))}


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
