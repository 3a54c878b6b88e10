"""Lay records out the one way: the order of their fields, their lines, their blank lines.

Without PATHS all records of the workspace are laid out. Nothing that a record says changes, and no comment goes; a file of which that
cannot be shown is left as it is, with the reason. Exit 1 if one was left, or with --check if one is laid out otherwise.
"""

import argparse
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import unified_diff
from pathlib import Path

from undertrim.commands.common import add_workspace, workspace
from undertrim.commands.usage import Usage
from undertrim.record.layout import CannotLayOut, laid_out, modeline, shorter
from undertrim.record.problem import printable
from undertrim.record.source import Source, read
from undertrim.record.store import Workspace
from undertrim.record.writing import write_text
from undertrim.words import Message, WayOut, message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("paths", nargs="*", type=Path, metavar="PATH", help="record files or folders")
    parser.add_argument("--check", action="store_true", help="only say which are laid out otherwise, and write nothing")
    parser.add_argument("--diff", action="store_true", help="show what would change, and write nothing")
    parser.add_argument(
        "--shorter", action="store_true", help="first leave out what follows anyway, and write short forms (format 2)"
    )
    add_workspace(parser)


@dataclass(frozen=True, slots=True)
class _Outcome:
    """What came of one file: its text as it is and as it would be, or why it is left."""

    source: Source
    text: str = ""
    left: Message | None = None

    @property
    def changes(self) -> bool:
        """Whether it is laid out otherwise."""
        return self.left is None and self.text != self.source.text


def run(options: argparse.Namespace) -> int:
    """Lay the records out; exit 1 if one had to be left, or is to be said to be otherwise."""
    place = workspace(options)
    for path in options.paths:
        if not path.exists():
            raise Usage(message("files/does-not-exist", name=printable(str(path))))
    found = [_outcome(place, path, shorten=options.shorter) for path in place.files(options.paths)]
    for outcome in found:
        _deal_with(outcome, options)
    changed, left = sum(one.changes for one in found), sum(one.left is not None for one in found)
    only_said = options.check or options.diff
    print(say(message("layout/would-change" if only_said else "layout/changed", count=changed, all=len(found))))
    return 1 if left or (options.check and changed) else 0


def _outcome(place: Workspace, path: Path, *, shorten: bool) -> _Outcome:
    source = read(path, place.shown(path))
    try:
        kind = place.kind(path)
        text = laid_out(shorter(source) if shorten and kind == "vehicle" else source, kind)
        return _Outcome(source, modeline.with_line(text, modeline.wanted(path, kind, place.root)))
    except CannotLayOut as error:
        return _Outcome(source, left=error.said)


def _deal_with(outcome: _Outcome, options: argparse.Namespace) -> None:
    path = printable(str(outcome.source.path))
    if outcome.left:
        said = say(message("layout/left", path=path, why=outcome.left))
        print(f"undertrim: {said}\n    {say(WayOut(outcome.left))}", file=sys.stderr)
    elif outcome.changes and options.diff:
        sys.stdout.writelines(_differences(outcome, path))
    elif outcome.changes and options.check:
        print(say(message("layout/otherwise", path=path, line=_first(outcome))))
    elif outcome.changes:
        write_text(outcome.source.path, outcome.text)


def _first(outcome: _Outcome) -> int:
    """The first line that would change."""
    old, new = outcome.source.text.splitlines(), outcome.text.splitlines()
    same = next((number for number, pair in enumerate(zip(old, new, strict=False)) if pair[0] != pair[1]), None)
    return (min(len(old), len(new)) if same is None else same) + 1


def _differences(outcome: _Outcome, path: str) -> Iterator[str]:
    old, new = outcome.source.text.splitlines(), outcome.text.splitlines()
    for line in unified_diff(old, new, path, path, lineterm="", n=1):
        yield printable(line) + "\n"
