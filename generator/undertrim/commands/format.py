"""Lay records out the one way: the order of fields, brackets, quotes and blank lines.

Without PATHS all records of the workspace are laid out. No value, no order that means something and no comment is changed: what is
written is read again, and a file of which that cannot be shown is left as it is, with the reason; so is one that cannot be read.
With --check nothing is written, and each record that is not laid out is named with its first line that differs. Exit 1 if there is
one, or if one was left.
"""

import argparse
import sys
from pathlib import Path

from undertrim.commands.common import add_paths, add_workspace, existing, workspace
from undertrim.commands.empty import refuse_empty
from undertrim.commands.mended import changes
from undertrim.record import layout
from undertrim.record.layout import CannotLay, modeline
from undertrim.record.problem import printable
from undertrim.record.source import Source
from undertrim.record.store import Workspace
from undertrim.words import Message, WayOut, message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    add_paths(parser)
    parser.add_argument("--check", action="store_true", help="name what is not laid out, and write nothing")
    parser.add_argument("--diff", action="store_true", help="show what would change, and write nothing")
    parser.add_argument(
        "--shorter", action="store_true", help="first leave out what follows anyway, and write short forms (format 2)"
    )
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Lay the records out; exit 1 if one had to be left, or with --check one is not laid out."""
    place = workspace(options)
    paths = list(existing(options))
    refuse_empty(place)
    chosen = [path for path in (place.files(paths) if paths else place.own_files()) if place.kind(path)]
    outcomes = [_format(place, path, options) for path in chosen]
    left, differ = outcomes.count(None), outcomes.count(False)
    if options.check and differ:
        counted = message("format/counted", count=differ, all=len(chosen))
        print(f"{say(counted)}\n    {say(WayOut(counted))}", file=sys.stderr)
    elif not left and not differ:
        print(say(message("format/all-laid", count=len(chosen))))
    return 1 if left or (differ and options.check) else 0


def _format(place: Workspace, path: Path, options: argparse.Namespace) -> bool | None:
    """Whether a record was laid out already; None for one that is left."""
    source = place.load(path).source.as_typed
    try:
        shorter = layout.shorter(source) if options.shorter and place.kind(path) == "vehicle" else source
        text = layout.laid_out(shorter, place.kind(path), modeline.wanted(path, place.kind(path), place.root))
    except CannotLay as error:
        _tell_left(source, error.said)
        return None
    if text == source.text:
        return True
    if options.diff:
        sys.stdout.writelines(changes(source, text))
    if options.check:
        print(say(_first(source, text)))
    if not options.diff and not options.check:
        return _write(place, source, path, text)
    return False


def _write(place: Workspace, source: Source, path: Path, text: str) -> bool | None:
    try:
        place.write(path, text)
    except OSError as error:
        _tell_left(source, message("format/cannot-write", error=str(error.strerror or error)))
        return None
    print(say(message("format/laid", path=printable(str(source.path)))))
    return False


def _tell_left(source: Source, why: Message) -> None:
    said = message("files/left", path=printable(str(source.path)), why=why)
    print(f"undertrim: {say(said)}\n    {say(WayOut(why))}", file=sys.stderr)


def _first(source: Source, text: str) -> Message:
    """The first line that differs, and what it would be."""
    old, new = source.text.splitlines(), text.splitlines()
    number = next(
        (i for i, (one, other) in enumerate(zip(old, new, strict=False)) if one != other), min(len(old), len(new))
    )
    where = {"path": printable(str(source.path)), "line": str(number + 1)}
    if number >= len(new):
        return message("format/would-end", **where)
    return message("format/would", **where, new=printable(new[number]) or "''")
