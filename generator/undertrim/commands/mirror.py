"""Print what a record knows of cars with the steering wheel on the other side, and what to ask there.

VEHICLE is a record's id or make/id. Sides are recorded on cars of the record's first drive side: what mirrors changes sides with
the steering wheel, what does not stays, and what is unknown becomes a question.
"""

import argparse
import sys

from undertrim.commands.common import add_workspace, workspace
from undertrim.commands.details import see_check
from undertrim.commands.usage import Usage
from undertrim.publish.encoding import indented
from undertrim.publish.facts.mirror import mirror
from undertrim.publish.terminal.mirror import mirror_text
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.words import message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicle", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument(
        "--drive-side",
        required=True,
        choices=["left", "right"],
        help="on which side the steering wheel is in the car at hand",
    )
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Print; exit 1 if the record cannot be read."""
    place = workspace(options)
    try:
        entry = place.load(vehicle_file(place, options.vehicle))
    except NotFound as error:
        raise Usage(str(error)) from error
    if not isinstance(entry.record, VehicleRecord):
        unreadable = say(message("plan/unreadable", path=str(entry.source.path)))
        print(f"undertrim: {unreadable}: {see_check()}", file=sys.stderr)
        return 1
    facts = mirror(entry.record, entry.address, options.drive_side)
    sys.stdout.write(indented(facts) + "\n" if options.format == "json" else mirror_text(facts))
    return 0
