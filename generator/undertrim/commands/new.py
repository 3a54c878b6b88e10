"""Begin the record of a car, or of a piece of gear, that nobody has recorded: asked at the terminal, or answered behind the command.

An answer is typed as NAME=VALUE, such as make=Kelbrook or doors=front,rear; a FILE is a claims file that describes the car. What is still
lacking is asked for where there is a terminal. The record is complete and passes the check: what is usual in such cars stands in it as a start
to correct, marked as not seen, and everything else is unknown. With --like it takes parts and openings from the record of a sister. Nothing is
written beside a record that has these cars already. With --gear the record of a piece of gear of that kind begins.
"""

import argparse
import sys
from pathlib import Path

from undertrim.check import reports
from undertrim.check.runner import Report
from undertrim.check.starting import Fresh
from undertrim.check.twins import twins
from undertrim.commands import new_car, new_gear
from undertrim.commands.common import add_workspace, workspace
from undertrim.commands.gathering import pairs
from undertrim.commands.prompts import Stopped
from undertrim.commands.usage import Usage
from undertrim.record.problem import printable
from undertrim.record.store import Workspace
from undertrim.words import Items, Message, WayOut, message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument(
        "answers", nargs="*", metavar="NAME=VALUE", help="an answer, or a claims file that describes the car"
    )
    parser.add_argument("--like", metavar="VEHICLE", help="the record of a car that has much in common with it")
    parser.add_argument(
        "--another", action="store_true", help="it is another car than the one that is spelt nearly alike"
    )
    parser.add_argument("--gear", choices=new_gear.kinds(), metavar="KIND", help="a piece of gear of this kind")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Write the file; exit 1, with nothing written, where the cars are recorded already or the check finds an error."""
    place = workspace(options)
    try:
        return _gear(place, options) if options.gear else _car(place, options)
    except Stopped:
        print(say(message("new/stopped")))
        return 0


def _car(place: Workspace, options: argparse.Namespace) -> int:
    file, asks = _file(options.answers), sys.stdin.isatty()
    car = new_car.of_file(file) if file else new_car.asked(pairs(options.answers, new_car.other_names()), asks=asks)
    name = options.like or ("" if file or not asks else new_car.like_which(place))
    like = new_car.sister(place, name) if name else None
    made = new_car.begin(place, car, like, another=options.another)
    if isinstance(made, Message):
        return _refused(made)
    written = _write(place, made)
    if not written and like:
        print(say(message("new/like", other=like.address)))
        if made.left:
            left = Items(tuple("/".join(map(str, one)) for one in made.left), "comma")
            print(say(message("copy/left", things=left)))
    return written


def _gear(place: Workspace, options: argparse.Namespace) -> int:
    if options.like or options.another or _file(options.answers):
        raise Usage(message("new/of-cars"))
    made = new_gear.asked(place, options.gear, pairs(options.answers, {}), asks=sys.stdin.isatty())
    return _refused(made) if isinstance(made, Message) else _write(place, made)


def _file(answers: list[str]) -> Path | None:
    """The claims file among the answers. Raises Usage where something else is there beside it."""
    if len(answers) == 1 and "=" not in answers[0]:
        path = Path(answers[0])
        if not path.exists():
            raise Usage(message("files/does-not-exist", name=printable(answers[0])))
        return path
    return None


def _refused(said: Message) -> int:
    print(
        f"{printable(say(said))}\n    {printable(say(WayOut(said)))}\n{say(message('copy/nothing'))}", file=sys.stderr
    )
    return 1


def _write(place: Workspace, made: Fresh) -> int:
    """Write it, with what the check says of it."""
    if made.errors:
        sys.stderr.write(reports.text(Report(1, made.errors)))
        print(say(message("copy/nothing")), file=sys.stderr)
        return 1
    like = tuple(twins(place, made.entry))
    made.write()
    path = printable(str(place.shown(made.entry.path)))
    code = "new/written" if made.entry.kind == "vehicle" else "new/gear-written"
    print(say(message(code, path=path, id=made.entry.id)))
    if made.problems or like:
        sys.stdout.write(reports.text(Report(1, (*made.problems, *like))))
    return 0
