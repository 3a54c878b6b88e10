"""Say which gear fits an opening, by how much, and with what between.

VEHICLE is a record's id (its file's name without the ending) or make/id, OPENING one of its openings, GEAR the id of a gear record. Without
GEAR the whole stock of the right kind is ranked, without OPENING every opening is answered. A variant that is left open is covered in all its choices.
"""

import argparse
import sys
from collections.abc import Mapping, Sequence

from undertrim.commands.common import add_workspace, chosen, workspace
from undertrim.commands.stocked import no_gear, vehicle_and_stock
from undertrim.commands.usage import Usage
from undertrim.derive import jobs
from undertrim.derive.fit.answers import Answer, Vehicle, answer
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.publish.encoding import indented
from undertrim.publish.terminal.fit import fit_data, fit_text
from undertrim.record.model import Opening, VehicleRecord
from undertrim.record.nearness import suggestion
from undertrim.words import Value, message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicle", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument("opening", metavar="OPENING", nargs="?", help="an opening of the vehicle (default: every one)")
    parser.add_argument("gear", metavar="GEAR", nargs="?", help="a gear record's id (default: the whole stock)")
    parser.add_argument(
        "--variant", action="append", default=[], metavar="NAME=CHOICE", help="which car it is; may be repeated"
    )
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Answer and print; exit 1 if the vehicle's record cannot be relied on."""
    vehicle = vehicle_and_stock(workspace(options), options.vehicle)
    if vehicle is None:
        return 1
    answers = _answers(vehicle, options)
    data = indented(fit_data(vehicle, answers)) + "\n"
    sys.stdout.write(data if options.format == "json" else fit_text(vehicle, answers, full=options.gear is not None))
    return 0


def _answers(vehicle: Vehicle, options: argparse.Namespace) -> list[Answer]:
    """The answers to what was asked. Raises Usage for a name that does not exist."""
    car = _chosen(vehicle.record, options.variant)
    return [
        found
        for opening in _openings(vehicle.record, options.opening, car)
        for found in answer(vehicle, opening, _gear(vehicle.stock, opening, options.gear), car)
    ]


def _openings(record: VehicleRecord, name: str | None, car: Mapping[str, str]) -> list[Opening]:
    if name is None:
        return list(record.openings.values())
    found = jobs.openings(record, name, car)
    if not found:
        raise Usage(say(message("visit-arguments/no-opening", name=name, hint=_near(name, record))))
    return found


def _near(name: str, record: VehicleRecord) -> Value:
    return suggestion(name, list(record.openings), message("jobs/openings"))


def _gear(shelf: Stock, opening: Opening, name: str | None) -> Sequence[Gear] | None:
    """The gear to try in an opening; None for all of it."""
    suitable, taken = shelf.taken(opening), opening.takes.kind
    if name is None:
        return None
    named = [item for item in shelf.items if item.id == name]
    if not named:
        raise Usage(no_gear(shelf, name, [item.id for item in suitable], message(f"gear-kinds/many-{taken}")))
    if named[0] not in suitable:
        wanted, found = message(f"gear-kinds/{taken}"), message(f"gear-kinds/a-{named[0].facts.kind}")
        values: dict[str, Value] = {"gear": name, "wanted": wanted, "found": found, "opening": opening.id}
        takes = message(f"gear-kinds/a-{taken}")
        raise Usage(say(message("visit-arguments/wrong-kind", **values, takes=takes)))
    return named


def _chosen(record: VehicleRecord, pairs: Sequence[str]) -> dict[str, str]:
    """The choices typed, checked against the record's variants."""
    found = chosen(pairs)
    try:
        jobs.car(record, found)
    except jobs.BadRequest as error:
        raise Usage(str(error)) from error
    return found
