"""What a sketch of measuring is made of, and how it is put together: names above, the picture, dimensions beside and below, what to heed."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.publish.pictures.drawings import callouts, dimensions, svg
from undertrim.publish.pictures.drawings.callouts import Name
from undertrim.publish.pictures.drawings.dimensions import Span
from undertrim.publish.pictures.drawings.lettering import Line
from undertrim.publish.pictures.drawings.pieces import EDGE, Piece, Sheet
from undertrim.words import message, say

ACROSS = 288.0
"""The width of a picture in its own units; it is made larger or smaller to its drawing, its lettering is not."""


@dataclass(frozen=True, slots=True)
class Meant:
    """A name, by its code, and the point of the picture that it means."""

    code: str
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Length:
    """A dimension, by its code: between two places along, its extension lines beginning at `start_from` and `end_from` across."""

    code: str
    start: float
    end: float
    start_from: float
    end_from: float


@dataclass(frozen=True, slots=True)
class Scene:
    """One sketch: `name` is the code of its title and of what to heed, `high` the height of the picture in its units.

    `letters` are short texts in the picture, centred at their points.
    """

    name: str
    high: float
    marks: tuple[str, ...]
    names: tuple[Meant, ...] = ()
    level: tuple[Length, ...] = ()
    upright: tuple[Length, ...] = ()
    letters: tuple[tuple[str, float, float], ...] = ()


def drawn(scene: Scene, width: int, size: str) -> str:
    """The sketch as SVG, `width` drawing units wide."""
    sheet = Sheet(_said(scene.name), width, size)
    column = dimensions.deep([_said(one.code) for one in scene.upright], _COLUMN) + 4 if scene.upright else 0
    unit = (sheet.room - column) / ACROSS
    named = [Name(_said(one.code), EDGE + one.x * unit, one.y * unit) for one in scene.names]
    names = callouts.above(named, EDGE, EDGE, sheet.right)
    top = names.end
    lower = top + max(scene.high * unit, _COLUMN if scene.upright else 0)
    picture = svg.element("g", *scene.marks, transform=f"translate({EDGE} {svg.number(top)}) scale({unit:.4f})")
    beside = dimensions.beside(_spans(scene.upright, unit, top, EDGE), EDGE + ACROSS * unit, top, lower)
    below = dimensions.below(_spans(scene.level, unit, EDGE, top), lower + 2, EDGE, sheet.right)
    heed = sheet.paragraph([_said(f"{scene.name}-heed")], below.end + 4)
    letters = tuple(Line(EDGE + x * unit, top + y * unit, words, "middle") for words, x, y in scene.letters)
    pieces = [names, Piece((picture,), letters, lower), beside, below, heed]
    lengths = (*scene.level, *scene.upright)
    codes = (*(one.code for one in scene.names), *(one.code for one in lengths), f"{scene.name}-heed")
    return sheet.finished(pieces, map(_said, codes))


_COLUMN = 110.0  # what is written upwards finds this room


def _spans(lengths: Sequence[Length], unit: float, along: float, across: float) -> list[Span]:
    return [
        Span(
            one.code,
            _said(one.code),
            along + one.start * unit,
            along + one.end * unit,
            across + one.start_from * unit,
            across + one.end_from * unit,
        )
        for one in lengths
    ]


def _said(code: str) -> str:
    return say(message(code if "/" in code else f"sketches/{code}"))
