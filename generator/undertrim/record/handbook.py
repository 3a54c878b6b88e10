"""The hand-written pages of a workspace: which files of their folder are published. A link is never followed, nor is a pipe opened."""

import os
import re
import stat
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from undertrim.record.plain_markdown import PICTURES

PAGE = ".md"
MOST = {PAGE: 1_000_000, "": 10_000_000}
"""The largest page, and the largest picture, in bytes."""

_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9 ._-]*")


@dataclass(frozen=True, slots=True)
class Found:
    """One entry of the folder: its place in it, and why it is not published; empty where it is."""

    path: Path
    place: PurePosixPath
    message: str = ""
    hint: str = ""

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
        return [Found(start, PurePosixPath("."), _LINK, _HERE)]
    return sorted(_below(start, PurePosixPath()), key=lambda item: item.place) if start.is_dir() else []


_LINK = "a link is not followed"
_HERE = "put the file itself here"


def _below(start: Path, place: PurePosixPath) -> Iterator[Found]:
    with os.scandir(start) as entries:
        for entry in entries:
            if not entry.name.startswith("."):
                yield from _entry(entry, place / entry.name)


def _entry(entry: os.DirEntry[str], place: PurePosixPath) -> Iterator[Found]:
    path = Path(entry.path)
    if entry.is_symlink():
        yield Found(path, place, _LINK, _HERE)
    elif not _NAME.fullmatch(entry.name):
        yield Found(path, place, "a name has letters, digits, points, hyphens and spaces only", "rename it")
    elif entry.is_dir():
        yield from _below(path, place)
    else:
        yield Found(path, place, *_refused(entry, place.suffix))


def _refused(entry: os.DirEntry[str], suffix: str) -> tuple[str, str]:
    """Why a file is not published, and the way out."""
    if not stat.S_ISREG(entry.stat(follow_symlinks=False).st_mode):
        return "only plain files are read", "take it out of the handbook"
    if suffix != PAGE and suffix.lower() not in PICTURES:
        kinds = ", ".join(PICTURES)
        return (
            f"a file of this kind is not published: '{entry.name}'",
            f"the handbook holds pages ({PAGE}) and pictures ({kinds})",
        )
    most = MOST.get(suffix, MOST[""])
    if entry.stat(follow_symlinks=False).st_size > most:
        return f"larger than {most // 1_000_000} MB", "make it smaller, or make several of it"
    return "", ""


def copy(start: Path, target: Path) -> None:
    """Put the files that are published into another folder, so that whoever reads that meets no link."""
    for item in found(start):
        if not item.message:
            made = target / item.place
            made.parent.mkdir(parents=True, exist_ok=True)
            made.write_bytes(item.path.read_bytes())
