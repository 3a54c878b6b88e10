"""Pieces of a drawing, one under the other, and the whole that they make."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from undertrim.publish.pictures.drawings import lettering, svg
from undertrim.publish.pictures.drawings.lettering import PITCH, SIZE, Line

EDGE = 6.0
"""Kept free at both sides of a drawing."""
LEAST_WIDTH = 240


@dataclass(frozen=True, slots=True)
class Piece:
    """Ready markup and text with where it ends: the lower edge, or the right one of what stands beside a picture."""

    marks: tuple[str, ...] = ()
    lines: tuple[Line, ...] = ()
    end: float = 0


@dataclass(frozen=True, slots=True)
class Sheet:
    """What a drawing is made on: its accessible name, width in drawing units (lettering is 12 high) and size on the page.

    Raises ValueError for less than 240 units, in which a dimension finds no room.
    """

    title: str
    width: int
    size: str

    def __post_init__(self) -> None:
        if self.width < LEAST_WIDTH:
            raise ValueError(f"'{self.width}' is too narrow for a drawing: {LEAST_WIDTH} at least")

    @property
    def right(self) -> float:
        """How far right text may reach."""
        return self.width - EDGE

    @property
    def room(self) -> float:
        """Width between the edges."""
        return self.width - 2 * EDGE

    def finished(self, pieces: Sequence[Piece], words: Iterable[str]) -> str:
        """The drawing; `words` is what it says to those who do not see it."""
        said = svg.description(" ".join(_sentence(part) for part in words if part.strip()))
        marks = [mark for piece in pieces for mark in piece.marks if mark]
        text = lettering.drawn(line for piece in pieces for line in piece.lines)
        box = self.width, math.ceil(pieces[-1].end + EDGE)
        return svg.drawing(self.title, box, self.size, said, *marks, text)

    def paragraph(self, words: Sequence[str], top: float) -> Piece:
        """Sentences under each other, broken to the width; empty ones are passed over."""
        broken = [line for part in words if part for line in lettering.wrapped(part, self.room)]
        lines = [Line(EDGE, top + SIZE + place * PITCH, text) for place, text in enumerate(broken)]
        return Piece((), tuple(lines), top + PITCH * len(lines) + (4 if lines else 0))


def _sentence(words: str) -> str:
    return words if words.endswith((".", ":")) else f"{words}."
