"""Changes of a record as text: what slips of the keyboard, bad merges and broken transfers do to a file."""

import random
from collections.abc import Callable

ODD = (
    *"\t\0\r\x07\x1b\x7f\x85\u200b\u202e\u2028\ufeff\ufffe\ud800\u0301\u00a0\U000e0041\U0001f50a٣½²µ×–",
    *"#&*!|>%@`'\"\\{}[],:?-~<=.$",
    " #",
    ": ",
    "- ",
    "? ",
    "<<: ",
    "---\n",
    "...\n",
    "%YAML 1.2\n",
    "&a ",
    "*a",
    "!!str ",
    "\n\n",
    "<<<<<<< ours\n",
    "=======\n",
    "# undertrim: allow ",
    "# undertrim: allow file-name: because\n",
)
"""Signs that mean something to YAML, to a page, to a terminal, or nothing to anybody."""
BYTES = (b"\xff", b"\xfe\xff", b"\xc3", b"\0", b"\x80\x80", b"\xed\xa0\x80")
NUMBERS = ("0", "-1", "-0", "1e9", "1e400", "nan", "inf", "999999999999", "0.0001", "1/0", "1 1/2", "0x10", "1_000", "")
LONG = 3000

Change = Callable[[str, str, random.Random], str]


def changed(text: str, other: str, draw: random.Random, count: int) -> tuple[str, list[str]]:
    """The text after some changes, and their names; `other` is a record to take pieces from."""
    made = [draw.choice(CHANGES) for _ in range(count)]
    for change in made:
        text = change(text, other, draw)
    return text, [change.__name__ for change in made]


def without_piece(text: str, other: str, draw: random.Random) -> str:
    start = draw.randrange(len(text) + 1)
    return text[:start] + text[start + draw.randint(1, 12) :]


def odd_sign(text: str, other: str, draw: random.Random) -> str:
    return _put(text, draw.choice(ODD), draw)


def other_number(text: str, other: str, draw: random.Random) -> str:
    at = [place for place, sign in enumerate(text) if sign.isdigit()]
    if not at:
        return text
    place = draw.choice(at)
    new = draw.choice(NUMBERS) if draw.random() < 0.5 else str(draw.randrange(10))
    return text[:place] + new + text[place + 1 :]


def without_line(text: str, other: str, draw: random.Random) -> str:
    lines = text.splitlines(keepends=True)
    start = draw.randrange(len(lines) + 1)
    del lines[start : start + draw.choice((1, 1, 1, 5))]
    return "".join(lines)


def repeated_line(text: str, other: str, draw: random.Random) -> str:
    lines = text.splitlines(keepends=True) or [""]
    at = draw.randrange(len(lines))
    lines[at:at] = [lines[at]] * draw.choice((1, 1, 2, 40))
    return "".join(lines)


def changed_places(text: str, other: str, draw: random.Random) -> str:
    lines = text.splitlines(keepends=True) or [""]
    one, two = draw.randrange(len(lines)), draw.randrange(len(lines))
    lines[one], lines[two] = lines[two], lines[one]
    return "".join(lines)


def other_indent(text: str, other: str, draw: random.Random) -> str:
    lines = text.splitlines(keepends=True) or [""]
    at = draw.randrange(len(lines))
    lines[at] = " " * draw.randrange(8) + lines[at].lstrip(" ")
    return "".join(lines)


def foreign_line(text: str, other: str, draw: random.Random) -> str:
    theirs = other.splitlines(keepends=True) or [""]
    return _between_lines(text, draw.choice(theirs), draw)


def word_elsewhere(text: str, other: str, draw: random.Random) -> str:
    words, theirs = text.split(" "), (other.split() or [""])
    words[draw.randrange(len(words))] = draw.choice(theirs)
    return " ".join(words)


def long_piece(text: str, other: str, draw: random.Random) -> str:
    return _put(text, draw.choice(("a", "9", "[", "{a: ", "- ", "é", " ", "\n", '"')) * draw.randrange(LONG), draw)


def cut_short(text: str, other: str, draw: random.Random) -> str:
    return text[: draw.randrange(len(text) + 1)]


def _put(text: str, piece: str, draw: random.Random) -> str:
    at = draw.randrange(len(text) + 1)
    return text[:at] + piece + text[at:]


def _between_lines(text: str, piece: str, draw: random.Random) -> str:
    lines = text.splitlines(keepends=True)
    lines.insert(draw.randrange(len(lines) + 1), piece)
    return "".join(lines)


CHANGES: tuple[Change, ...] = (
    without_piece,
    odd_sign,
    odd_sign,
    other_number,
    other_number,
    without_line,
    repeated_line,
    changed_places,
    other_indent,
    foreign_line,
    word_elsewhere,
    word_elsewhere,
    long_piece,
    cut_short,
)
