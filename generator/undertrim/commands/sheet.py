"""Print the sheet of one visit as PDF: the job at a glance, then its steps, the joint and what is fitted.

VISIT is a vehicle with what is done to it: "finch-2014-2018?jobs=dash,front-door&radio=map&dash=skerrowe-broadside". The same can be said with
options. Nothing that is not in the visit is on the sheet. Exits with 1 if no steps can be given.
"""

import argparse
import sys
from pathlib import Path

from undertrim.commands.common import workspace
from undertrim.commands.details import see_check
from undertrim.commands.usage import Usage
from undertrim.commands.visited import add_gear, add_jobs, add_visit, of_options
from undertrim.derive import jobs
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.visit import text
from undertrim.derive.visit.visit import Visit
from undertrim.publish.build.beside import PAPERS, page
from undertrim.publish.build.day import today
from undertrim.publish.build.keyed import languages
from undertrim.publish.facts import names
from undertrim.publish.printed import pdf
from undertrim.publish.web import site
from undertrim.publish.web.editions import editions
from undertrim.record.collection import settings
from undertrim.record.lookup import vehicle_file
from undertrim.record.photo_files import album
from undertrim.record.store import Workspace
from undertrim.words import Message, message, say, spoken


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    add_visit(parser)
    add_jobs(parser)
    add_gear(parser)
    parser.add_argument("--paper", choices=sorted(PAPERS), help="the paper (default: the collection's)")
    parser.add_argument("--out", type=Path, metavar="FILE", help="where to write (default: VEHICLE-JOBS.pdf here)")
    parser.add_argument("--force", action="store_true", help="write over a file that is there")


def run(options: argparse.Namespace) -> int:
    """Write the sheet; exit 1 if the record cannot be relied on or planned, or the file is there already."""
    place = workspace(options)
    made = of_options(options)
    if made is None:
        return 1
    file = options.out or Path(_name(made))
    if file.exists() and not options.force:
        return _refuse(message("template/there", file=str(file)))
    try:
        paper = PAPERS[options.paper or settings(place.root).paper[0]]
        photos = album(vehicle_file(place, made.address))
        printed = pdf.render_visit(made, _address(place, made), paper, today(), photos)
    except jobs.BadRequest as error:
        raise Usage(error.said) from error
    except (Unreachable, TooTangled) as error:
        print(f"undertrim: {say(names.refusal(made.record, error))}: {see_check()}", file=sys.stderr)
        return 1
    file.write_bytes(printed)
    print(say(message("visit-sheet/written", file=str(file), visit=text.write(made))))
    return 0


def _refuse(why: Message) -> int:
    print(f"undertrim: {say(why)}", file=sys.stderr)
    return 1


def _name(made: Visit) -> str:
    """The vehicle and the openings, as a file is called."""
    return "-".join((made.address.rpartition("/")[2], *text.jobs(made))).replace("@", "-") + ".pdf"


def _address(place: Workspace, made: Visit) -> str:
    """The address of the visit in the site of the workspace, in the language of the sheet where the site has it."""
    top = site.written_address(place.root).rstrip("/")
    spoken_there = next((one.place for one in editions(languages(place)) if one.tag == spoken().tag), "")
    return f"{page(f'{top}/{spoken_there}', made.address)}?{text.words(made)}" if top else ""
