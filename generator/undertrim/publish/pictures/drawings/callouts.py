"""Names above a picture, each with a line down to what it names."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.publish.pictures.drawings import lettering, pens, svg
from undertrim.publish.pictures.drawings.dimensions import broken
from undertrim.publish.pictures.drawings.lettering import PITCH, SIZE, Box, Line
from undertrim.publish.pictures.drawings.pieces import Piece

_GAP = 6.0
_ROW = PITCH + 2


@dataclass(frozen=True, slots=True)
class Name:
    """A name and the point it means; `y` counts down from the upper edge of the picture."""

    words: str
    x: float
    y: float


def above(names: Sequence[Name], top: float, left: float, right: float) -> Piece:
    """The names in as few rows as they need; `end` is the upper edge of the picture below them."""
    rows = _rows(_shortened(names, right - left), left, right)
    deep = max((row for _, row, _ in rows), default=-1) + 1
    end = top + deep * _ROW + (4 if deep else 0)
    lines = tuple(Line(box.left, end - 4 - row * _ROW - 0.26 * SIZE, name.words) for name, row, box in rows)
    boxes = [line.box for line in lines]
    leaders = [part for line, (name, _, _) in zip(lines, rows, strict=True) for part in _leader(name, line, end, boxes)]
    return Piece(tuple(leaders), lines, end)


def _shortened(names: Sequence[Name], room: float) -> Iterator[Name]:
    """Names that fit into one line: what is longer ends in three dots; the whole stands in the description."""
    for name in names:
        words, long = " ".join(name.words.split()), name.words
        while lettering.width(words) > room:
            long = long[:-1]
            words = f"{long.rstrip()}..."
        if words:
            yield Name(words, name.x, name.y)


def _rows(names: Iterator[Name], left: float, right: float) -> list[tuple[Name, int, Box]]:
    """The place of each: low, and over as few lines of other names as can be."""
    every = sorted(names, key=lambda name: -name.x)
    taken: list[tuple[Name, int, Box]] = []
    for name in every:
        places = [(row, box) for row in range(len(every)) for box in _boxes(name, row, left, right)]
        free = [(row, box) for row, box in places if not any(box.meets(other, _GAP) for _, _, other in taken)]
        row, box = min(free, key=lambda place: (_crossed(name, place[0], place[1], every, taken), place[0]))
        taken.append((name, row, box))
    used = sorted({row for _, row, _ in taken})
    return [(name, used.index(row), box) for name, row, box in taken]


def _boxes(name: Name, row: int, left: float, right: float) -> Iterator[Box]:
    """Beginning, ending and centred at its point, in a row; as far as it stays inside."""
    long = lettering.width(name.words)
    for start in (name.x - 4, name.x - long + 4, name.x - long / 2):
        start = max(left, min(right - long, start))
        yield Box(start, -(row + 1) * _ROW, start + long, -row * _ROW - 2)


def _crossed(name: Name, row: int, box: Box, every: Sequence[Name], taken: Sequence[tuple[Name, int, Box]]) -> int:
    """How many lines to names above it stands on, and how many names below its own line would run through.

    Of names that have no place yet, it is taken that they come above.
    """
    lower = [other for other, at, _ in taken if at < row]
    stood_on = sum(box.left < other.x < box.right for other in every if other is not name and other not in lower)
    return stood_on + sum(other.left < name.x < other.right for _, at, other in taken if at < row)


def _leader(name: Name, line: Line, end: float, boxes: Sequence[Box]) -> Iterator[str]:
    """From under the name to the point, ending in a dot; broken where another name stands."""
    point = end + name.y
    parts = [
        pens.line(name.x, start, name.x, stop) for start, stop in broken(name.x, line.box.bottom + 1, point, boxes)
    ]
    yield pens.stroke("thin", *parts, part="leader") if parts else ""
    yield svg.solid(svg.circle(name.x, point, 1.8))
