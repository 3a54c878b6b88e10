"""Stamp a record as checked at a car: who, when, at which car, and a fingerprint of every fact.

VEHICLE is a record's id (its file's name without the ending) or make/id. Nothing is written while a safety fact is unknown, a
conflict is not settled, something was taken from another record and not looked at on this car, or the check finds errors. A later edit of a fact makes the stamp stale: verify again, or remove it.

With '--only OPENING' the stamp is for what the car can show: that opening, all that comes off for it in this car, and the plugs there. An edit of another fact leaves it.
"""

import argparse
import sys
from collections.abc import Collection, Iterator
from dataclasses import dataclass

from undertrim.check import reports, runner
from undertrim.check.cache import Cache
from undertrim.check.register import COLLECTION_RULES
from undertrim.check.runner import Report
from undertrim.commands.common import add_workspace, chosen, workspace
from undertrim.commands.usage import Usage
from undertrim.derive.evidence import partly, resting
from undertrim.derive.evidence.fingerprint import fingerprints
from undertrim.derive.evidence.obstacles import in_the_way_of, obstacles
from undertrim.derive.evidence.taken import SEEN
from undertrim.derive.jobs import BadRequest
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.publish.build.day import today
from undertrim.record import layout
from undertrim.record.layout import CannotLay, modeline
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level, Problem
from undertrim.record.source import Pointer, read_text
from undertrim.record.stamping import KEY, PARTS, CannotStamp, stamped, with_parts
from undertrim.record.store import Entry, Workspace
from undertrim.words import WayOut, message, say

