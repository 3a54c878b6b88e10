"""A plain panel outline with its fasteners: how many of which kind sit at which edge, not where exactly."""

import itertools
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from undertrim.publish.pictures.drawings import svg
from undertrim.publish.pictures.drawings.marks import USUAL, mark

Edge: TypeAlias = Literal["top", "bottom", "left", "right", "corners", "centre"]

_WIDTH, _HEIGHT, _MARGIN = 160.0, 100.0, 3.0
_ACROSS = 0.72  # of the pitch
_LARGEST_PITCH = USUAL / _ACROSS
_EDGES = ("top", "bottom", "left", "right", "corners", "centre")


Draw: TypeAlias = Callable[[str, float, float, float], str]
"""Draws a mark: its kind, its centre, and how far across it is."""


@dataclass(frozen=True, slots=True)
class Mark:
    """`count` fasteners of one kind along one edge."""

    symbol: str
    edge: Edge
    count: int


def panel(title: str, marks: Sequence[Mark], size: str = "20em", draw: Draw = mark) -> str:
    """A rounded outline, 160 x 100, with every mark drawn by `draw`; `title` is its accessible name.

    Marks spread evenly along their edge; a second kind at the same edge takes a row further in, and all marks
    shrink until none touch. Raises ValueError for an unknown edge or kind, or a negative count.
    """
    for asked in marks:
        if asked.edge not in _EDGES or asked.count < 0:
            raise ValueError(f"cannot draw {asked.count} marks at '{asked.edge}'")
    pitch = _LARGEST_PITCH
    while not _apart(places := _places(marks, pitch), pitch):
        pitch *= 0.92
    drawn = [draw(symbol, x, y, _ACROSS * pitch) for symbol, (x, y) in places]
    outline = svg.element(
        "rect", x=2, y=2, width=156, height=96, rx=12, fill="none", stroke="currentColor", stroke_width=2
    )
    return svg.drawing(title, (int(_WIDTH), int(_HEIGHT)), size, outline, *drawn)


def _apart(places: Sequence[tuple[str, svg.Point]], pitch: float) -> bool:
    """True when all marks keep off each other and inside the outline."""
    points = [point for _, point in places]
    edge = _MARGIN + pitch / 2
    inside = all(edge <= x <= _WIDTH - edge and edge <= y <= _HEIGHT - edge for x, y in points)
    pairs = itertools.combinations(points, 2)
    return inside and all(math.dist(a, b) >= 0.9 * pitch for a, b in pairs)


def _places(marks: Sequence[Mark], pitch: float) -> list[tuple[str, svg.Point]]:
    """Kind and centre of every mark; the n-th kind at an edge stands in the n-th row from outside."""
    rows = dict.fromkeys(_EDGES, 0)
    placed: list[tuple[str, svg.Point]] = []
    for asked in marks:
        if asked.count:
            points = _row(asked.edge, rows[asked.edge], asked.count, pitch)
            placed += [(asked.symbol, point) for point in points]
            rows[asked.edge] += math.ceil(asked.count / 4) if asked.edge == "corners" else 1
    return placed


def _row(edge: Edge, row: int, count: int, pitch: float) -> list[svg.Point]:
    depth = _MARGIN + pitch * (0.7 + row)  # of the row below its edge
    start = depth + 0.7 * pitch  # the corners are left free
    across, down = _spread(start, _WIDTH - start, count), _spread(start, _HEIGHT - start, count)
    rows: dict[Edge, list[svg.Point]] = {
        "top": [(x, depth) for x in across],
        "bottom": [(x, _HEIGHT - depth) for x in across],
        "left": [(depth, y) for y in down],
        "right": [(_WIDTH - depth, y) for y in down],
        "corners": _corners(depth, count, pitch),
        "centre": [(x, _HEIGHT / 2 + _swing(row) * pitch) for x in _middle(count, pitch)],
    }
    return rows[edge]


def _spread(start: float, end: float, count: int) -> list[float]:
    """`count` places in the middle of equal parts of the way."""
    part = (end - start) / count
    return [start + (place + 0.5) * part for place in range(count)]


def _middle(count: int, pitch: float) -> list[float]:
    half = count * pitch * 0.7
    return _spread(_WIDTH / 2 - half, _WIDTH / 2 + half, count)


def _swing(row: int) -> int:
    """0, 1, -1, 2, -2: rows about the middle."""
    return (row + 1) // 2 * (1 if row % 2 else -1)


def _corners(depth: float, count: int, pitch: float) -> list[svg.Point]:
    """Round the four corners, diagonal by diagonal; more than four go on further in."""
    points: list[svg.Point] = []
    for place in range(count):
        inward = depth + place // 4 * pitch
        right, lower = place % 4 in (1, 2), place % 4 in (2, 3)
        points.append((_WIDTH - inward if right else inward, _HEIGHT - inward if lower else inward))
    return points
