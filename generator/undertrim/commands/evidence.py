"""Show what the facts rest on: who found out what, on how many cars, and how often who was corrected.

VEHICLE is a record's id or make/id; without one it is about all. It names what rests on one word alone and what is old, and says which share of
the facts is known, was measured, and is verified. Exit 1 if a record cannot be read.
"""

import argparse
import sys
import tempfile
from collections.abc import Iterator, Sequence
from pathlib import Path

from undertrim.commands.common import add_workspace, progress, workspace
from undertrim.commands.details import see_check
from undertrim.commands.usage import Usage
from undertrim.derive.evidence.account import Account, account
from undertrim.derive.evidence.over_time import Month, over_time
from undertrim.derive.fact_names import fact_name
from undertrim.publish.build.day import today
from undertrim.publish.encoding import indented
from undertrim.publish.facts import account as facts
from undertrim.publish.terminal.account import account_text
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry, Workspace
from undertrim.words import message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicles", nargs="*", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument(
        "--over-time", action="store_true", help="also how the shares of the collection went, by month, as git has it"
    )
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Print it; exit 1 if a record cannot be read."""
    place = workspace(options)
    entries = list(_read(place, options.vehicles))
    unread = [entry for entry in entries if not isinstance(entry.record, VehicleRecord)]
    for entry in unread:
        unreadable = say(message("plan/unreadable", path=str(entry.source.path)))
        print(f"undertrim: {unreadable}: {see_check()}", file=sys.stderr)
    report = facts.report(list(accounts(entries)), today(), _months(place) if options.over_time else ())
    sys.stdout.write(indented(report) + "\n" if options.format == "json" else account_text(report))
    return 1 if unread else 0


def _months(place: Workspace) -> list[Month]:
    show = progress(message("commands/reading"))
    with tempfile.TemporaryDirectory(prefix="undertrim-evidence-") as held:
        return list(over_time(place, Path(held), show))


def accounts(entries: Sequence[Entry]) -> Iterator[Account]:
    """What each vehicle's record rests on."""
    for entry in entries:
        if isinstance(entry.record, VehicleRecord):
            yield account(entry.record, entry.source, entry.address, fact_name)


def _read(place: Workspace, names: Sequence[str]) -> Iterator[Entry]:
    try:
        paths = [vehicle_file(place, name) for name in names] or place.files([place.records / "vehicles"])
    except NotFound as error:
        raise Usage(str(error)) from error
    show = progress(message("commands/reading"))
    for number, path in enumerate(paths, 1):
        yield place.load(path)
        if show:
            show(number, len(paths))
