"""Text in a drawing: how much room it takes at most, and where it is broken."""

import re
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal, TypeAlias

from undertrim.publish.pictures.drawings import svg

Anchor: TypeAlias = Literal["start", "middle", "end"]

SIZE = 12.0
"""Height of all lettering, in drawing units: 12 px where a drawing of 320 units is shown 320 px wide."""
PITCH = 14.0
"""From one baseline to the next."""
# The face of the sheets comes first: Typst has no generic faces.
FAMILY = "Source Sans Pro, sans-serif"
_RISE, _FALL = 0.8 * SIZE, 0.26 * SIZE
# Shares of the size that no common screen face exceeds: Verdana and DejaVu Sans are the widest. Measured on the latter.
_NARROW = frozenset(" \u00a0!'(),-./:;I[]fijlrt|\\")
_SHARES = ((_NARROW, 0.42), (frozenset("%@MWmw"), 1.01), (frozenset('+<=>#~&_^"?$'), 0.85))
# A number stays with its unit, a whole number with its fraction.
_BOUND = re.compile(r"(?<=\d)\s+(?=(?:mm|cm|in|deg)\b|\d+/\d)")
_SPACE = re.compile("[^\\S\u00a0]+")


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle in drawing units, y downwards."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: "Box", gap: float = 0) -> bool:
        """Whether the two overlap, or stand side by side nearer than `gap`."""
        beside = self.right + gap <= other.left or other.right + gap <= self.left
        return not (beside or self.bottom <= other.top or other.bottom <= self.top)


@dataclass(frozen=True, slots=True)
class Line:
    """One line of text on its baseline; an upright one is read from the right and runs upwards."""

    x: float
    y: float
    words: str
    anchor: Anchor = "start"
    upright: bool = False

    @property
    def box(self) -> Box:
        """The room it takes at most."""
        long = width(self.words)
        before = {"start": 0.0, "middle": long / 2, "end": long}[self.anchor]
        if self.upright:
            return Box(self.x - _RISE, self.y - long + before, self.x + _FALL, self.y + before)
        return Box(self.x - before, self.y - _RISE, self.x - before + long, self.y + _FALL)


def drawn(lines: Iterable[Line]) -> str:
    """All text of a drawing."""
    texts = [svg.text(line.x, line.y, line.words, line.anchor, upright=line.upright) for line in lines if line.words]
    return svg.element("g", *texts, font_family=FAMILY, font_size=SIZE, fill="currentColor")


@lru_cache(maxsize=8192)  # the same names and numbers stand in drawing after drawing
def width(words: str) -> float:
    """The most room that a line of text takes, in drawing units."""
    return sum(map(_share, words)) * SIZE


def wrapped(words: str, room: float) -> tuple[str, ...]:
    """Text broken at its spaces, and inside a word where that is longer than `room`; at least one line."""
    lines = [""]
    for word in (piece for whole in _words(words) for piece in _pieces(whole, room)):
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and width(longer) > room:
            lines.append(word)
        else:
            lines[-1] = longer
    return tuple(line.replace("\u00a0", " ") for line in lines)


def _words(words: str) -> list[str]:
    return _SPACE.split(_BOUND.sub("\u00a0", " ".join(words.split())))


def widest(lines: Sequence[str]) -> float:
    """The room of the longest of some lines."""
    return max(map(width, lines), default=0)


def _pieces(word: str, room: float) -> list[str]:
    pieces = [""]
    for char in word:
        if pieces[-1] and width(pieces[-1] + char) > room:
            pieces.append("")
        pieces[-1] += char
    return pieces


def _share(char: str) -> float:
    for chars, share in _SHARES:
        if char in chars:
            return share
    if unicodedata.combining(char):
        return 0
    if not char.isascii():
        base = unicodedata.normalize("NFD", char)[0]
        return _share(base) + 0.05 if base.isascii() else 1.08
    return 0.8 if char.isupper() else 0.65
