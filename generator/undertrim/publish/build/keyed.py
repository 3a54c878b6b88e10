"""What a vehicle's files depend on, as the key they are kept under in the cache."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from undertrim import resources
from undertrim.derive.fit.joining import Joining
from undertrim.derive.fit.stock import Stock
from undertrim.publish.build.day import today
from undertrim.record import photo_files
from undertrim.record.collection import settings, spoken_in
from undertrim.record.digests import Digests, joined
from undertrim.record.store import Workspace


@dataclass(frozen=True, slots=True)
class Keyed:
    """A vehicle record, the site it is prepared for with the tags of its languages, the papers that are printed on, and the names of the folders that its files then have.

    `key` is that of what rests on the record alone: pages, data, sheets. `with_stock` is that of its file on the shelf, which rests on the gear
    that joins a receiver to it too. `gear` is the state that the whole stock is read in, of which that is only a part.
    """

    path: Path
    site_url: str
    gear: str
    languages: tuple[str, ...]
    papers: tuple[str, ...]
    key: str
    with_stock: str

    def now(self, workspace: Workspace, gear: str, shelf: Joining) -> "Keyed":
        """The same vehicle as its record is now, with the stock and the state that it was read in."""
        chosen = (*self.languages, *self.papers)
        key, with_stock = _keys(workspace, self.path, self.site_url, shelf, chosen, Digests())
        return replace(self, gear=gear, key=key, with_stock=with_stock)


def keys(workspace: Workspace, paths: Sequence[Path], site_url: str, digests: Digests, stock: Stock) -> list[Keyed]:
    """The vehicles at `paths` as they are now, with that stock."""
    gear, shelf = gear_key(workspace, digests), Joining(stock)
    tags, papers = languages(workspace), settings(workspace.root).paper
    return [
        Keyed(path, site_url, gear, tags, papers, *_keys(workspace, path, site_url, shelf, (*tags, *papers), digests))
        for path in paths
    ]


def languages(workspace: Workspace) -> tuple[str, ...]:
    """The languages that the site of a collection is in, by their tags, whoever builds it. Raises NoSuchLanguage."""
    chosen = settings(workspace.root).language
    for tag in chosen:
        spoken_in(tag)
    return chosen


def address(path: Path) -> str:
    """The vehicle of a file, as `make/id`."""
    return f"{path.parent.name}/{path.stem}"


def gear_key(workspace: Workspace, digests: Digests) -> str:
    """Changes with any gear record."""
    return joined(
        *(f"{'/'.join(path.parts[-2:])} {workspace.state(path, digests)}" for path in workspace.every("gear"))
    )


def _keys(
    workspace: Workspace, path: Path, site_url: str, shelf: Joining, chosen: tuple[str, ...], digests: Digests
) -> tuple[str, str]:
    """The first changes with the record's place, content and photographs, the records that it takes from, the site's address, the languages and papers that are `chosen`, the program itself and, for the ages, the month; the second also with what of the stock joins a receiver to it."""
    place, photos = "/".join(path.parts[-2:]), photo_files.state(path, digests)
    beside = workspace.beside_state(path, digests)
    told = site_url, " ".join(chosen), resources.program(), f"{today():%Y-%m}"
    key = joined(workspace.state(path, digests), beside, place, photos, *told)
    return key, joined(key, shelf.key(address(path)))
