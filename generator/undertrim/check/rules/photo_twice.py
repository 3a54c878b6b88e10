"""A photograph is there once.

## What it finds

One file named twice for the same thing, and two files that are the same picture to the last byte. One file may be named for a part and
again for what is behind it.

## Why it matters

The page would show it twice, and load it twice. Often the second was meant to be another picture.

## Bad

    # photo: screw-cap.jpg, 800 x 600
    # photo: cup.jpg, 800 x 600
    parts:
      screw-cap:
        name: Screw cap
        release: pull
        photos:
          - {file: screw-cap.jpg, shows: The cap in the handle cup.}
          - {file: screw-cap.jpg, shows: The cap from below.}    # here
          - {file: cup.jpg, shows: The handle cup.}    # here

warning: 'screw-cap.jpg' is named twice for one thing (name each photograph once, with all its marks)
warning: 'cup.jpg' is the same picture as 'screw-cap.jpg' (keep one of the two, and name it in both places)

## Good

    # photo: screw-cap.jpg, 800 x 600
    # photo: cup.jpg, 640 x 480
    parts:
      screw-cap:
        name: Screw cap
        release: pull
        photos: [{file: screw-cap.jpg, shows: The cap in the handle cup.}]
      cup:
        name: Handle cup
        release: pull
        photos:
          - {file: screw-cap.jpg, shows: The cap in the handle cup.}
          - {file: cup.jpg, shows: The handle cup.}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record import photo_files
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import Message, message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every photograph that is there again."""
    seen: set[tuple[Pointer, str]] = set()
    first: dict[str, str] = {}
    for place, photo in photo_files.named(subject.record):
        thing = place[:-1]
        said = _again(photo.file, first, subject)
        if (thing, photo.file) in seen:
            said = message("rules/photo-twice/named", name=photo.file)
        seen.add((thing, photo.file))
        if said:
            yield Finding((*place, "file"), said)


def _again(name: str, first: dict[str, str], subject: Subject) -> Message | None:
    """What to say of a file whose picture was named before under another name."""
    found = subject.album.shown(name)
    before = first.setdefault(found.digest, name) if found else name
    return message("rules/photo-twice/same", name=name, before=before) if before != name else None
