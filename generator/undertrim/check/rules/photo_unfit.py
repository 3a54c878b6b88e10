"""A photograph can be shown on a phone as it is.

## What it finds

A photograph that is larger than 2,000 px along one edge or than 600 KB, that would have to be turned to be seen upright, that is
broken or cut short, that holds several pictures, or whose name ends in another format than it has.

## Why it matters

Phones turn a picture by a note in the file, which programs read differently or lose: then it lies on its side on the page or on
paper, and its marks are elsewhere. A large one loads slowly where the signal is poor, and a broken one not at all.

## Bad

    # photo: screw-cap.jpg, 3000 x 2000
    # photo: cup.jpg, 900 x 600, turned
    # photo: clip.jpg, 900 x 600, cut short
    # photo: hook.png, 900 x 600, as JPEG
    # photo: tab.png, 900 x 600, of 2 frames
    # photo: mat.jpg, 900 x 600, of 700 KB
    parts:
      screw-cap:
        name: Screw cap
        release: pull
        photos:
          - {file: screw-cap.jpg, shows: The cap in the handle cup.}    # here
          - {file: cup.jpg, shows: The handle cup.}    # here
          - {file: clip.jpg, shows: The clip behind the cup.}    # here
          - {file: hook.png, shows: The hook below it.}    # here
          - {file: tab.png, shows: The tab above it.}    # here
          - {file: mat.jpg, shows: The mat.}    # here

error: 'screw-cap.jpg' is 3000 x 2000 px, and 2000 along the longer edge are enough (save it smaller; 'undertrim photo' does)
error: 'cup.jpg' lies on its side, and only a note in the file says which way is up (turn it in a picture program and save it again; 'undertrim photo' does)
error: 'clip.jpg' cannot be read as a picture (open it in a picture program and save it as JPEG, PNG or WebP)
error: 'hook.png' is a JPEG, and its name ends in '.png' (end the name in '.jpg')
error: 'tab.png' holds 2 pictures (save the one that is meant by itself)
error: 'mat.jpg' is larger than 600 KB (save it smaller, or with a lower quality; 'undertrim photo' does)

## Good

    # photo: screw-cap.jpg, 1600 x 1200
    # photo: clip.webp, 1200 x 1600
    # photo: hook.png, 2000 x 100
    parts:
      screw-cap:
        name: Screw cap
        release: pull
        photos:
          - {file: screw-cap.jpg, shows: The cap in the handle cup.}
          - {file: clip.webp, shows: The clip behind the cup.}
          - {file: hook.png, shows: The hook below it.}
"""

from collections.abc import Iterator
from pathlib import PurePosixPath
from typing import Any

from undertrim.check.findings import Finding, Subject
from undertrim.record import photo_files
from undertrim.record.photo_files import Missing, TooManyBytes
from undertrim.record.pictures import Broken, Picture
from undertrim.record.problem import Level
from undertrim.resources import table
from undertrim.words import Items, Message, message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every photograph with what is wrong with it; the first of it, since saving it again may mend all."""
    for place, photo in photo_files.named(subject.record):
        if said := _fault(subject, photo.file):
            yield Finding((*place, "file"), said)


def _fault(subject: Subject, name: str) -> Message | None:
    try:
        return _of_picture(name, subject.album.picture(name))
    except Missing:
        return None  # told by a rule of its own
    except TooManyBytes:
        return message("rules/photo-unfit/bytes", name=name, most=_most("bytes") // 1000)
    except Broken:
        return message("rules/photo-unfit/broken", name=name, formats=Items(_labels(), "or"))


def _of_picture(name: str, found: Picture) -> Message | None:
    row, ending = _formats().get(found.format), PurePosixPath(name).suffix
    if found.too_large:
        size = {"width": found.width, "height": found.height, "most": _most("edge")}
        return message("rules/photo-unfit/edge", name=name, **size)
    if found.frames > 1:
        return message("rules/photo-unfit/frames", name=name, number=found.frames)
    if row and ending not in row["endings"]:
        wanted = row["endings"][0]
        return message("rules/photo-unfit/ending", name=name, format=row["label"], ending=ending, wanted=wanted)
    return message("rules/photo-unfit/turned", name=name) if found.turned else None


def _formats() -> dict[str, Any]:
    return table("photos")["format"]  # type: ignore[no-any-return]


def _labels() -> tuple[str, ...]:
    return tuple(row["label"] for row in _formats().values())


def _most(what: str) -> int:
    return int(table("photos")["most"][what])
