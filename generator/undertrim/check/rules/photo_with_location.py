"""A photograph does not tell where it was taken.

## What it finds

A photograph whose file holds a position or the name of a place: in its Exif notes, in XMP or in IPTC fields.

## Why it matters

Most phones write the position into each picture. A record is public: it would tell everybody where a customer's car stands, or
where you live.

## Bad

    # photo: screw-cap.jpg, 1600 x 1200, located
    parts:
      screw-cap:
        name: Screw cap
        release: pull
        photos: [{file: screw-cap.jpg, shows: The cap in the handle cup.}]    # here

error: 'screw-cap.jpg' tells where it was taken (share it from the phone with 'location' off, or save it again without its notes, as 'undertrim photo' does; then look whether an older copy is in the history of the records)

## Good

    # photo: screw-cap.jpg, 1600 x 1200
    parts:
      screw-cap:
        name: Screw cap
        release: pull
        photos: [{file: screw-cap.jpg, shows: The cap in the handle cup.}]
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record import photo_files
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every photograph that tells its place; what cannot be read is told by a rule of its own."""
    for place, photo in photo_files.named(subject.record):
        found = subject.album.shown(photo.file)
        if found and found.located:
            yield Finding((*place, "file"), message("rules/photo-with-location/tells", name=photo.file))
