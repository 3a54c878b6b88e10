"""Print an opening as a paper template in true size, alone or with gear over it, to hold against the car.

VEHICLE is a record's id (its file's name without the ending) or make/id, OPENING one of its openings, GEAR the id of a gear record:
what goes into it, or between. What is larger than the paper goes over several sheets. A visit that works at one opening says OPENING and GEAR
by itself: "finch-2014-2018?jobs=front-door&front-door=tidewrack-haven-65".
Print at 100 %, and measure the square and the bar on every sheet before using it.
"""

import argparse
import sys
from pathlib import Path

from undertrim.check.shelf import stock
from undertrim.commands.common import workspace
from undertrim.commands.details import see_check
from undertrim.commands.stocked import no_gear
from undertrim.commands.usage import Usage
from undertrim.commands.visited import add_visit, asked, understood
from undertrim.derive import jobs
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.procedure.closed import closed_in, why_closed
from undertrim.derive.visit.visit import Visit
from undertrim.publish.printed import paper
from undertrim.record import units
from undertrim.record.collection import settings
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import Opening, VehicleRecord
from undertrim.record.nearness import suggestion
from undertrim.record.store import Entry, Workspace
from undertrim.words import Message, message, one_of, say

MOST_MARGIN = 25.0  # mm; beyond it the bar and the square have no place beside each other on A4


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    add_visit(parser)
    parser.add_argument(
        "opening", metavar="OPENING", nargs="?", help="an opening of the vehicle (default: the only one of the visit)"
    )
    parser.add_argument("gear", metavar="GEAR", nargs="?", help="a gear record's id (default: the opening alone)")
    parser.add_argument("--paper", choices=sorted(paper.PAPERS), help="the paper (default: the collection's)")
    parser.add_argument(
        "--margin", metavar="LENGTH", default="10 mm", help="what the printer leaves white (default: 10 mm)"
    )
    parser.add_argument(
        "--output", type=Path, metavar="FILE", help="where to write (default: VEHICLE-OPENING[-GEAR].pdf here)"
    )
    parser.add_argument("--force", action="store_true", help="write over a file that is there")


def run(options: argparse.Namespace) -> int:
    """Write the template; exit 1 if the record cannot be relied on or does not hold the opening's outline."""
    margin = _margin(options.margin)
    place = workspace(options)
    words = asked(options)
    entry = _entry(place, words.vehicle)
    if not isinstance(entry.record, VehicleRecord) or entry.problems:
        return _refuse(message("template/unreliable", path=str(entry.source.path), check=see_check()))
    made = understood(place, Vehicle(entry.record, entry.address, stock(place), clearances()), words)
    opening = _opening(made, options.opening)
    if inside := closed_in(entry.record, opening):
        why = why_closed(opening, [thing.name for _, by in inside for thing in by])
        return _refuse(message("template/closed", opening=opening.name, why=why))
    gear = made.laid_over(opening) if options.gear is None else _gear(made.known.stock, opening, options.gear)
    file = options.output or Path("-".join((entry.id, opening.id, *([gear.id] if gear else []))) + ".pdf")
    if file.exists() and not options.force:
        return _refuse(message("template/there", file=str(file)))
    try:
        template = paper.Template(entry.address, entry.record, opening, gear)
        size = paper.PAPERS[options.paper or settings(place.root).paper[0]]
        drawn = paper.render(template, size, margin)
    except (paper.NotRecorded, paper.NoRoom) as error:
        return _refuse(message("template/not-drawn", path=str(entry.source.path), why=str(error)))
    return _written(file, drawn)


def _refuse(why: Message) -> int:
    print(f"undertrim: {say(why)}", file=sys.stderr)
    return 1


def _written(file: Path, made: bytes) -> int:
    try:
        file.write_bytes(made)
    except OSError as error:
        return _refuse(message("template/not-written", file=str(file), why=error.strerror or ""))
    print(say(message("template/written", file=str(file))))
    return 0


def _margin(text: str) -> float:
    """A margin in mm. Raises Usage."""
    try:
        margin = units.parse(text, "length").value
    except units.UnitError as error:
        raise Usage(say(message("template/margin-unread", why=str(error), hint=error.hint))) from error
    if margin > MOST_MARGIN:
        raise Usage(say(message("template/margin-too-wide", text=text, most=MOST_MARGIN)))
    return margin


def _entry(place: Workspace, name: str) -> Entry:
    try:
        return place.load(vehicle_file(place, name))
    except NotFound as error:
        raise Usage(str(error)) from error


def _opening(made: Visit, name: str | None) -> Opening:
    """The opening named, or the only one of the visit; one form of it in such a car. Raises Usage."""
    record = made.known.record
    found = list(made.openings) if name is None else jobs.openings(record, name, made.car)
    if name is not None and not found:
        hint = suggestion(name, jobs.ids(record), message("jobs/openings"))
        raise Usage(say(message("visit-arguments/no-opening", name=name, hint=hint)))
    if len(found) != 1:
        names = [opening.id for opening in found] or jobs.ids(record)
        raise Usage(message("visit/one-opening", openings=one_of(*names)))
    return found[0]


def _gear(shelf: Stock, opening: Opening, name: str) -> Gear:
    """The gear of a name, if it is of a kind that goes over the opening. Raises Usage."""
    kinds = opening.drawn_with
    named = [item for item in shelf.items if item.id == name]
    if not named:
        raise Usage(no_gear(shelf, name, [item.id for item in shelf.items if isinstance(item.facts, kinds)], "gear"))
    if not isinstance(named[0].facts, kinds):
        raise Usage(say(_of_another_kind(named[0], opening)))
    return named[0]


def _of_another_kind(gear: Gear, opening: Opening) -> Message:
    kinds = one_of(*(message(f"gear-kinds/a-{kind.kind}") for kind in opening.drawn_with))
    kind = message(f"gear-kinds/a-{gear.facts.kind}")
    return message("template/of-another-kind", name=gear.id, kind=kind, opening=opening.id, kinds=kinds)
