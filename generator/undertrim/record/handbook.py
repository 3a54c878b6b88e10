"""The hand-written pages of a workspace: which files of their folder are published. A link is never followed, nor is a pipe opened."""

import os
import re
import stat
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from undertrim.record.plain_markdown import PICTURES
from undertrim.words import Items, Message, message, tags

PAGE = ".md"
MOST = {PAGE: 1_000_000, "": 10_000_000}
"""The largest page, and the largest picture, in bytes."""

_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9 ._-]*")


@dataclass(frozen=True, slots=True)
class Found:
    """One entry of the folder: its place in it, and why it is not published; None where it is."""

    path: Path
    place: PurePosixPath
    refused: Message | None = None

    @property
    def is_page(self) -> bool:
        """Whether it is Markdown."""
        return self.place.suffix == PAGE


def folder(records: Path) -> Path:
    """Where the handbook is."""
    return records / "handbook"


def found(start: Path) -> list[Found]:
    """Everything in a handbook's folder but what is hidden, in order; of a folder that is not entered, the folder."""
    if start.is_symlink():
        return [Found(start, PurePosixPath("."), _LINK)]
    return sorted(_below(start, PurePosixPath()), key=lambda item: item.place) if start.is_dir() else []


_LINK = message("handbook/link")


def _below(start: Path, place: PurePosixPath) -> Iterator[Found]:
    with os.scandir(start) as entries:
        for entry in entries:
            if not entry.name.startswith("."):
                yield from _entry(entry, place / entry.name)


def _entry(entry: os.DirEntry[str], place: PurePosixPath) -> Iterator[Found]:
    path = Path(entry.path)
    if entry.is_symlink():
        yield Found(path, place, _LINK)
    elif not _NAME.fullmatch(entry.name):
        yield Found(path, place, message("handbook/name"))
    elif entry.is_dir():
        yield from _below(path, place)
    else:
        yield Found(path, place, _refused(entry, place.suffix))


def _refused(entry: os.DirEntry[str], suffix: str) -> Message | None:
    """Why a file is not published."""
    if not stat.S_ISREG(entry.stat(follow_symlinks=False).st_mode):
        return message("handbook/not-plain")
    if suffix != PAGE and suffix.lower() not in PICTURES:
        return message("handbook/other-kind", name=entry.name, page=PAGE, pictures=Items(PICTURES, "comma"))
    most = MOST.get(suffix, MOST[""])
    if entry.stat(follow_symlinks=False).st_size > most:
        return message("handbook/too-large", most=most // 1_000_000)
    return None


def copy(start: Path, target: Path, tag: str) -> None:
    """Put the files that are published in the edition of a language into another folder, so that whoever reads that meets no link.

    A folder named by the tag of a language holds pages in that language: in its edition each takes the place of the one of its name.
    """
    for item in sorted(_published(start), key=lambda one: _language(one) is not None):
        if _language(item) in (None, tag):
            made = target / _place(item)
            made.parent.mkdir(parents=True, exist_ok=True)
            made.write_bytes(item.path.read_bytes())


def translated(start: Path, tag: str) -> dict[str, str]:
    """The places of the pages that a handbook has in the folder of a language, each with the Markdown of the one whose place it takes; empty where it takes none."""
    found = [_place(item) for item in _published(start) if item.is_page and _language(item) == tag]
    return {str(place): _text(start / place) for place in found}


def _text(page: Path) -> str:
    """The Markdown of a page; the engine names one that is not in UTF-8."""
    return page.read_text(encoding="utf-8-sig", errors="replace") if page.is_file() else ""


def _published(start: Path) -> list[Found]:
    return [item for item in found(start) if not item.refused]


def _language(item: Found) -> str | None:
    """The tag of the language whose folder it is in."""
    first, *below = item.place.parts
    return first if below and first in tags() else None


def _place(item: Found) -> PurePosixPath:
    """Where it stands in the handbook of its edition."""
    return item.place.relative_to(_language(item) or ".")
