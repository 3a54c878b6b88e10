"""Print the plugs behind the factory radio pin by pin, or how a receiver's leads join them, exceptions first.

VEHICLE is a record's id or make/id, GEAR the id of a receiver or of a lead set. Without GEAR every pin is printed by its address (plug/pin) and
every function by how the car has it. With GEAR the table is made for each group of cars that has the same one. A visit that names its receiver
or its leads says GEAR and what is between by itself: "finch-2014-2018?dash=skerrowe-broadside&radio=map".
"""

import argparse
import sys
from collections.abc import Sequence

from undertrim.commands.common import workspace
from undertrim.commands.stocked import no_gear
from undertrim.commands.usage import Usage
from undertrim.commands.visited import add_visit, answered, asked
from undertrim.derive import jobs
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.stock import Gear
from undertrim.derive.visit.asked import NONE
from undertrim.derive.visit.visit import Visit
from undertrim.derive.wiring.groups import Group, joints
from undertrim.derive.wiring.leads import NoLeads
from undertrim.publish.encoding import Published, indented
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
    add_visit(parser)
    parser.add_argument("gear", metavar="GEAR", nargs="?", help="id of a receiver or a lead set (default: no joint)")
    parser.add_argument(
        "--harness", metavar="GEAR", help="the harness between, or 'none' (default: the one in stock that suits)"
    )
    parser.add_argument("--opening", metavar="OPENING", help="where it goes (default: the only one for a receiver)")
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")


def run(options: argparse.Namespace) -> int:
    """Print the wiring or the joint; exit 1 if the vehicle's record cannot be relied on."""
    made = answered(workspace(options), asked(options))
    if made is None:
        return 1
    joined = [opening for opening in made.openings if opening.takes_over and made.leads(opening)]
    if options.gear is None and not joined:
        if options.harness or options.opening:
            raise Usage(say(message("wiring/needs-gear")))
        found = car_wiring(made.known.record, made.address, made.car)
        text = plugs_text(found)
    else:
        found = _joint(made, options, joined)
        text = joint_text(found)
    sys.stdout.write(indented(found) + "\n" if options.format == "json" else text)
    return 0


def _joint(made: Visit, options: argparse.Namespace, joined: Sequence[Opening]) -> Published:
    """The joint tables as data, of every form of the opening that such a car may have. Raises Usage for what is not there."""
    openings = _openings(made, options.opening, joined)
    receivers = {opening.id: _leads(made, opening, options.gear) for opening in openings}
    receiver = receivers[openings[0].id]
    if any(one.id != receiver.id for one in receivers.values()):
        raise Usage(say(message("wiring/several-openings", openings=one_of(*receivers))))
    found = [group for opening in openings for group in _groups(made, opening, receiver, options.harness)]
    if not found:
        raise Usage(say(message("wiring/no-such-car", opening=openings[0].name)))
    return joints_data(made.known.record, made.address, receiver, found)


def _groups(made: Visit, opening: Opening, receiver: Gear, typed: str | None) -> list[Group]:
    """The tables of one opening. Raises Usage."""
    vehicle, by_hand = made.known, typed == NONE
    harness = _gear(vehicle, typed, HarnessGear) if typed and not by_hand else None
    _agree(made, opening, typed)
    record, address, stock = vehicle.record, vehicle.address, made.vehicle.shelf(opening.id)
    try:
        return joints(record, address, opening, receiver, stock, harness=harness, by_hand=by_hand, chosen=made.car)
    except NoLeads as error:
        raise Usage(say(message("meter/unread", why=error.said, hint=WayOut(error.said)))) from error


def _leads(made: Visit, opening: Opening, typed: str | None) -> Gear:
    """Whose leads are joined: those of the visit and those typed must be the same. Raises Usage."""
    of_visit = made.leads(opening)
    if typed is None and of_visit is not None:
        return of_visit
    if typed is None:
        raise Usage(say(message("wiring/needs-gear")))
    found = _gear(made.known, typed, ReceiverGear, LeadsGear)
    if of_visit is not None and of_visit.id != found.id:
        raise Usage(message("visit/said-twice", word=opening.written, first=of_visit.id, second=found.id))
    return found


def _agree(made: Visit, opening: Opening, typed: str | None) -> None:
    """Raises Usage for a harness that is another than that of the visit."""
    chosen = made.between.get(opening.id, {}).get(HarnessGear.kind)
    if typed is not None and chosen is not None:
        of_visit = ",".join(item.id for item in chosen) or NONE
        if typed != of_visit:
            word = f"{opening.written}.{HarnessGear.kind}"
            raise Usage(message("visit/said-twice", word=word, first=of_visit, second=typed))


def _openings(made: Visit, name: str | None, joined: Sequence[Opening]) -> Sequence[Opening]:
    """The opening named, that of the visit whose leads are known, or the only one that takes a receiver: each form of it. Raises Usage."""
    record = made.known.record
    taking = list(dict.fromkeys(item.written for item in record.openings.values() if item.takes_over))
    if not taking:
        raise Usage(say(message("wiring/no-openings")))
    known = list(dict.fromkeys(item.written for item in joined)) or taking
    if name is None and len(known) > 1:
        raise Usage(say(message("wiring/several-openings", openings=one_of(*known))))
    found = [item for item in jobs.openings(record, name or known[0], made.car) if item.takes_over]
    if not found:
        hint = suggestion(name or "", taking, message("jobs/openings"))
        raise Usage(say(message("wiring/no-such-opening", name=name or "", hint=hint)))
    return [item for item in joined if item in found] or found


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
