"""Start the record of a car that has much in common with one that is recorded: the same dash, the same doors.

VEHICLE is the record to share with, its id or make/id; NEW is the new car as make/model. The file says what is shared, and that all else is
unknown: the vehicle's voltage, the restraint waits. A file that is there is never overwritten. Evidence is not shared: state in
the new record what you find on its car.
"""

import argparse
import sys
from datetime import date
from pathlib import Path

from undertrim.check import reports, starting
from undertrim.check.runner import Report, check_entry
from undertrim.check.twins import twins
from undertrim.commands import new_car
from undertrim.commands.common import add_workspace, workspace
from undertrim.commands.usage import Usage
from undertrim.record import build, identity
from undertrim.record.model import VehicleFacts
from undertrim.record.problem import Level, printable
from undertrim.record.starting import Notes, Start, started
from undertrim.words import Items, message, say

_BETWEEN = ".."


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicle", metavar="VEHICLE", help="the record to share with")
    parser.add_argument("new", metavar="NEW", help="the new car, as make/model")
    parser.add_argument(
        "--built", required=True, metavar="FROM..TO", help="its months of build; TO is the first that is not covered"
    )
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Write the file; exit 1, with nothing written, if nothing can be taken from the other record."""
    place = workspace(options)
    other, start = new_car.sister(place, options.vehicle), _start(options.new, options.built)
    path = place.own("vehicles", identity.vehicle_path(_facts(start)))
    if place.at(place.name(path)).exists():
        raise Usage(message("copy/there", path=printable(str(place.shown(path)))))
    name = starting.called(place, other)
    notes = _notes(name)
    fresh, left = starting.shared_with(place, path, other, lambda left: started(start, name, other.source, notes, left))
    in_the_way = [problem for problem in check_entry(fresh) if problem.level is Level.ERROR]
    if in_the_way:
        sys.stderr.write(reports.text(Report(1, tuple(in_the_way))))
        print(say(message("copy/nothing")), file=sys.stderr)
        return 1
    if like := twins(place, fresh):
        sys.stderr.write(reports.text(Report(1, tuple(like))))
    _write(path, fresh.source.text)
    print(say(message("copy/done", path=printable(str(place.shown(path))), other=other.address)))
    if left:
        print(say(message("copy/left", things=Items(tuple("/".join(map(str, one)) for one in left), "comma"))))
    return 0


def _start(new: str, built: str) -> Start:
    make, _, model = (_said(part) for part in new.partition("/"))
    first, _, end = built.partition(_BETWEEN)
    if not identity.slug(make) or not identity.slug(model) or not new.isprintable():
        raise Usage(message("copy/name", new=printable(new)))
    if not (_is_month(first) and _is_month(end) and first < end):
        raise Usage(message("copy/built", built=printable(built)))
    return Start(make, model, first, end)


def _said(name: str) -> str:
    """A name as people say it; one all in small letters is an id, and its words begin with capitals."""
    text = name.strip()
    return text.replace("-", " ").title() if text == text.lower() else text


def _is_month(text: str) -> bool:
    try:
        return bool(date.fromisoformat(f"{text}-01"))
    except ValueError:
        return False


def _facts(start: Start) -> VehicleFacts:
    built = {"from": start.first, "to": start.end}
    said = {"make": start.make, "model": start.model, "built": built, "drive_side": [], "high_voltage": "unknown"}
    facts = build.section("vehicle", said)
    assert isinstance(facts, VehicleFacts)
    return facts


def _notes(name: str) -> Notes:
    head = message("copy/head", name=name), message("copy/over"), message("copy/not-here")
    unknown = message("copy/look-up"), message("copy/never-shared")
    return Notes(tuple(map(say, head)), say(message("copy/sides")), tuple(map(say, unknown)))


def _write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("x", encoding="utf-8", newline="\n") as file:
        file.write(text)
