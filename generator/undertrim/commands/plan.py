"""Print the procedure for a job at one vehicle: prepare, take apart, fit, test, refit, restore.

VEHICLE is a record's id (its file's name without the ending) or make/id. A job is an opening, at every side or at one: `dash`,
`front-door`, `front-door@left`. A variant that is left open is covered in all its choices, each step marked with the car it is for.
"""

import argparse
import sys
from collections.abc import Collection, Sequence

from undertrim.check.shelf import stock
from undertrim.commands.common import add_workspace, chosen, workspace
from undertrim.commands.details import see_check
from undertrim.commands.stocked import no_gear
from undertrim.commands.usage import Usage
from undertrim.derive import jobs
from undertrim.derive.fit.stock import Stock
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.publish.encoding import indented
from undertrim.publish.facts import names
from undertrim.publish.facts.visit import visit
from undertrim.publish.terminal.plan import plan_text
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.receiver import KitGear
from undertrim.record.nearness import suggestion
from undertrim.words import Message, message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicle", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument(
        "--job", action="append", required=True, metavar="OPENING[@SIDE]", help="what to fit into; may be repeated"
    )
    parser.add_argument(
        "--variant", action="append", default=[], metavar="NAME=CHOICE", help="which car it is; may be repeated"
    )
    parser.add_argument(
        "--kit",
        action="append",
        default=[],
        metavar="GEAR",
        help="the dash kit that is used (default: every one that suits)",
    )
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Plan and print; exit 1 if the record cannot be planned, or some opening is inside the high-voltage system."""
    place = workspace(options)
    try:
        entry = place.load(vehicle_file(place, options.vehicle))
    except NotFound as error:
        raise Usage(str(error)) from error
    if not isinstance(entry.record, VehicleRecord):
        return _refuse(message("plan/unreadable", path=str(entry.source.path)))
    if entry.problems:
        return _refuse(message("plan/no-plan", path=str(entry.source.path)))
    try:
        car = jobs.car(entry.record, chosen(options.variant))
        wanted = jobs.wanted(entry.record, options.job, car)
        shelf = stock(place)
        kits = _kits(
            shelf, {(entry.address, entry.record.openings[one.opening].written) for one in wanted}, options.kit
        )
        made = visit(entry.record, entry.address, wanted, car, shelf, kits)
    except jobs.BadRequest as error:
        raise Usage(say(error.said)) from error
    except (Unreachable, TooTangled) as error:
        return _refuse(names.refusal(entry.record, error))
    sys.stdout.write(indented(made) + "\n" if options.format == "json" else plan_text(made))
    called = dict(zip(made["jobs"], made["job_names"], strict=True))
    return _tell_closed([called[job] for job in made["closed"]])


def _tell_closed(closed: Sequence[str]) -> int:
    """Exit code 1, with a word on each, if some opening asked for is inside the high-voltage system."""
    for name in closed:
        print(f"undertrim: {say(message('plan/closed', opening=name))}", file=sys.stderr)
    return 1 if closed else 0


def _kits(shelf: Stock, places: Collection[tuple[str, str]], names: Sequence[str]) -> Sequence[str]:
    """The kits named, each of which must suit an opening of the visit, by vehicle and id. Raises Usage."""
    suiting = [kit.id for kit in shelf.of(KitGear) if any((at.vehicle, at.opening) in places for at in kit.facts.suits)]
    for name in names:
        if name not in suiting:
            if shelf.refused(name):
                raise Usage(no_gear(shelf, name, suiting, message("gear-kinds/many-kit")))
            hint = suggestion(name, suiting, message("gear-kinds/many-kit"))
            raise Usage(say(message("plan/no-kit", kit=name, hint=hint)))
    return names


def _refuse(reason: Message) -> int:
    print(f"undertrim: {say(reason)}: {see_check()}", file=sys.stderr)
    return 1
