"""What the lines and marks of a drawing mean, and how large that is."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from undertrim.publish.pictures.drawings import lettering, pens, svg
from undertrim.publish.pictures.drawings.lettering import PITCH, SIZE, Box, Line
from undertrim.publish.pictures.drawings.pens import Pen
from undertrim.publish.pictures.drawings.pieces import EDGE, Piece

Sample: TypeAlias = Pen | Literal["hatch", "ring", "cross", "strike"]
_LONG = 32.0
_MARK = 4.5


@dataclass(frozen=True, slots=True)
class Key:
    """A kind of line or mark, and what it stands for."""

    sample: Sample
    words: str


def legend(keys: Sequence[Key], top: float, right: float) -> Piece:
    """One key under the other, a sample at the left of each."""
    marks: list[str] = []
    lines: list[Line] = []
    left, at = EDGE + _LONG + 8, top
    for key in keys:
        marks.append(_sample(key.sample, at + SIZE / 2 + 1))
        broken = lettering.wrapped(key.words, right - left)
        lines += [Line(left, at + SIZE - 1 + place * PITCH, words) for place, words in enumerate(broken)]
        at += PITCH * len(broken) + 3
    return Piece(tuple(marks), tuple(lines), at)


def ring(x: float, y: float, part: str = "") -> str:
    """The mark of a bolt hole of the car."""
    return pens.stroke("outline", svg.circle(x, y, _MARK), part=part)


def cross(x: float, y: float, part: str = "", pen: Pen = "outline", arm: float = _MARK) -> str:
    """The mark of a bolt hole of the gear, or in bold that something strikes."""
    falling = pens.line(x - arm, y - arm, x + arm, y + arm)
    return pens.stroke(pen, falling, pens.line(x - arm, y + arm, x + arm, y - arm), part=part)


def strike(x: float, y: float) -> str:
    """The mark of a place where the gear strikes something."""
    return cross(x, y, "strike", "bold", 7)


def _sample(sample: Sample, y: float) -> str:
    middle = EDGE + _LONG / 2
    if sample == "hatch":
        box = Box(EDGE, y - 5, EDGE + _LONG, y + 5)
        return pens.hatch(box) + pens.stroke("thin", svg.rectangle(EDGE, y - 5, _LONG, 10))
    if sample == "ring":
        return ring(middle, y)
    if sample == "cross":
        return cross(middle, y)
    if sample == "strike":
        return cross(middle, y, "", "bold", 5)
    return pens.stroke(sample, pens.line(EDGE, y, EDGE + _LONG, y))