_UNKNOWNS = "verified-with-unknowns"
_STALE = "stale-verification"  # another stamp may be; this one is fresh
_UNSAID = "car-not-said"


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    # Long because it names each of them.
    parser.add_argument("vehicle", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument("--by", required=True, metavar="INITIALS", help="who checked it")
    parser.add_argument(
        "--car",
        required=True,
        metavar="CAR",
        help="at which car, in one line: year, steering side, what its choices of the variants are called",
    )
    parser.add_argument(
        "--only",
        action="append",
        default=[],
        metavar="OPENING",
        help="stamp this opening and what it rests on; may be repeated",
    )
    parser.add_argument(
        "--variant",
        action="append",
        default=[],
        metavar="NAME=CHOICE",
        help="with --only: which car it is; may be repeated",
    )
    parser.add_argument("--side", choices=["left", "right"], default="", help="with --only: at which side of the car")
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
        path = vehicle_file(place, options.vehicle)
    except NotFound as error:
        raise Usage(str(error)) from error
    place.refuse_shared(path)
    entry = place.load(path)
    if entry.kind != "vehicle":
        raise Usage(say(message("verify/no-vehicle", name=options.vehicle)))
    if entry.source.mends or not isinstance(entry.source.data, dict):  # first typed as it is read
        return _refuse(entry.problems)
    if (options.variant or options.side) and not options.only:
        raise Usage(message("verify/only-with"))
    try:
        made = _part(entry, options) if options.only else _whole(entry, options)
    except CannotStamp as error:
        print(f"undertrim: {entry.source.path}: {error}", file=sys.stderr)
        return 1
    return _refuse(entry.problems) if made is None else _write(place, entry, made)


@dataclass(frozen=True, slots=True)
class _Made:
    """A stamp: the text with it, where it stands in the record, and the names of the blocks that it is for."""

    text: str
    pointer: Pointer
    blocks: Collection[str]
    taken_seen: bool


def _whole(entry: Entry, options: argparse.Namespace) -> _Made:
    facts = fingerprints(entry.source.data)
    text = stamped(entry.source, _on(options), options.by, options.car, facts, options.taken)
    return _Made(text, (KEY,), facts, taken_seen=False)


def _part(entry: Entry, options: argparse.Namespace) -> _Made | None:
    """The stamp of some openings; None where the record cannot be relied on. Raises Usage for openings or choices that it does not have."""
    record = entry.record
    if not isinstance(record, VehicleRecord):
        return None
    try:
        car, answers = partly.car(record, options.car, chosen(options.variant))
        wanted = resting.targets(record, options.only, options.side, answers)
        blocks = resting.blocks(record, entry.source.data, wanted, answers)
    except BadRequest as error:
        raise Usage(str(error)) from error
    except (Unreachable, TooTangled):
        return None  # the check tells why
    if not wanted:
        raise Usage(message("verify/not-there"))
    facts = {name: mark for name, mark in fingerprints(entry.source.data).items() if name in blocks}
    stamp = {"on": _on(options), "by": options.by, "car": car, "of": list(dict.fromkeys(options.only))}
    stamp |= {name: value for name, value in (("side", options.side), ("taken", options.taken)) if value}
    name, parts = partly.beside(record, entry.source.as_typed.data, {**stamp, "facts": facts}, answers)
    return _Made(with_parts(entry.source, parts), (PARTS, name), facts, taken_seen=bool(options.taken))


def _on(options: argparse.Namespace) -> str:
    return str(options.on or today().isoformat())


def _write(place: Workspace, entry: Entry, made: _Made) -> int:
    fresh = place.entry(entry.path, read_text(made.text, entry.source.path))
    _refuse_words(fresh, made.pointer)
    if in_the_way := sorted(_in_the_way(place, fresh, made), key=lambda problem: problem.sort_key):
        return _refuse(in_the_way)
    place.write(entry.path, _laid(place, entry, made.text))
    print(say(message("verify/done", path=str(entry.source.path), count=len(made.blocks))))
    return 0


def _laid(place: Workspace, entry: Entry, text: str) -> str:
    """The text laid out the one way, if it was so before."""
    line = modeline.wanted(entry.path, "vehicle", place.root)
    try:
        was_so = layout.laid_out(entry.source.as_typed, "vehicle", line) == entry.source.as_typed.text
        return layout.laid_out(read_text(text, entry.source.path), "vehicle", line) if was_so else text
    except CannotLay:
        return text


def _refuse_words(fresh: Entry, pointer: Pointer) -> None:
    """Raise Usage for a date, initials or a car that no record may hold."""
    start = fresh.source.as_typed.keys[pointer]
    for problem in fresh.problems:
        if problem.position > start:
            raise Usage(f"{problem.message}: {problem.hint}" if problem.hint else problem.message)


def _in_the_way(place: Workspace, fresh: Entry, made: _Made) -> Iterator[Problem]:
    """The errors of the record as it would be, those it has beside its neighbours, what is not known and not said of the car."""
    stamp = fresh.source.as_typed.keys[made.pointer]
    for found in runner.check_entry(fresh):
        unsaid = found.rule == _UNSAID and found.position > stamp
        if unsaid or (found.level is Level.ERROR and found.rule not in (_UNKNOWNS, _STALE)):
            yield found
    among_all = runner.check(place, [fresh.path], cache=Cache(place)).problems
    here = [item for item in among_all if item.file == place.shown(fresh.path)]
    yield from (item for item in here if item.level is Level.ERROR and item.rule in COLLECTION_RULES)
    if isinstance(fresh.record, VehicleRecord):
        for item in (
            in_the_way_of(fresh.record, made.blocks, taken_seen=made.taken_seen)
            if made.pointer[1:]
            else obstacles(fresh.record)
        ):
            position = fresh.source.position(item.pointer, key=True)
            said = message("check/in-the-way", what=item.said, where=WayOut(item.said))
            yield Problem(fresh.source.path, position, Level.ERROR, _UNKNOWNS, said)


def _refuse(problems: list[Problem] | tuple[Problem, ...]) -> int:
    sys.stderr.write(reports.text(Report(1, tuple(problems))))
    print(say(message("verify/nothing-written")), file=sys.stderr)
    return 1
