"""Put photographs beside a vehicle's record: upright, small enough, and without place, camera or other notes.

VEHICLE is a record's id or make/id. The files themselves stay as they are. What to type in the record is printed: say there what each
shows, and from which evidence it is.
"""

import argparse
import sys
from pathlib import Path

from undertrim.commands.common import add_workspace, workspace
from undertrim.commands.usage import Usage
from undertrim.record import photo_files, plain_files
from undertrim.record.examples import is_id
from undertrim.record.identity import slug
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.pictures import Broken
from undertrim.record.problem import printable
from undertrim.resources import table
from undertrim.words import Items, Message, message, say

_LARGEST = 200_000_000
"""Bytes of a picture that a camera writes at most."""


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicle", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument("files", nargs="+", type=Path, metavar="FILE", help="a picture: JPEG, PNG or WebP")
    parser.add_argument("--name", default="", help="what it is called in the record, for one FILE (default: as FILE)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Save each; exit 1 if one could not be."""
    place = workspace(options)
    if options.name and len(options.files) > 1:
        raise Usage(message("photos/one-name"))
    try:
        record = vehicle_file(place, options.vehicle)
    except NotFound as error:
        raise Usage(str(error)) from error
    place.refuse_shared(record)
    folder = place.shown(photo_files.folder(record))
    refused = [fault for path in options.files if (fault := _put(path, folder, options.name or path.stem))]
    for fault in refused:
        print(f"undertrim: {say(fault)}", file=sys.stderr)
    return 1 if refused else 0


def _put(path: Path, folder: Path, name: str) -> Message | None:
    """Why a picture is not in the folder; None where it is."""
    from undertrim.record import photo_saving  # its library takes longer than most commands

    shown = printable(str(path))
    try:
        content, ending = photo_saving.saved(plain_files.read(path, _LARGEST))
    except (FileNotFoundError, plain_files.NotPlain):
        return message("files/does-not-exist", name=shown)
    except Broken:
        formats = Items(tuple(row["label"] for row in table("photos")["format"].values()), "or")
        return message("photos/not-read", name=shown, formats=formats)
    stem = slug(name)
    if not is_id(stem):
        return message("photos/no-name", name=shown)
    target = folder / f"{stem}{ending}"
    if target.exists() and target.read_bytes() != content:
        return message("photos/taken-name", file=printable(str(target)))
    folder.mkdir(parents=True, exist_ok=True)
    target.write_bytes(content)
    print(say(message("photos/saved", file=printable(str(target)), name=target.name)))
    return None
