"""The files that are kept of a vehicle, and what an earlier run left of them."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

from undertrim.derive.finding.rows import Row
from undertrim.publish.build import stored
from undertrim.publish.build.stored import Stored
from undertrim.publish.encoding import Published, said
from undertrim.record.store import Workspace

_BODY, _BESIDE, _PLACES = "body-", "beside-", "places-"

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

    `beside` are the files beside the pages, by their names there and in the cache: data and sheets. Two with a folder of the same name
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

    def body(self, view: str) -> str:
        """The body of a page by the name of its view. Raises stored.Damaged."""
        return self.files.content(_body(view)).decode()

    def digest(self, view: str) -> str:
        """The digest of the same."""
        return self.files.digests[_body(view)]

    def places(self) -> dict[str, tuple[str, Callable[[], bytes]]]:
        """Its openings for the pages of gear: by the kind of gear their digest, and how to get them as JSON (raises stored.Damaged)."""
        names = [name for name in self.files.digests if name.startswith(_PLACES)]
        return {_kind(name): (self.files.digests[name], partial(self.files.content, name)) for name in names}


def finished(workspace: Workspace, key: str, *, sheets: bool) -> Prepared | None:
    """What an earlier run left under a key, if it was finished."""
    files = stored.read(cache_folder(workspace) / key, _done(sheets=sheets))
    if not files:
        return None
    beside = ((name.removeprefix(_BESIDE), name) for name in sorted(files.digests) if name.startswith(_BESIDE))
    return Prepared(files, tuple(beside))


def keep(
    folder: Path,
    summary: Published,
    bodies: Mapping[str, str],
    beside: Sequence[tuple[str, bytes]],
    places: Mapping[str, bytes],
    *,
    sheets: bool,
) -> None:
    """Keep the bodies of a vehicle's pages, by view, the files beside them, and its openings by the kind of gear in a folder of the cache; `sheets` says that they are all."""
    files = [(_body(view), body.encode()) for view, body in bodies.items()]
    files += [(f"{_BESIDE}{name}", content) for name, content in beside]
    files += [(f"{_PLACES}{kind}.json", content) for kind, content in places.items()]
    stored.write(folder, files, summary, [_done(sheets=sheets)])


def summary(made: Published, row: Row) -> Published:
    """The few facts that other pages need of a vehicle, and how it is found."""
    return {**{key: made[key] for key in _SUMMARY}, "row": said(list(row))}


def _body(view: str) -> str:
    return f"{_BODY}{view}.html"


def _kind(name: str) -> str:
    return name.removeprefix(_PLACES).removesuffix(".json")


def _done(*, sheets: bool) -> str:
    return "summary-sheets.json" if sheets else "summary.json"


def cache_folder(workspace: Workspace) -> Path:
    """Where prepared files are kept between builds."""
    return workspace.root / ".undertrim" / "cache" / "pages"
