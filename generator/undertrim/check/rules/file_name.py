"""A record's file is named after the vehicle: `<make>/<model>-<from year>-<to year>.yaml`.

## What it finds

A vehicle record whose folder is not its make, or whose name is not its model with the years of `built` (and
the phase, where there is one). The words are folded to small letters, digits and hyphens.

## Why it matters

The file's name is the record's id, in links, in `follows` and on the page. A name that says other years
sends people to the wrong car, and a vehicle under two names is soon recorded twice.

## Bad

    # file: brindleway/otter-2014-2019.yaml
    vehicle:    # here
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no

error: this vehicle's file is 'brindleway/otter-2014-2018.yaml', not 'brindleway/otter-2014-2019.yaml' (mv records/vehicles/brindleway/otter-2014-2019.yaml records/vehicles/brindleway/otter-2014-2018.yaml)

    # file: brindelway/otter-2014-2018-late.yml
    vehicle:    # here
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      phase: late
      drive_side: [left]
      high_voltage: no

error: this vehicle's file is 'brindleway/otter-2014-2018-late.yaml', not 'brindelway/otter-2014-2018-late.yml' (mkdir -p records/vehicles/brindleway && mv records/vehicles/brindelway/otter-2014-2018-late.yml records/vehicles/brindleway/otter-2014-2018-late.yaml)

    # file: vans/brindleway/otter-2014-2018.yaml
    vehicle:    # here
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no

error: this vehicle's file is 'brindleway/otter-2014-2018.yaml', not 'vans/brindleway/otter-2014-2018.yaml' (mkdir -p records/vehicles/brindleway && mv records/vehicles/vans/brindleway/otter-2014-2018.yaml records/vehicles/brindleway/otter-2014-2018.yaml)

## Good

    # file: brindleway/otter-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no

    # file: brindleway-works/otter-400-gt-2014-2018-late.yaml
    vehicle:
      make: Brindleway Works
      model: Öttér 400 GT
      built: {from: 2014-12, to: 2018-01}
      phase: late
      drive_side: [left]
      high_voltage: no
"""

import os
import unicodedata
from collections.abc import Iterator
from pathlib import Path

from undertrim.check.findings import Finding, Subject
from undertrim.record import identity
from undertrim.record.problem import Level
from undertrim.record.renaming import renaming
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """The one thing a file's name can be: right or wrong."""
    if not subject.intact(("vehicle",)):
        return
    wanted = identity.vehicle_path(subject.record.vehicle)
    path = Path(os.path.abspath(subject.entry.path))  # noqa: PTH100 - links are not to be followed
    folder = _vehicles(path)
    is_now = path.relative_to(folder).as_posix()
    if unicodedata.normalize("NFC", is_now) != unicodedata.normalize("NFC", str(wanted)):
        way = renaming(path, folder / wanted)
        found = message("rules/file-name/another-name", wanted=str(wanted), now=is_now, renaming=way)
        yield Finding(("vehicle",), found, key=True)


def _vehicles(path: Path) -> Path:
    """The folder `records/vehicles` that holds a file; two up from one that is elsewhere."""
    above = (folder for folder in path.parents if (folder.parent.name, folder.name) == ("records", "vehicles"))
    return next(above, path.parents[1])
