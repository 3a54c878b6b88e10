"""Print what to order and to bring for a visit: gear, what goes between, single-use parts, what is used up.

VEHICLE is a record's id or make/id, a job an opening at every side or at one (`dash`, `front-door@left`), GEAR the id of a gear
record; where several openings could take it, write OPENING=GEAR. All of it may be said in one text instead:
"finch-2014-2018?jobs=dash,front-door@left&dash=skerrowe-broadside". Exits with 1 if something does not fit.
"""

import argparse
import sys

from undertrim.commands.details import see_check
from undertrim.commands.usage import Usage
from undertrim.commands.visited import add_gear, add_jobs, add_visit, of_options
from undertrim.derive import jobs
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.publish.encoding import indented
from undertrim.publish.facts import names
from undertrim.publish.terminal.shop import shop_data, shop_text


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    add_visit(parser)
    add_jobs(parser)
    add_gear(parser)
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")


def run(options: argparse.Namespace) -> int:
    """Work the list out and print it."""
    made = of_options(options)
    if made is None:
        return 1
    try:
        orders = made.orders
    except jobs.BadRequest as error:
        raise Usage(str(error)) from error
    except (Unreachable, TooTangled) as error:
        print(f"undertrim: {names.refusal(made.record, error)}: {see_check()}", file=sys.stderr)
        return 1
    data = shop_data(made.vehicle, made.targets, orders)
    sys.stdout.write(indented(data) + "\n" if options.format == "json" else shop_text(data))
    return 0 if all(order.fits for order in orders) else 1
