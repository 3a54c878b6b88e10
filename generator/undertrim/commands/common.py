"""What several verbs share: usage errors, finding the workspace, progress on a terminal."""

import argparse
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from undertrim.check.shelf import stock
from undertrim.commands.details import see_check, working_in
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.nearness import nearest
from undertrim.record.problem import printable
from undertrim.record.store import Workspace
from undertrim.words import Value, message, say

if TYPE_CHECKING:
    from undertrim.publish.building import Built


class Usage(Exception):  # noqa: N818 - it names what happened
    """The command was called in a way it cannot follow; the text says what to do instead."""


def helped(code: str, /, **values: Value) -> str:
    """A text of the catalogue for the help of an argument, where a share of a hundred has a meaning of its own."""
    return say(message(code, **values)).replace("%", "%%")


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
        raise Usage(f"'{start}' does not exist")
    return working_in(Workspace.around(start if start.is_dir() else start.parent))


def port(text: str) -> int:
    """A port number, as an argument's type."""
    number = int(text) if text.isascii() and text.isdigit() and len(text) < 6 else 0
    if not 1 <= number <= 65535:
        raise argparse.ArgumentTypeError(f"'{printable(text)}' is no port: give a number from 1 to 65535")
    return number


def say_failed(made: "Built") -> None:
    """Name on standard error what a build could not publish."""
    for item in made.failed:
        stays = "its last good files stay" if item.address in made.kept else "it is not in the site"
        print(
            f"undertrim: {printable(str(item.path))}: {printable(item.text)}: {stays}\n    {item.hint}", file=sys.stderr
        )
        sys.stderr.write(item.trace)
    if made.failed:
        number = len(made.failed)
        print(f"{number} vehicle{'' if number == 1 else 's'} could not be published anew", file=sys.stderr)


def progress(what: str) -> Callable[[int, int], None] | None:
    """Shows `what` with a count on a terminal; None in a pipe."""
    if not sys.stderr.isatty():
        return None

    def show(done: int, total: int) -> None:
        end = "\n" if done == total else ""
        print(f"\r{what} {done}/{total}", end=end, file=sys.stderr, flush=True)

    return show


def chosen(pairs: Sequence[str]) -> dict[str, str]:
    """The choices in `NAME=CHOICE` pairs, by variant. Raises Usage for what is no pair, or chosen twice."""
    found: dict[str, str] = {}
    for pair in pairs:
        name, sign, choice = pair.partition("=")
        if not sign:
            raise Usage(f"'{pair}' is no variant: write NAME=CHOICE, for example radio=map")
        if found.setdefault(name, choice) != choice:
            raise Usage(f"variant '{name}' is chosen twice: '{found[name]}' and '{choice}'")
    return found


def vehicle_and_stock(place: Workspace, name: str) -> Vehicle | None:
    """A vehicle with the stock of its workspace; None, and why on standard error, where its record cannot be relied on. Raises Usage."""
    try:
        entry = place.load(vehicle_file(place, name))
    except NotFound as error:
        raise Usage(str(error)) from error
    if not isinstance(entry.record, VehicleRecord) or entry.problems:
        wrong = f"has values that no answer can rest on: {see_check()}"
        print(f"undertrim: {entry.source.path} {wrong}", file=sys.stderr)
        return None
    return Vehicle(entry.record, entry.address, stock(place), clearances())


def no_gear(shelf: Stock, name: str, known: Sequence[str], what: str) -> str:
    """Why a piece of gear cannot be had, and the way out; `known` are the ids of those that could be meant, `what` what they are."""
    if shelf.refused(name):
        return f"the record of '{name}' has problems and is not offered: {see_check()}"
    return f"no gear '{name}' in stock; {nearest(name, list(known), what)}"
