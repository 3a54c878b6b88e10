"""Stamp a record as checked at a car: who, when, at which car, and a fingerprint of every fact.

VEHICLE is a record's id (its file's name without the ending) or make/id. Nothing is written while a safety fact is unknown, a
conflict is not settled, something was taken from another record and not looked at on this car, or the check finds errors. A later edit of a fact makes the stamp stale: verify again, or remove it.
"""

import argparse
import sys
from collections.abc import Iterator
from datetime import date

from undertrim.check import reports, runner
from undertrim.check.cache import Cache
from undertrim.check.register import COLLECTION_RULES
from undertrim.check.runner import Report
from undertrim.commands.common import add_workspace, workspace
from undertrim.commands.usage import Usage
from undertrim.derive.evidence.fingerprint import fingerprints
from undertrim.derive.evidence.obstacles import obstacles
from undertrim.derive.evidence.taken import SEEN
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level, Problem
from undertrim.record.source import read_text
from undertrim.record.stamping import CannotStamp, stamped
from undertrim.record.store import Entry, Workspace
from undertrim.record.writing import write_text
from undertrim.words import WayOut, message, say

_UNKNOWNS = "verified-with-unknowns"
_UNSAID = "car-not-said"


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicle", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument("--by", required=True, metavar="INITIALS", help="who checked it")
    parser.add_argument(
        "--car",
        required=True,
        metavar="CAR",
        help="at which car, in one line: year, steering side, what its choices of the variants are called",
    )
    parser.add_argument("--on", metavar="DATE", help="on which day, as year-month-day (default: today)")
    parser.add_argument(
        "--taken",
        choices=[SEEN],
        default="",
        help="'seen': all that the record takes from others was looked at on this car too",
    )
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Stamp the record; exit 1, with nothing written, if something is in the way."""
    if not (options.by + options.car).isprintable():
        raise Usage(say(message("verify/one-line")))
    place = workspace(options)
    try:
        entry = place.load(vehicle_file(place, options.vehicle))
    except NotFound as error:
        raise Usage(str(error)) from error
    if entry.kind != "vehicle":
        raise Usage(say(message("verify/no-vehicle", name=options.vehicle)))
    if entry.source.mends or not isinstance(entry.source.data, dict):  # first typed as it is read
        return _refuse(entry.problems)
    facts = fingerprints(entry.source.data)
    on = options.on or date.today().isoformat()
    try:
        text = stamped(entry.source, on, options.by, options.car, facts, options.taken)
    except CannotStamp as error:
        print(f"undertrim: {entry.source.path}: {error}", file=sys.stderr)
        return 1
    fresh = place.entry(entry.path, read_text(text, entry.source.path))
    _refuse_words(fresh)
    if in_the_way := sorted(_in_the_way(place, fresh), key=lambda problem: problem.sort_key):
        return _refuse(in_the_way)
    write_text(entry.path, text)
    print(say(message("verify/done", path=str(entry.source.path), count=len(facts))))
    return 0


def _refuse_words(fresh: Entry) -> None:
    """Raise Usage for a date, initials or a car that no record may hold."""
    start = fresh.source.keys["verified",]
    for problem in fresh.problems:
        if problem.position > start:
            raise Usage(f"{problem.message}: {problem.hint}" if problem.hint else problem.message)


def _in_the_way(place: Workspace, fresh: Entry) -> Iterator[Problem]:
    """The errors of the record as it would be, those it has beside its neighbours, what is not known and not said of the car."""
    stamp = fresh.source.keys["verified",]
    for found in runner.check_entry(fresh):
        unsaid = found.rule == _UNSAID and found.position > stamp
        if unsaid or (found.level is Level.ERROR and found.rule != _UNKNOWNS):
            yield found
    among_all = runner.check(place, [fresh.path], cache=Cache(place)).problems
    here = [item for item in among_all if item.file == place.shown(fresh.path)]
    yield from (item for item in here if item.level is Level.ERROR and item.rule in COLLECTION_RULES)
    if isinstance(fresh.record, VehicleRecord):
        for item in obstacles(fresh.record):
            position = fresh.source.position(item.pointer, key=True)
            said = message("check/in-the-way", what=item.said, where=WayOut(item.said))
            yield Problem(fresh.source.path, position, Level.ERROR, _UNKNOWNS, said)


def _refuse(problems: list[Problem] | tuple[Problem, ...]) -> int:
    sys.stderr.write(reports.text(Report(1, tuple(problems))))
    print(say(message("verify/nothing-written")), file=sys.stderr)
    return 1
