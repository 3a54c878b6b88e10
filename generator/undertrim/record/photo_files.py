"""The files of a record's photographs: `photos/<record>/` beside it. A name leads nowhere else, and no link is followed."""

import os
import stat
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from undertrim.record import plain_files
from undertrim.record.digests import Digests, joined
from undertrim.record.model import Photo, VehicleRecord
from undertrim.record.pictures import Broken, Picture
from undertrim.record.source import Pointer
from undertrim.resources import table

FOLDER = "photos"


class Missing(Exception):  # noqa: N818 - it names what was found
    """There is no such file: nothing of that name, or a link, folder or pipe in its place."""


class TooManyBytes(Exception):  # noqa: N818
    """The file is larger than a photograph may be, and was not looked into."""


def folder(record: Path) -> Path:
    """Where the photographs of the record at a path are."""
    return Path(record.parent, FOLDER, record.stem)


def named(record: VehicleRecord) -> Iterator[tuple[Pointer, Photo]]:
    """Every photograph that a record names, with its place in the record."""
    for place, photos in _holders(record):
        for number, photo in enumerate(photos):
            yield (*place, "photos", number), photo


def _holders(record: VehicleRecord) -> Iterator[tuple[Pointer, tuple[Photo, ...]]]:
    for variant in record.variants.values():
        for choice in variant.choices.values():
            yield ("variants", variant.id, "choices", choice.id), choice.photos
    sections: dict[str, Mapping[str, object]] = {
        "preps": record.preps,
        "parts": record.parts,
        "openings": record.openings,
        "connectors": record.connectors,
    }
    for section, things in sections.items():
        for name, thing in things.items():
            yield (section, name), getattr(thing, "photos")  # noqa: B009 - all of these have them


@dataclass(frozen=True)
class Album:
    """The photographs of one record, each read once, when it is asked for."""

    folder: Path

    @cached_property
    def names(self) -> tuple[str, ...]:
        """All that stands in the folder but what is hidden, sorted; nothing where there is no folder, or a link in its place."""
        try:
            names = os.listdir(self.folder)  # noqa: PTH208 - asked for every record, most of which have no such folder
        except (FileNotFoundError, NotADirectoryError):
            return ()
        return () if _is_linked(self.folder) else tuple(sorted(name for name in names if not name.startswith(".")))

    @cached_property
    def _read(self) -> dict[str, bytes]:
        return {}

    def content(self, name: str) -> bytes:
        """A photograph's bytes. Raises Missing and TooManyBytes."""
        if name not in self._read:
            self._read[name] = self._content(name)
        return self._read[name]

    def _content(self, name: str) -> bytes:
        path, most = self.folder / name, int(table("photos")["most"]["bytes"])
        if name not in self.names or path.is_symlink():
            raise Missing(name)
        try:
            content = plain_files.read(path, most)
        except (FileNotFoundError, plain_files.NotPlain, IsADirectoryError) as error:
            raise Missing(name) from error
        if len(content) > most:
            raise TooManyBytes(name)
        return content

    @cached_property
    def _pictures(self) -> dict[str, Picture]:
        return {}

    def picture(self, name: str) -> Picture:
        """A photograph as read. Raises Missing, TooManyBytes and Broken."""
        if name not in self._pictures:
            from undertrim.record import photo_reading  # its library takes 45 ms, which most commands need not spend

            self._pictures[name] = photo_reading.picture(self.content(name))
        return self._pictures[name]

    def shown(self, name: str) -> Picture | None:
        """The same; None for one that cannot be shown."""
        try:
            return self.picture(name)
        except (Missing, TooManyBytes, Broken):
            return None


def album(record: Path) -> Album:
    """The photographs beside the record at a path."""
    return Album(folder(record))


def ownerless(vehicles: Path) -> Iterator[Path]:
    """What stands among the photographs of a make and belongs to no record of it, in the folder of all vehicles."""
    for made in sorted(vehicles.glob(f"*/{FOLDER}/[!.]*")):
        owners = (Path(f"{made.parent.parent}{os.sep}{made.name}{ending}") for ending in (".yaml", ".yml"))
        if not made.is_dir() or _is_linked(made) or not any(owner.is_file() for owner in owners):
            yield made


def state(record: Path, digests: Digests) -> str:
    """Changes with whatever a check or a page reads of a record's photographs. Raises OSError where they cannot be read.

    Asked twice for every record of a collection whenever one has changed, so paths are texts here, which are made in a fifth of the time.
    """
    beside, name = os.path.split(record)
    where = os.path.join(beside, FOLDER, os.path.splitext(name)[0])  # noqa: PTH118, PTH122
    try:
        os.lstat(where)
    except (FileNotFoundError, NotADirectoryError):
        return _NONE
    return joined(*(f"{name} {_file_state(os.path.join(where, name), digests)}" for name in album(record).names))  # noqa: PTH118


_NONE = joined()


def _file_state(path: str, digests: Digests) -> str:
    status = os.lstat(path)
    plain = stat.S_ISREG(status.st_mode) and status.st_size <= int(table("photos")["most"]["bytes"])
    return digests.of(Path(path)) if plain else f"{status.st_mode} {status.st_size}"


def _is_linked(path: Path) -> bool:
    """Whether a link stands in the way: the folder itself, or the one that holds those of all records of a make."""
    return path.is_symlink() or path.parent.is_symlink()
