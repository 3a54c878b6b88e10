"""Cuts a drawing into tiles that overlap, with crosses by which the sheets are put together again."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import cycle
from string import ascii_uppercase

from undertrim.publish.printed.paper.layout import DOTTED, FINE, Box, Line, Shape, Text

OVERLAP = 10.0  # mm
_ARM = 4.5  # mm; both arms of a cross must show on both sheets, so less than half of the overlap


@dataclass(frozen=True, slots=True)
class Tile:
    """One part of a drawing: its row and column from 1, and what it shows in the measures of the drawing."""

    row: int
    column: int
    window: Box

    @property
    def name(self) -> str:
        """Row and column as printed: r1c2."""
        return f"r{self.row}c{self.column}"


@dataclass(frozen=True, slots=True)
class Grid:
    """All tiles of a drawing, row by row, with the trim lines between them and the places of the register crosses."""

    tiles: tuple[Tile, ...]
    trims: tuple[Line, ...]
    crosses: tuple[tuple[float, float], ...]

    @property
    def marks(self) -> tuple[Shape, ...]:
        """Trim lines and crosses as shapes."""
        named = zip(self.crosses, cycle(ascii_uppercase), strict=False)
        return (*self.trims, *(part for place, letter in named for part in _cross(*place, letter)))


def split(drawing: Box, width: float, height: float) -> Grid:
    """As few tiles of a width and height in mm as hold the drawing, each overlapping the next by OVERLAP.

    What fits is centred. What does not begins at the edge of the first tile, so that no seam runs through its middle.
    """
    lefts = _starts(drawing.left, drawing.width, width)
    tops = _starts(drawing.top, drawing.height, height)
    tiles = tuple(
        Tile(row, column, Box(left, top, left + width, top + height))
        for row, top in enumerate(tops, 1)
        for column, left in enumerate(lefts, 1)
    )
    whole = Box(lefts[0], tops[0], lefts[-1] + width, tops[-1] + height)
    seams_x, seams_y = _seams(lefts), _seams(tops)
    trims = tuple(_trims(whole, seams_x, seams_y))
    crosses = tuple(_crosses(tiles, seams_x, seams_y))
    return Grid(tiles, trims, crosses)


def _starts(first: float, length: float, size: float) -> list[float]:
    """Where the tiles of one axis begin."""
    if length <= size:
        return [first - (size - length) / 2]
    count = math.ceil((length - OVERLAP) / (size - OVERLAP))
    return [first + number * (size - OVERLAP) for number in range(count)]


def _seams(starts: list[float]) -> list[float]:
    """The middles of the overlaps."""
    return [start + OVERLAP / 2 for start in starts[1:]]


def _trims(whole: Box, seams_x: list[float], seams_y: list[float]) -> Iterator[Line]:
    for x in seams_x:
        yield Line(x, whole.top, x, whole.bottom, DOTTED)
    for y in seams_y:
        yield Line(whole.left, y, whole.right, y, DOTTED)


def _crosses(tiles: tuple[Tile, ...], seams_x: list[float], seams_y: list[float]) -> Iterator[tuple[float, float]]:
    """Two on every stretch of trim line between two tiles."""
    rows = dict.fromkeys((tile.window.top, tile.window.height) for tile in tiles)
    columns = dict.fromkeys((tile.window.left, tile.window.width) for tile in tiles)
    for x in seams_x:
        yield from ((x, top + height * part) for top, height in rows for part in (0.1, 0.9))
    for y in seams_y:
        yield from ((left + width * part, y) for left, width in columns for part in (0.1, 0.9))


def _cross(x: float, y: float, letter: str) -> tuple[Shape, ...]:
    """A bare cross with a letter, so that nobody takes it for a bolt hole."""
    strokes = (Line(x - _ARM, y, x + _ARM, y, FINE), Line(x, y - _ARM, x, y + _ARM, FINE))
    return (*strokes, Text(x + 1, y - 1, (letter,), 8, 3.4, bold=True, label=True))
