"""The files that are kept of a vehicle, and what an earlier run left of them."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from undertrim.publish.build import stored
from undertrim.publish.build.stored import Stored
from undertrim.publish.encoding import Published
from undertrim.record.store import Workspace
from undertrim.words import spoken

_BODY, _BESIDE = "body-", "beside-"

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

    `beside` are the files beside the pages, by their names there and in the cache: data and sheets. `shelf` has its files there: what follows
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


def finished(workspace: Workspace, key: str, with_stock: str, *, sheets: bool) -> Prepared | None:
    """What an earlier run left under the two keys of a vehicle, if both were finished."""
    files, shelf = pages_at(workspace, key, sheets=sheets), shelf_at(workspace, with_stock)
    if not files or not shelf:
        return None
    beside = ((name.removeprefix(_BESIDE), name) for name in sorted(files.digests) if name.startswith(_BESIDE))
    return Prepared(files, shelf, tuple(beside))


def pages_at(workspace: Workspace, key: str, *, sheets: bool) -> Stored | None:
    """The files that rest on the record alone, if an earlier run finished them."""
    return stored.read(cache_folder(workspace) / key, _done(sheets=sheets))


def shelf_at(workspace: Workspace, with_stock: str) -> Stored | None:
    """The files on the shelf, in the same way."""
    return stored.read(cache_folder(workspace) / with_stock, _done(sheets=False))


def keep(
    folder: Path,
    said: Mapping[str, Published],
    bodies: Mapping[str, Mapping[str, str]],
    beside: Sequence[tuple[str, bytes]],
    *,
    sheets: bool,
) -> None:
    """Keep the bodies of a vehicle's pages, by language and view, and the files beside them in a folder of the cache; `sheets` says that they are all."""
    files = [(_body(tag, view), body.encode()) for tag, views in bodies.items() for view, body in views.items()]
    files += [(f"{_BESIDE}{name}", content) for name, content in beside]
    summary = {tag: {key: made[key] for key in _SUMMARY} for tag, made in said.items()}
    stored.write(folder, files, summary, [_done(sheets=sheets)])


def keep_shelf(folder: Path, scripts: Mapping[str, Mapping[str, str]]) -> None:
    """Keep a vehicle's files on the shelf, by language and page, in a folder of the cache."""
    files = [(f"{tag}-{view}.js", text.encode()) for tag, views in scripts.items() for view, text in views.items()]
    stored.write(folder, files, {}, [_done(sheets=False)])


def _body(tag: str, view: str) -> str:
    return f"{_BODY}{tag}-{view}.html"


def _done(*, sheets: bool) -> str:
    return "summary-sheets.json" if sheets else "summary.json"


def cache_folder(workspace: Workspace) -> Path:
    """Where prepared files are kept between builds."""
    return workspace.root / ".undertrim" / "cache" / "pages"
