"""Print what to order and to bring for a visit: gear, what goes between, single-use parts, what is used up.

VEHICLE is a record's id or make/id, a job an opening at every side or at one (`dash`, `front-door@left`), GEAR the id of a gear
record; where several openings could take it, write OPENING=GEAR. Exits with 1 if something does not fit.
"""

import argparse
import sys
from collections.abc import Sequence

from undertrim.commands.common import add_workspace, chosen, workspace
from undertrim.commands.details import see_check
from undertrim.commands.stocked import no_gear, vehicle_and_stock
from undertrim.commands.usage import Usage
from undertrim.derive import jobs
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.shopping import Choice, orders
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Target
from undertrim.publish.encoding import indented
from undertrim.publish.facts import names
from undertrim.publish.terminal.shop import shop_data, shop_text
from undertrim.record.model import OPENINGS
from undertrim.record.nearness import suggestion
from undertrim.words import Items, message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicle", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument(
        "--job", action="append", required=True, metavar="OPENING[@SIDE]", help="what to fit into; may be repeated"
    )
    parser.add_argument(
        "--gear", action="append", default=[], metavar="[OPENING=]GEAR", help="what to fit; may be repeated"
    )
    parser.add_argument(
        "--variant", action="append", default=[], metavar="NAME=CHOICE", help="which car it is; may be repeated"
    )
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Work the list out and print it."""
    vehicle = vehicle_and_stock(workspace(options), options.vehicle)
    if vehicle is None:
        return 1
    try:
        car = jobs.car(vehicle.record, chosen(options.variant))
        wanted = jobs.wanted(vehicle.record, options.job, car)
        made = orders(vehicle, wanted, _choices(vehicle, wanted, options.gear), car)
    except jobs.BadRequest as error:
        raise Usage(str(error)) from error
    except (Unreachable, TooTangled) as error:
        print(f"undertrim: {names.refusal(vehicle.record, error)}: {see_check()}", file=sys.stderr)
        return 1
    data = shop_data(vehicle, wanted, made)
    sys.stdout.write(indented(data) + "\n" if options.format == "json" else shop_text(data))
    return 0 if all(order.fits for order in made) else 1


def _choices(vehicle: Vehicle, wanted: Sequence[Target], typed: Sequence[str]) -> list[Choice]:
    """Which gear goes into which opening of the jobs. Raises Usage."""
    return [_choice(vehicle, list(dict.fromkeys(target.opening for target in wanted)), text) for text in typed]


def _choice(vehicle: Vehicle, openings: Sequence[str], text: str) -> Choice:
    place, _, name = text.rpartition("=")
    item = next((gear for gear in vehicle.stock.items if gear.id == name), None)
    if item is None:
        taken = tuple(opening.takes for opening in OPENINGS.values())
        names = [gear.id for gear in vehicle.stock.items if isinstance(gear.facts, taken)]
        raise Usage(no_gear(vehicle.stock, name, names, say(message("visit-arguments/any-gear"))))
    if place and place not in openings:
        near = suggestion(place, list(openings), message("jobs/openings"))
        raise Usage(say(message("visit-arguments/no-job", name=place, hint=near)))
    taking = [name for name in openings if isinstance(item.facts, vehicle.record.openings[name].takes)]
    if place:
        taking = [name for name in taking if name == place]
    if len(taking) != 1:
        raise Usage(_unclear(item.id, item.facts.kind, taking))
    return vehicle.record.openings[taking[0]], item


def _unclear(gear: str, kind: str, taking: Sequence[str]) -> str:
    if not taking:
        return say(message("visit-arguments/taken-nowhere", kind=message(f"gear-kinds/a-{kind}"), gear=gear))
    either = Items(tuple(message("visit-arguments/opening-gear", opening=name, gear=gear) for name in taking), "either")
    return say(message("visit-arguments/taken-by-several", gear=gear, either=either))
