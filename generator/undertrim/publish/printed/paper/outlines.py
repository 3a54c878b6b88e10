"""Holes, faces and bolt patterns of a record as shapes and points in mm, about the middle of the opening."""

import math
from collections.abc import Iterator

from undertrim.publish.printed.paper.layout import FINE, Circle, Ellipse, Line, Pen, Rectangle, Shape
from undertrim.record.model import Blank, Bolts, Face, Hole
from undertrim.record.units import Quantity
from undertrim.words import Message, message

Point = tuple[float, float]
_CORNERS = 4
_QUARTER = 45.0  # degrees; common practice, no source: four holes mostly sit like the corners of a square


def outline(item: Hole | Face | None, pen: Pen) -> Shape | None:
    """An outline in true size about (0, 0); None where it, or one of its measures, is not recorded."""
    if isinstance(item, Hole) and item.shape == "round":
        across = known(item.diameter)
        return None if across is None else Circle(0, 0, across / 2, pen)
    width, height = (known(item.width), known(item.height)) if item else (None, None)
    if width is None or height is None:
        return None
    shape = Ellipse if isinstance(item, Hole) and item.shape == "oval" else Rectangle
    return shape(0, 0, width, height, pen)


def known(value: Quantity | Blank | None) -> float | None:
    """A length in mm, or an angle in degrees; None where it is not known."""
    return value.value if isinstance(value, Quantity) else None


def ring(bolts: Bolts, pen: Pen) -> Shape | None:
    """The circle or rectangle that runs through the middles of the holes."""
    as_hole = Hole("round" if bolts.pattern == "circle" else "rectangle", bolts.diameter, bolts.width, bolts.height)
    return outline(as_hole, pen)


def centres(bolts: Bolts) -> tuple[Point, ...]:
    """The middles of the holes about (0, 0): evenly round a circle, or at the corners of a rectangle.

    Where a record does not say at which angle a hole of a circle is, the first is at the top, and four sit at 45 degrees: who
    draws them must say that it is assumed. Fewer than four on a rectangle have no places; of more, only the corners do.
    """
    if bolts.pattern == "circle":
        return tuple(_round(known(bolts.diameter), bolts.count, known(bolts.angle)))
    width, height = known(bolts.width), known(bolts.height)
    if width is None or height is None or bolts.count < _CORNERS:
        return ()
    return tuple((x * width / 2, y * height / 2) for x, y in ((-1, -1), (1, -1), (1, 1), (-1, 1)))


def _round(across: float | None, count: int, angle: float | None) -> Iterator[Point]:
    usual = _QUARTER if count == _CORNERS else 0.0
    first = usual if angle is None else angle
    for number in range(count if across else 0):
        turn = math.radians(first + 360 * number / count)
        yield (across or 0) / 2 * math.sin(turn), -(across or 0) / 2 * math.cos(turn)


def assumed(bolts: Bolts, holes: Message) -> tuple[Message, ...]:
    """What of the places of some bolt holes was assumed or is not drawn, in sentences; none for nothing."""
    if bolts.pattern == "circle":
        return () if isinstance(bolts.angle, Quantity) else _turned(bolts, holes)
    if bolts.count < _CORNERS:
        return message("paper/not-drawn", holes=holes), message("paper/corners-unknown", count=bolts.count)
    if bolts.count > _CORNERS:
        return message("paper/corners-only", holes=holes), message("paper/others-unknown", count=bolts.count - _CORNERS)
    return ()


def _turned(bolts: Bolts, holes: Message) -> tuple[Message, ...]:
    """The angle of a circle as `centres` takes it."""
    where = message("paper/at-45" if bolts.count == _CORNERS else "paper/first-at-top")
    return message("paper/angle-assumed", holes=holes, where=where), message("paper/turn-sheet")


def upright(x: float, y: float, scale: float = 1) -> tuple[Shape, ...]:
    """A cross in a small circle: a hole of the car."""
    arm = 4 * scale
    strokes = (Line(x - arm, y, x + arm, y, FINE), Line(x, y - arm, x, y + arm, FINE))
    return (Circle(x, y, 2 * scale, FINE), *strokes)


def diagonal(x: float, y: float, scale: float = 1) -> tuple[Shape, ...]:
    """A diagonal cross in a square: a hole of the gear."""
    arm = 3 * scale
    strokes = (Line(x - arm, y - arm, x + arm, y + arm, FINE), Line(x - arm, y + arm, x + arm, y - arm, FINE))
    return (Rectangle(x, y, 2 * arm, 2 * arm, FINE), *strokes)


def triangle(x: float, y: float, scale: float = 1) -> tuple[Shape, ...]:
    """A triangle about a point: a hole of the gear towards the car."""
    half, low, peak = 2 * math.sqrt(3) * scale, y + 2 * scale, y - 4 * scale
    base = Line(x - half, low, x + half, low, FINE)
    sides = (Line(x - half, low, x, peak, FINE), Line(x + half, low, x, peak, FINE))
    return (base, *sides, Circle(x, y, 0.3 * scale, FINE))
