"""Print the plugs behind the factory radio pin by pin, or how a receiver's leads join them, exceptions first.

VEHICLE is a record's id or make/id, GEAR the id of a receiver or of a lead set. Without GEAR every pin is printed by its address (plug/pin) and
every function by how the car has it. With GEAR the table is made for each group of cars that has the same one.
"""

import argparse
import sys

from undertrim.commands.common import add_workspace, chosen, workspace
from undertrim.commands.stocked import no_gear, vehicle_and_stock
from undertrim.commands.usage import Usage
from undertrim.derive import jobs
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.stock import Gear
from undertrim.derive.wiring.groups import joints
from undertrim.derive.wiring.leads import NoLeads
from undertrim.publish.encoding import indented
from undertrim.publish.facts.car_wiring import car_wiring
from undertrim.publish.facts.joint import joints as joints_data
from undertrim.publish.terminal.wiring import joint_text, plugs_text
from undertrim.record.gear import AnyGear
from undertrim.record.model import Opening
from undertrim.record.model.kinds.receiver import HarnessGear, LeadsGear, ReceiverGear
from undertrim.record.nearness import suggestion
from undertrim.words import WayOut, message, one_of, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicle", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument("gear", metavar="GEAR", nargs="?", help="id of a receiver or a lead set (default: no joint)")
    parser.add_argument(
        "--harness", metavar="GEAR", help="the harness between, or 'none' (default: the one in stock that suits)"
    )
    parser.add_argument("--opening", metavar="OPENING", help="where it goes (default: the only one for a receiver)")
    parser.add_argument(
        "--variant", action="append", default=[], metavar="NAME=CHOICE", help="which car it is; may be repeated"
    )
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Print the wiring or the joint; exit 1 if the vehicle's record cannot be relied on."""
    vehicle = vehicle_and_stock(workspace(options), options.vehicle)
    if vehicle is None:
        return 1
    car = _car(vehicle, options.variant)
    if options.gear is None:
        if options.harness or options.opening:
            raise Usage(say(message("wiring/needs-gear")))
        found = car_wiring(vehicle.record, vehicle.address, car)
        text = plugs_text(found)
    else:
        found = _joint(vehicle, options, car)
        text = joint_text(found)
    sys.stdout.write(indented(found) + "\n" if options.format == "json" else text)
    return 0


def _joint(vehicle: Vehicle, options: argparse.Namespace, car: dict[str, str]) -> dict[str, object]:
    """The joint tables as data. Raises Usage for what is not there."""
    opening = _opening(vehicle, options.opening, car)
    receiver = _gear(vehicle, options.gear, ReceiverGear, LeadsGear)
    by_hand = options.harness == "none"
    harness = _gear(vehicle, options.harness, HarnessGear) if options.harness and not by_hand else None
    record, address, stock = vehicle.record, vehicle.address, vehicle.stock
    try:
        found = joints(record, address, opening, receiver, stock, harness=harness, by_hand=by_hand, chosen=car)
    except NoLeads as error:
        raise Usage(say(message("meter/unread", why=error.said, hint=WayOut(error.said)))) from error
    if not found:
        raise Usage(say(message("wiring/no-such-car", opening=opening.name)))
    return joints_data(record, address, receiver, found)


def _opening(vehicle: Vehicle, name: str | None, car: dict[str, str]) -> Opening:
    """The opening named, or the only one of the cars meant that takes a receiver. Raises Usage."""
    taking = [item for item in vehicle.record.openings.values() if item.takes_over]
    here = [item for item in taking if item.when.holds(car) and name in (None, item.written)]
    if len(here) == 1:
        return here[0]
    names = [item.id for item in taking]
    if not taking:
        raise Usage(say(message("wiring/no-openings")))
    if name is None:
        if len(taking) > 1:
            raise Usage(say(message("wiring/several-openings", openings=one_of(*names))))
        return taking[0]
    if name not in names:
        hint = suggestion(name, names, message("jobs/openings"))
        raise Usage(say(message("wiring/no-such-opening", name=name, hint=hint)))
    return vehicle.record.openings[name]


def _gear(vehicle: Vehicle, name: str, *kinds: type[AnyGear]) -> Gear:
    """A piece of gear of one of some kinds. Raises Usage."""
    found = next((item for item in vehicle.stock.items if item.id == name), None)
    names = [item.id for item in vehicle.stock.items if isinstance(item.facts, kinds)]
    if found is None:
        raise Usage(
            no_gear(vehicle.stock, name, names, one_of(*(message(f"gear-kinds/many-{kind.kind}") for kind in kinds)))
        )
    if not isinstance(found.facts, kinds):
        wanted = one_of(*(message(f"gear-kinds/{kind.kind}") for kind in kinds))
        kind = message(f"gear-kinds/a-{found.facts.kind}")
        raise Usage(say(message("wiring/other-kind", name=name, wanted=wanted, kind=kind)))
    return found


def _car(vehicle: Vehicle, typed: list[str]) -> dict[str, str]:
    """The choices typed, checked against the variants of the record. Raises Usage."""
    try:
        return jobs.car(vehicle.record, chosen(typed))
    except jobs.BadRequest as error:
        raise Usage(str(error)) from error
