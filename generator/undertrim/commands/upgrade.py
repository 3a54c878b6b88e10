"""Move vehicle records to the newest format, in which each thing is said once.

Without PATHS all records of the workspace are moved. No comment, order or fact is lost: what is written is read again, and a file of
which that cannot be shown is left as it is, with the reason. Exit 1 if one was left. Gear has one format so far and stays as it is.
"""

import argparse
import sys
from collections.abc import Iterator
from dataclasses import replace
from difflib import unified_diff
from pathlib import Path

from undertrim.commands.common import add_paths, add_workspace, existing, workspace
from undertrim.record import migrations
from undertrim.record.layout import modeline
from undertrim.record.migrations import CannotMove, Moved
from undertrim.record.problem import printable
from undertrim.record.store import Entry, Workspace
from undertrim.words import Message, WayOut, message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    add_paths(parser)
    parser.add_argument("--dry-run", action="store_true", help="show what would change, and write nothing")
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Move the records; exit 1 if one had to be left."""
    place = workspace(options)
    paths = list(existing(options))
    chosen = [path for path in (place.files(paths) if paths else place.own_files()) if place.kind(path) == "vehicle"]
    outcomes = [outcome for path in chosen for outcome in _upgrade(place, path, dry=options.dry_run)]
    if not outcomes:
        print(say(message("upgrade/nothing")))
    return 0 if all(outcomes) else 1


def _upgrade(place: Workspace, path: Path, *, dry: bool) -> Iterator[bool]:
    """Whether a record was moved; nothing for one that is of the newest format."""
    entry = place.load(path)
    old = migrations.format_of(entry.source)
    if old == migrations.NEWEST:
        return
    try:
        found = _moved(entry)
        found = replace(found, text=modeline.with_line(found.text, modeline.wanted(path, entry.kind, place.root)))
    except CannotMove as error:
        _tell_left(entry, error.said)
        yield False
        return
    if dry:
        sys.stdout.writelines(_changes(entry, found))
    else:
        place.write(path, found.text)
    _tell(entry, found, old, "upgrade/would-move" if dry else "upgrade/moved")
    yield True


def _moved(entry: Entry) -> Moved:
    """Raises CannotMove, also for a record with errors: what it says is not sure."""
    if entry.record is None or entry.dropped or entry.source.problems:
        raise CannotMove(message("upgrade/broken"))
    return migrations.moved(entry.source)


def _tell(entry: Entry, found: Moved, old: int | None, code: str) -> None:
    path = printable(str(entry.source.path))
    before, after = len(entry.source.text.splitlines()), len(found.text.splitlines())
    print(say(message(code, path=path, old=old or 0, new=migrations.NEWEST, before=before, after=after)))
    if found.added:
        places = ", ".join("/".join(map(str, place)) for place in found.added)
        print(say(message("upgrade/added", path=path, places=places)))


def _tell_left(entry: Entry, why: Message) -> None:
    said = message("files/left", path=printable(str(entry.source.path)), why=why)
    print(f"undertrim: {say(said)}\n    {say(WayOut(why))}", file=sys.stderr)


def _changes(entry: Entry, found: Moved) -> Iterator[str]:
    path = printable(str(entry.source.path))
    for line in unified_diff(entry.source.text.splitlines(), found.text.splitlines(), path, path, lineterm="", n=1):
        yield printable(line) + "\n"
