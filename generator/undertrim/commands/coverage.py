"""Show which openings are recorded for which cars, and what to measure next.

VEHICLE is a record's id or make/id. Without one there is a line for each vehicle, the worst first, and the total of all.
With --questions it is what to find out as questions: why each matters, where the handbook shows how, and what an answer looks like.
Nothing it finds is a fault: it exits with 0 unless a record cannot be read.
"""

import argparse
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path

from undertrim.commands.common import add_workspace, progress, workspace
from undertrim.commands.details import see_check
from undertrim.commands.usage import Usage
from undertrim.derive.coverage import Share
from undertrim.derive.questions import questions
from undertrim.publish.encoding import indented
from undertrim.publish.facts import coverage
from undertrim.publish.facts.coverage import Report, ShownShare
from undertrim.publish.terminal.coverage import collection_text, vehicle_text
from undertrim.publish.terminal.questions import Asked, questions_text
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry, Workspace
from undertrim.words import message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicles", nargs="*", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument("--questions", action="store_true", help="what to find out, with the form of each answer")
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Print the coverage; exit 1 if a record cannot be read."""
    place = workspace(options)
    try:
        paths = [vehicle_file(place, name) for name in options.vehicles] or _every(place)
    except NotFound as error:
        raise Usage(str(error)) from error
    entries = list(_read(place, paths))
    if options.questions:
        sys.stdout.write(_questions(entries, data=options.format == "json"))
        return _unread(entries)
    reports = [coverage.report(item.record, item.address) for item in entries if isinstance(item.record, VehicleRecord)]
    sys.stdout.write(_json(reports) if options.format == "json" else _text(reports, each=bool(options.vehicles)))
    return _unread(entries)


def _questions(entries: Sequence[Entry], *, data: bool) -> str:
    asked = [
        Asked(item.address, questions(item.record, item.source))
        for item in entries
        if isinstance(item.record, VehicleRecord)
    ]
    return indented({"vehicles": asked}) + "\n" if data else "\n".join(map(questions_text, asked))


def _unread(entries: Sequence[Entry]) -> int:
    """Name what could not be read; the exit code."""
    unread = [item.source.path for item in entries if not isinstance(item.record, VehicleRecord)]
    for path in unread:
        unreadable = say(message("plan/unreadable", path=str(path)))
        print(f"undertrim: {unreadable}: {see_check()}", file=sys.stderr)
    return 1 if unread else 0


def _read(place: Workspace, paths: Sequence[Path]) -> Iterator[Entry]:
    show = progress(message("commands/reading"))
    for number, path in enumerate(paths, 1):
        yield place.load(path)
        if show:
            show(number, len(paths))


def _every(place: Workspace) -> list[Path]:
    return [path for path in place.files() if place.kind(path) == "vehicle"]


def _text(reports: Sequence[Report], *, each: bool) -> str:
    if each:
        return "\n".join(vehicle_text(report) for report in reports)
    return collection_text(_worst_first(reports), _total(reports))


def _json(reports: Sequence[Report]) -> str:
    data = {"total": _total(reports), "vehicles": _worst_first(reports)}
    return indented(data) + "\n"


def _worst_first(reports: Sequence[Report]) -> list[Report]:
    """By share, then by how much is left to find out."""
    return sorted(
        reports, key=lambda item: (item.share.answered / (item.share.cells or 1), -len(item.next), item.vehicle)
    )


def _total(reports: Sequence[Report]) -> ShownShare:
    cells = (Share(item.share.answered, item.share.cells) for item in reports)
    return coverage.share(sum(cells, Share(0, 0)))
