"""Quantities typed on the command line, in SI units."""

import argparse
import sys
from collections.abc import Sequence

from undertrim.commands.usage import Usage
from undertrim.derive.electrical.bounds import Refused
from undertrim.publish.encoding import indented
from undertrim.publish.terminal.electrical import Answer, answer_data, answer_text
from undertrim.record.units import UnitError, parse
from undertrim.words import Items, Message, WayOut, message, say

_TO_SI = {"length": 0.001, "share": 0.01}


def amount(text: str, kind: str, what: str) -> float:
    """A typed quantity of a kind in its SI unit; a share as a fraction of one. Raises Usage, naming `what`."""
    try:
        return parse(text, kind).value * _TO_SI.get(kind, 1)
    except UnitError as error:
        raise Usage(say(_unread(what, error))) from error


def _unread(what: str, error: UnitError) -> Message:
    if error.hint:
        return message("typed/unread-hint", what=what, why=error.message, hint=error.hint)
    return message("typed/unread", what=what, why=error.message)


def maybe(text: str | None, kind: str, what: str) -> float | None:
    """The same, or None where nothing was typed. Raises Usage."""
    return None if text is None else amount(text, kind, what)


def plain(text: str, what: str) -> float:
    """A bare number. Raises Usage."""
    try:
        return float(text)
    except ValueError as error:
        raise Usage(say(message("typed/no-number", what=what, text=text))) from error


def part_of_one(text: str, what: str) -> float:
    """A share that is as often typed as a part of one: "80 %" or 0.8. Raises Usage, also for a bare 80."""
    try:
        bare = float(text)
    except ValueError:
        return amount(text, "share", what)
    return bare if 0 < bare <= 1 else amount(text, "share", what)


def ohms(text: str, what: str) -> float:
    """A load: "4" or "4 ohm". Raises Usage."""
    bare = text.replace(".", "", 1)
    return amount(f"{text} ohm" if bare.isascii() and bare.isdigit() else text, "resistance", what)


def refused(error: Refused) -> Usage:
    """Why nothing can be computed, with the way out."""
    return Usage(say(Items((error.said, WayOut(error.said)), "semicolon")))


def add_format(parser: argparse.ArgumentParser) -> None:
    """The option that chooses between text and data."""
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")


def show(answers: dict[str, Answer], format_: str, scheme: str = "") -> None:
    """Print answers by name: as data, or one below the other."""
    shown: Sequence[Answer] = list(answers.values())
    data = {name: answer_data(answer) for name, answer in answers.items()}
    text = indented(data) + "\n" if format_ == "json" else answer_text(shown, scheme)
    sys.stdout.write(text)
