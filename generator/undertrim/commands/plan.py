"""Print the procedure for a job at one vehicle: prepare, take apart, fit, test, refit, restore.

VEHICLE is a record's id (its file's name without the ending) or make/id. A job is an opening, at every side or at one: `dash`,
`front-door`, `front-door@left`. A variant that is left open is covered in all its choices, each step marked with the car it is for.
All of it may be said in one text instead: "finch-2014-2018?jobs=dash,front-door@left&radio=map&dash=skerrowe-broadside".
"""

import argparse
import sys
from collections.abc import Sequence

from undertrim.check.shelf import stock
from undertrim.commands.common import workspace
from undertrim.commands.details import see_check
from undertrim.commands.usage import Usage
from undertrim.commands.visited import add_jobs, add_visit, asked, understood
from undertrim.derive import jobs
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.visit.asked import Asked
from undertrim.publish.encoding import indented
from undertrim.publish.facts import names
from undertrim.publish.facts.visit import of
from undertrim.publish.terminal.plan import plan_text
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import Message, message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    add_visit(parser)
    add_jobs(parser)
    parser.add_argument(
        "--kit",
        action="append",
        default=[],
        metavar="GEAR",
        help="the dash kit that is used (default: every one that suits)",
    )
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")


def run(options: argparse.Namespace) -> int:
    """Plan and print; exit 1 if the record cannot be planned, or some opening is inside the high-voltage system."""
    place, words = workspace(options), asked(options)
    vehicle = _vehicle(place, words)
    if vehicle is None:
        return 1
    made = understood(place, vehicle, words)
    if not made.targets:
        raise Usage(message("visit/no-jobs"))
    try:
        data = of(made)
    except jobs.BadRequest as error:
        raise Usage(say(error.said)) from error
    except (Unreachable, TooTangled) as error:
        return _refuse(names.refusal(vehicle.record, error))
    sys.stdout.write(indented(data) + "\n" if options.format == "json" else plan_text(data))
    called = dict(zip(data["jobs"], data["job_names"], strict=True))
    return _tell_closed([called[job] for job in data["closed"]])


def _vehicle(place: Workspace, words: Asked) -> Vehicle | None:
    """The vehicle with the stock; None, and why on standard error, where its record cannot be planned. Raises Usage."""
    try:
        entry = place.load(vehicle_file(place, words.vehicle))
    except NotFound as error:
        raise Usage(str(error)) from error
    if not isinstance(entry.record, VehicleRecord):
        _refuse(message("plan/unreadable", path=str(entry.source.path)))
        return None
    if entry.problems:
        _refuse(message("plan/no-plan", path=str(entry.source.path)))
        return None
    return Vehicle(entry.record, entry.address, stock(place), clearances())


def _tell_closed(closed: Sequence[str]) -> int:
    """Exit code 1, with a word on each, if some opening asked for is inside the high-voltage system."""
    for name in closed:
        print(f"undertrim: {say(message('plan/closed', opening=name))}", file=sys.stderr)
    return 1 if closed else 0


def _refuse(reason: Message) -> int:
    print(f"undertrim: {say(reason)}: {see_check()}", file=sys.stderr)
    return 1
