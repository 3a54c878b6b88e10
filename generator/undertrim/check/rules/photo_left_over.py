"""A photograph beside a record is named in it.

## What it finds

A file in the record's folder of photographs that no `photos` in the record names.

## Why it matters

Nobody is shown it. Mostly a name was mistyped, or a picture was exchanged and the old one stayed.

## Bad

    # photo: screw-cap.jpg, 800 x 600
    # photo: old-cap.jpg, 900 x 600
    parts:    # here
      screw-cap:
        name: Screw cap
        release: pull
        photos: [{file: screw-cap.jpg, shows: The cap in the handle cup.}]

warning: nothing in this record names the photograph 'old-cap.jpg' (name it in the 'photos' of what it shows, or remove 'photos/otter-2014-2018/old-cap.jpg')

## Good

    # photo: screw-cap.jpg, 800 x 600
    parts:
      screw-cap:
        name: Screw cap
        release: pull
        photos: [{file: screw-cap.jpg, shows: The cap in the handle cup.}]
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record import photo_files
from undertrim.record.problem import Level, printable
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every file that nothing names; none while what the schema refused may name it."""
    if subject.entry.dropped:
        return
    used = {photo.file for _, photo in photo_files.named(subject.record)}
    folder = f"{photo_files.FOLDER}/{subject.album.folder.name}"
    for name in subject.album.names:
        if name not in used:
            said = message("rules/photo-left-over/unnamed", name=printable(name), file=printable(f"{folder}/{name}"))
            yield Finding(("parts",), said, key=True)
