"""What the verbs share that take a visit: as its one text, as options, or as both, which must agree."""

import argparse
import sys
from collections.abc import Sequence

from undertrim.commands.common import add_workspace, chosen, workspace
from undertrim.commands.details import see_check
from undertrim.commands.stocked import vehicle_and_stock
from undertrim.commands.usage import Usage
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.visit import text, understanding
from undertrim.derive.visit.asked import Asked
from undertrim.derive.visit.visit import Visit
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.store import Workspace
from undertrim.words import Message, message, say


def add_visit(parser: argparse.ArgumentParser, *, required: bool = True) -> None:
    """The vehicle, alone or as the text of a visit, which car of it, and where the records are."""
    parser.add_argument(
        "vehicle",
        metavar="VEHICLE[?VISIT]",
        nargs=None if required else "?",
        help="record id or make/id, or the text of a visit in quotes",
    )
    parser.add_argument(
        "--variant", action="append", default=[], metavar="NAME=CHOICE", help="which car it is; may be repeated"
    )
    add_workspace(parser)


def add_jobs(parser: argparse.ArgumentParser) -> None:
    """The openings that are worked at."""
    parser.add_argument(
        "--job", action="append", default=[], metavar="OPENING[@SIDE]", help="what to fit into; may be repeated"
    )


def add_gear(parser: argparse.ArgumentParser) -> None:
    """What goes in."""
    parser.add_argument(
        "--gear",
        dest="pieces",
        action="append",
        default=[],
        metavar="[OPENING=]GEAR",
        help="what to fit; may be repeated",
    )


def asked(options: argparse.Namespace) -> Asked:
    """What text and options ask for together. Raises Usage for an option that is no pair."""
    gear = [one.rpartition("=") for one in getattr(options, "pieces", ())]
    words = [
        *((f"{name}.{text.CHOICE}", choice) for name, choice in chosen(options.variant).items()),
        *((f"{place}.{text.GEAR}", name) for place, _, name in gear if place),
    ]
    loose = tuple(name for place, _, name in gear if not place)
    kits, jobs = tuple(getattr(options, "kit", ())), tuple(getattr(options, "job", ()))
    return text.parse(options.vehicle).also(Asked(jobs=jobs, words=tuple(words), gear=loose, kits=kits))


def answered(place: Workspace, words: Asked) -> Visit | None:
    """The visit that is asked for; None, and why on standard error, where its record cannot be relied on. Raises Usage for what is not so."""
    if not words.vehicle:
        raise Usage(message("visit/vehicle"))
    vehicle = vehicle_and_stock(place, words.vehicle)
    return None if vehicle is None else understood(place, vehicle, words)


def understood(place: Workspace, vehicle: Vehicle, words: Asked, *, absent_too: bool = False) -> Visit:
    """The visit to a vehicle. Raises Usage for what is not so; `absent_too` lets openings pass that no such car has."""
    found = understanding.understood(vehicle, words, _name(place, vehicle.address))
    every = found.said if absent_too else (*found.said, *found.absent)
    if every:
        raise refused(every)
    return found.visit


def refused(every: Sequence[Message]) -> Usage:
    """What ends a command that asks for what is not so; of several things all but the last are told at once."""
    *before, last = map(_told, every)
    for said in before:
        print(f"undertrim: {say(said)}", file=sys.stderr)
    return Usage(last)


def _told(said: Message) -> Message:
    """What is said, with the command that says more as it is typed here."""
    if said.code == "commands/gear-refused":
        return message(said.code, **{**said.values, "see": see_check()})
    return said


def _name(place: Workspace, address: str) -> str:
    """What tells a vehicle from all others: its id, or its address where several makes have that."""
    name = address.rpartition("/")[2]
    try:
        vehicle_file(place, name)
    except NotFound:
        return address
    return name


def of_options(options: argparse.Namespace) -> Visit | None:
    """The visit of a verb that needs something to work at. Raises Usage."""
    made = answered(workspace(options), asked(options))
    if made is not None and not made.targets:
        raise Usage(message("visit/no-jobs"))
    return made
