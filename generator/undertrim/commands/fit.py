"""Say which gear fits an opening, by how much, and with what between.

VEHICLE is a record's id (its file's name without the ending) or make/id, OPENING one of its openings, GEAR the id of a gear record. Without
GEAR the whole stock of the right kind is ranked, without OPENING every opening is answered. A variant that is left open is covered in all its choices.
All of it may be said in one text instead: "finch-2014-2018?jobs=dash&dash=skerrowe-broadside&radio=map".
With --everywhere GEAR it says into which openings of all vehicles that gear goes, the best first.
"""

import argparse
import sys
from dataclasses import replace

from undertrim.check.shelf import stock
from undertrim.commands.common import progress, workspace
from undertrim.commands.stocked import no_gear, vehicle_and_stock
from undertrim.commands.usage import Usage
from undertrim.commands.visited import add_visit, asked, understood
from undertrim.derive import jobs
from undertrim.derive.fit.answers import Answer, Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.procedure.planning import targets
from undertrim.derive.visit.asked import Asked
from undertrim.derive.visit.text import GEAR
from undertrim.derive.visit.visit import Visit
from undertrim.publish.encoding import indented
from undertrim.publish.facts.blockers import of_visit
from undertrim.publish.terminal.everywhere import everywhere, everywhere_data, everywhere_text, places
from undertrim.publish.terminal.fit import fit_data, fit_text
from undertrim.record.model import VehicleRecord
from undertrim.record.nearness import suggestion
from undertrim.record.store import Workspace
from undertrim.words import message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    add_visit(parser, required=False)
    parser.add_argument("opening", metavar="OPENING", nargs="?", help="an opening of the vehicle (default: every one)")
    parser.add_argument("gear", metavar="GEAR", nargs="?", help="a gear record's id (default: the whole stock)")
    parser.add_argument(
        "--everywhere", metavar="GEAR", help="where in the whole collection this gear goes; no VEHICLE then"
    )
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")


def run(options: argparse.Namespace) -> int:
    """Answer and print; exit 1 if the vehicle's record cannot be relied on."""
    if (options.vehicle is None) == (options.everywhere is None):
        raise Usage(message("commands/vehicle-or-everywhere"))
    place = workspace(options)
    if options.everywhere:
        return _everywhere(place, options)
    words = asked(options)
    vehicle = vehicle_and_stock(place, words.vehicle)
    if vehicle is None:
        return 1
    made = understood(place, vehicle, words.also(_named(vehicle.record, options)), absent_too=True)
    answers = _answers(made, options.opening)
    above = of_visit(made if made.targets else replace(made, targets=tuple(targets(made.record))))
    data = indented(fit_data(made.vehicle, answers, above)) + "\n"
    text = fit_text(made.vehicle, answers, above, full=bool(made.gear))
    sys.stdout.write(data if options.format == "json" else text)
    return 0


def _everywhere(place: Workspace, options: argparse.Namespace) -> int:
    """One piece of gear in every vehicle: a vehicle's record that cannot be relied on is named, and the others are answered."""
    shelf = stock(place)
    gear = next((item for item in shelf.items if item.id == options.everywhere), None)
    if gear is None:
        raise Usage(no_gear(shelf, options.everywhere, [item.id for item in shelf.items], "gear"))
    found, left_out = [], []
    paths = place.every("vehicles")
    show = progress(message("commands/reading"))
    for number, path in enumerate(paths, 1):
        entry = place.load(path)
        if isinstance(entry.record, VehicleRecord) and not entry.problems:
            found += places(Vehicle(entry.record, entry.address, shelf, clearances()), gear)
        else:
            left_out.append(entry.address)
        if show:
            show(number, len(paths))
    made = everywhere(gear, found, left_out)
    sys.stdout.write(indented(everywhere_data(made)) + "\n" if options.format == "json" else everywhere_text(made))
    return 1 if left_out else 0


def _named(record: VehicleRecord, options: argparse.Namespace) -> Asked:
    """The opening and the gear that stand behind the vehicle. Raises Usage for an opening that the record does not have."""
    name = options.opening
    if name is None:
        return Asked()
    if not jobs.openings(record, name):
        hint = suggestion(name, jobs.ids(record), message("jobs/openings"))
        raise Usage(say(message("visit-arguments/no-opening", name=name, hint=hint)))
    return Asked(jobs=(name,), words=((f"{name}.{GEAR}", options.gear),) if options.gear else ())


def _answers(made: Visit, only: str | None) -> list[Answer]:
    """The answers for the openings of a visit, or the one that was named; for every opening where none is worked at."""
    openings = made.openings or made.record.openings.values()
    return [found for opening in openings if only is None or opening.is_named(only) for found in made.offers(opening)]
