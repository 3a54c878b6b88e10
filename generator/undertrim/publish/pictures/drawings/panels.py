"""A plain panel outline with its fasteners: how many of which kind sit at which edge, not where exactly; which edge is which, and what each mark is."""

import itertools
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Literal, TypeAlias

from undertrim.publish.pictures.drawings import lettering, svg
from undertrim.publish.pictures.drawings.lettering import PITCH, SIZE, Line
from undertrim.publish.pictures.drawings.marks import USUAL, mark, together

Edge: TypeAlias = Literal["top", "bottom", "left", "right", "corners", "centre"]

_WIDTH, _HEIGHT, _MARGIN = 160.0, 100.0, 3.0
_ACROSS = 0.72  # of the pitch
_LARGEST_PITCH = USUAL / _ACROSS
_EDGES = ("top", "bottom", "left", "right", "corners", "centre")
_STRIP, _KEY = 1.25, 1.35  # of the height of letters


@dataclass(frozen=True, slots=True)
class Mark:
    """`count` fasteners of one kind along one edge."""

    symbol: str
    edge: Edge
    count: int


@dataclass(frozen=True)
class Panel:
    """What is drawn of a part: its marks, what stands at its edges in words (the upper one at least), and what each kind of mark is."""

    marks: tuple[Mark, ...]
    edges: Mapping[Edge, str] = field(default_factory=dict)
    key: Mapping[str, str] = field(default_factory=dict)
    letters: float = SIZE
    """How high they are; larger where the picture is printed small."""

    @property
    def box(self) -> tuple[int, int]:
        """Width and height in drawing units."""
        _, _, left, right, _, end = _drawn(self._said)
        return math.ceil(_WIDTH + left + right), math.ceil(end)

    @property
    def inside(self) -> str:
        """What is drawn, to stand in a group with `looks`; in the colour of the text."""
        stroked, filled, _, _, lines, _ = _drawn(self._said)
        pen: dict[str, str | float] = {"stroke": "currentColor", "stroke_width": 1.6, "stroke_linejoin": "round", "stroke_linecap": "round"}  # fmt: skip
        drawn = [svg.element("path", d=stroked, fill="none", **pen)]
        if filled:
            drawn.append(svg.element("path", d=filled, fill_rule="evenodd"))
        drawn += [svg.text(line.x, line.y, line.words, line.anchor, upright=line.upright) for line in lines]
        return "".join(drawn)

    @property
    def looks(self) -> dict[str, str | float]:
        """The attributes of the group that it is drawn in."""
        return {"font_family": lettering.FAMILY, "font_size": self.letters, "fill": "currentColor"}

    def picture(self, title: str, size: str) -> str:
        """The whole by itself, with `title` as its accessible name."""
        return svg.drawing(title, self.box, size, svg.element("g", self.inside, **self.looks))

    @property
    def _said(self) -> "_Said":
        return self.marks, tuple(self.edges.items()), tuple(self.key.items()), self.letters


_Said: TypeAlias = tuple[tuple[Mark, ...], tuple[tuple[Edge, str], ...], tuple[tuple[str, str], ...], float]
_Made: TypeAlias = tuple[str, str, float, float, list[Line], float]


@lru_cache(maxsize=256)  # the two sides of a car have panels that are alike, and what comes off goes back
def _drawn(said: _Said) -> _Made:
    """Stroked and filled path, the strips at the left and right, the text, and the lower edge."""
    marks, edges, key, letters = said
    named, strip = dict(edges), _STRIP * letters
    left, right, top, bottom = (strip if edge in named else 0.0 for edge in ("left", "right", "top", "bottom"))
    drawn = [mark(symbol, x + left, y + top, across) for symbol, x, y, across in placed(marks)]
    lines = list(_edge_lines(named, left, top, letters))
    x, y, room = 2.0, top + _HEIGHT + bottom + 2, _WIDTH + left + right
    for symbol, words in key:
        before = _KEY * letters
        long = before + lettering.width(words) * letters / SIZE
        if x > before and x + long > room:
            x, y = 2.0, y + PITCH
        drawn.append(mark(symbol, x + letters / 2, y + PITCH / 2, letters * 0.9))
        lines.append(Line(x + before, y + PITCH - 3, words))
        x += long + 10
    stroked, filled = together(drawn, _outline(left, top))
    return stroked, filled, left, right, lines, y + PITCH + 3 if key else y - 2


def _outline(left: float, top: float) -> str:
    """A rectangle with round corners."""
    right, bottom = _WIDTH + left - 14, _HEIGHT + top - 14
    x, y = left + 14, top + 14
    turn = "a12 12 0 0 1"
    return (
        f"M{svg.number(x)} {svg.number(top + 2)} H{svg.number(right)} {turn} 12 12 V{svg.number(bottom)} {turn} -12 12"
        f" H{svg.number(x)} {turn} -12 -12 V{svg.number(y)} {turn} 12 -12 Z"
    )


def _edge_lines(named: Mapping[Edge, str], left: float, top: float, letters: float) -> list[Line]:
    """The words at the edges, each outside its own."""
    middle, half = left + _WIDTH / 2, top + _HEIGHT / 2
    places: dict[str, Line] = {
        "top": Line(middle, top - 3, named.get("top", ""), "middle"),
        "bottom": Line(middle, top + _HEIGHT + letters, named.get("bottom", ""), "middle"),
        "left": Line(left - 3, half, named.get("left", ""), "middle", upright=True),
        "right": Line(left + _WIDTH + letters, half, named.get("right", ""), "middle", upright=True),
    }
    return [places[edge] for edge in named if edge in places]


def placed(marks: Sequence[Mark]) -> list[tuple[str, float, float, float]]:
    """Every mark by its kind, its middle on the outline, and how far across it is.

    Marks spread evenly along their edge; a second kind at the same edge takes a row further in, and all marks
    shrink until none touch. Raises ValueError for an unknown edge, or a negative count.
    """
    for asked in marks:
        if asked.edge not in _EDGES or asked.count < 0:
            raise ValueError(f"cannot draw {asked.count} marks at '{asked.edge}'")
    pitch = _LARGEST_PITCH
    while not _apart(places := _places(marks, pitch), pitch):
        pitch *= 0.92
    return [(symbol, x, y, _ACROSS * pitch) for symbol, (x, y) in places]


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
