"""The files that are kept of a vehicle, and what an earlier run left of them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from undertrim.publish.build import stored
from undertrim.publish.build.stored import Stored
from undertrim.publish.encoding import Published
from undertrim.record.store import Workspace

_BODY, _BESIDE = "body-", "beside-"

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
        return str(self.summary["address"])

    @property
    def keys(self) -> tuple[str, str]:
        """The names of the folders where its files are, and where that of the shelf is. Two with the same are the same."""
        return self.files.folder.name, self.shelf.folder.name

    def whole(self) -> bool:
        """Whether every file is there as it was written."""
        return self.files.whole() and self.shelf.whole()

    @property
    def with_stock(self) -> Mapping[str, str]:
        """The digests of its files on the shelf, by the name of the page that asks for one."""
        return {name.removesuffix(".js"): digest for name, digest in self.shelf.digests.items()}

    def on_shelf(self, view: str) -> bytes:
        """One of these files. Raises stored.Damaged."""
        return self.shelf.content(f"{view}.js")

    @property
    def summary(self) -> Mapping[str, Any]:
        """The few facts."""
        return self.files.summary

    def body(self, view: str) -> str:
        """The body of a page by the name of its view. Raises stored.Damaged."""
        return self.files.content(_body(view)).decode()

    def digest(self, view: str) -> str:
        """The digest of the same."""
        return self.files.digests[_body(view)]


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
    folder: Path, made: Published, bodies: Mapping[str, str], beside: Sequence[tuple[str, bytes]], *, sheets: bool
) -> None:
    """Keep the bodies of a vehicle's pages, by view, and the files beside them in a folder of the cache; `sheets` says that they are all."""
    files = [(_body(view), body.encode()) for view, body in bodies.items()]
    files += [(f"{_BESIDE}{name}", content) for name, content in beside]
    stored.write(folder, files, {key: made[key] for key in _SUMMARY}, [_done(sheets=sheets)])


def keep_shelf(folder: Path, scripts: Mapping[str, str]) -> None:
    """Keep a vehicle's files on the shelf, by page, in a folder of the cache."""
    files = [(f"{view}.js", text.encode()) for view, text in scripts.items()]
    stored.write(folder, files, {}, [_done(sheets=False)])


def _body(view: str) -> str:
    return f"{_BODY}{view}.html"


def _done(*, sheets: bool) -> str:
    return "summary-sheets.json" if sheets else "summary.json"


def cache_folder(workspace: Workspace) -> Path:
    """Where prepared files are kept between builds."""
    return workspace.root / ".undertrim" / "cache" / "pages"
