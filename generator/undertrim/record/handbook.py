"""The hand-written pages of a workspace: which files of their folder are published. A link is never followed, nor is a pipe opened."""

import os
import re
import stat
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from undertrim.record.plain_markdown import PICTURES
from undertrim.words import Items, Message, message

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


def copy(start: Path, target: Path) -> None:
    """Put the files that are published into another folder, so that whoever reads that meets no link."""
    for item in found(start):
        if not item.refused:
            made = target / item.place
            made.parent.mkdir(parents=True, exist_ok=True)
            made.write_bytes(item.path.read_bytes())
