"""What several verbs share: finding the workspace, choices of variants, progress on a terminal."""

import argparse
import sys
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from undertrim.check import layering
from undertrim.commands.details import working_in
from undertrim.commands.usage import Usage
from undertrim.record.problem import printable
from undertrim.record.root import NoWorkspace
from undertrim.record.store import Workspace
from undertrim.words import Value, WayOut, message, say

if TYPE_CHECKING:
    from undertrim.publish.build.building import Built


def add_workspace(parser: argparse.ArgumentParser) -> None:
    """The option that names the workspace."""
    parser.add_argument(
        "--in",
        dest="root",
        type=Path,
        default=None,
        metavar="DIR",
        help="the folder that holds records/ (default: here or above)",
    )


def workspace(options: argparse.Namespace) -> Workspace:
    """The workspace the command works in. Raises NoWorkspace."""
    start = options.root or next(iter(getattr(options, "paths", None) or ()), None) or Path.cwd()
    if not start.exists():
        raise Usage(message("files/does-not-exist", name=str(start)))
    found = _standing_on(start) if options.root is None else None
    return working_in(found or Workspace.holding(start if start.is_dir() else start.parent, layering.layered))


def _standing_on(start: Path) -> Workspace | None:
    """The workspace around here, where what is named is in a shared collection that it lies on: it is read there, and not written."""
    try:
        here = Workspace.holding(Path.cwd(), layering.layered)
    except NoWorkspace:
        return None
    return here if any(start.resolve().is_relative_to(one.records) for one in here.shared) else None


def add_paths(parser: argparse.ArgumentParser) -> None:
    """The records that a command is for."""
    parser.add_argument("paths", nargs="*", type=Path, metavar="PATH", help="record files or folders")


def existing(options: argparse.Namespace) -> Iterator[Path]:
    """The paths that were typed. Raises Usage at one that is not there."""
    for path in options.paths:
        if not path.exists():
            raise Usage(message("files/does-not-exist", name=printable(str(path))))
        yield path


def port(text: str) -> int:
    """A port number, as an argument's type."""
    number = int(text) if text.isascii() and text.isdigit() and len(text) < 6 else 0
    if not 1 <= number <= 65535:
        raise argparse.ArgumentTypeError(say(message("commands/port", port=printable(text))))
    return number


def say_failed(made: "Built") -> None:
    """Name on standard error what a build could not publish."""
    for item in made.failed:
        code = "commands/failed-kept" if item.address in made.kept else "commands/failed"
        said = say(message(code, path=str(item.path), fault=item.said))
        print(f"undertrim: {printable(said)}\n    {say(WayOut(item.said))}", file=sys.stderr)
        sys.stderr.write(item.trace)
    if made.failed:
        print(say(message("commands/not-anew", count=len(made.failed))), file=sys.stderr)


def progress(what: Value) -> Callable[[int, int], None] | None:
    """Shows `what` with a count on a terminal; None in a pipe."""
    if not sys.stderr.isatty():
        return None

    def show(done: int, total: int) -> None:
        end = "\n" if done == total else ""
        said = say(message("commands/progress", what=what, done=done, total=total))
        print(f"\r{said}", end=end, file=sys.stderr, flush=True)

    return show


def chosen(pairs: Sequence[str]) -> dict[str, str]:
    """The choices in `NAME=CHOICE` pairs, by variant. Raises Usage for what is no pair, or chosen twice."""
    found: dict[str, str] = {}
    for pair in pairs:
        name, sign, choice = pair.partition("=")
        if not sign:
            raise Usage(message("commands/no-variant", pair=pair))
        if found.setdefault(name, choice) != choice:
            raise Usage(message("commands/chosen-twice", name=name, first=found[name], second=choice))
    return found
