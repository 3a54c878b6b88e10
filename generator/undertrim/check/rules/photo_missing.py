"""A photograph that a record names is there.

## What it finds

A name under `file` for which there is no file in the record's folder of photographs: `photos/`, beside the record, and in it the
record's own name. A link counts as none: a record may not reach for other files.

## Why it matters

The page would have a hole where it tells people to look.

## Bad

    # photo: screw-cap.jpg, 800 x 600
    parts:
      screw-cap:
        name: Screw cap
        release: pull
        photos: [{file: screwcap.jpg, shows: The cap in the handle cup.}]    # here

error: there is no photograph 'screwcap.jpg' (put the file into 'photos/otter-2014-2018/' beside the record, or correct its name; there is 'screw-cap.jpg')

    parts:
      screw-cap:
        name: Screw cap
        release: pull
        photos: [{file: screw-cap.jpg, shows: The cap in the handle cup.}]    # here

error: there is no photograph 'screw-cap.jpg' (put the file into 'photos/otter-2014-2018/' beside the record, or correct its name)

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
from undertrim.record.nearness import near
from undertrim.record.photo_files import Missing
from undertrim.record.problem import Level
from undertrim.words import Message, message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every name without a file."""
    for place, photo in photo_files.named(subject.record):
        try:
            subject.album.content(photo.file)
        except Missing:
            yield Finding((*place, "file"), _said(subject, photo.file))
        except photo_files.TooManyBytes:
            continue  # it is there


def _said(subject: Subject, name: str) -> Message:
    folder = f"{photo_files.FOLDER}/{subject.album.folder.name}/"
    if meant := near(name, subject.album.names):
        return message("rules/photo-missing/near", name=name, folder=folder, near=meant)
    return message("rules/photo-missing/none", name=name, folder=folder)
