"""Lines of a terminal: one width for all answers, and the sentence that closes them."""

import textwrap
from collections.abc import Sequence

from undertrim.words import Value, message, say

WIDTH = 100
"""Columns of an answer."""


def wrapped(value: Value, first: str = "", rest: str = "") -> list[str]:
    """What is said, in lines of the width; `first` stands before the first of them and `rest` before all others. A long id stays whole."""
    text = say(value)
    if len(first) + len(text) <= WIDTH and text.isprintable() and text == text.strip() != "":
        return [first + text]  # so it is with nearly all, and it takes a hundredth of the time
    return textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=rest, break_long_words=False, break_on_hyphens=False
    )


def closing() -> str:
    """Who comes before us, as it stands below whatever is handed to someone who works on a car."""
    return f"{say(message('safety/maker-first'))}."


def columns(rows: Sequence[Sequence[str]]) -> list[str]:
    """Rows with their cells set out in columns."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows]
