"""The signs in a sketch of a car, told apart by shape: a battery, a star for what may fire, a flash for high voltage. Path texts about a point."""

import math

from undertrim.publish.pictures.drawings import svg
from undertrim.publish.pictures.drawings.car import Box, Shape, point

_STAR = (7.0, 3.4)
_POINTS = 8


def battery(x: float, y: float) -> str:
    """A case with two posts, a minus and a plus."""
    posts = f"M{point(x - 7, y - 6)} v-3 h4 v3 M{point(x + 3, y - 6)} v-3 h4 v3"
    return f"{svg.rectangle(x - 10, y - 6, 20, 12)} {posts} M{point(x - 7, y)} h4 M{point(x + 3, y)} h4 m-2 -2 v4"


def star(x: float, y: float) -> str:
    """A burst: here something may fire."""
    steps = range(2 * _POINTS)
    turns = ((_STAR[step % 2], math.pi * step / _POINTS) for step in steps)
    return svg.polygon([(x + far * math.sin(turn), y - far * math.cos(turn)) for far, turn in turns])


def flash(x: float, y: float) -> str:
    """A flash for high voltage."""
    return f"M{point(x + 2, y - 8)} l-7 9 h4 l-2 7 l7 -9 h-4 Z"


def stars(shape: Shape, area: str) -> tuple[svg.Point, ...]:
    """Where the stars of an area stand: one in each part of it, off the middle, where the marks are."""
    boxes = _narrow(shape, area) or tuple(box for side in ("left", "right") for box in shape.boxes(area, side))
    return tuple(_inward(box, _within(box, 0.76 if box[3] - box[1] > _LONG else 0.3)) for box in boxes)


def flashes(shape: Shape, area: str) -> tuple[svg.Point, ...]:
    """Where the flash of an area stands."""
    boxes = shape.boxes(area)
    return tuple((x + (_ASIDE if box[2] - box[0] > _WIDE else 0), y) for box in boxes for x, y in (_within(box, 0.32),))


def posts(shape: Shape, area: str, side: str) -> tuple[svg.Point, ...]:
    """Where the battery of an area stands."""
    boxes = shape.boxes(area, side)
    return tuple((x - (0 if side else _ASIDE), y) for x, y in (_within(box, 0.75) for box in boxes[:1]))


_LONG, _WIDE, _THIN, _ASIDE = 44.0, 40.0, 16.0, 16.0


def _inward(box: Box, at: svg.Point) -> svg.Point:
    """Beside what is thin, as a door, on the side of the cabin."""
    x, y = at
    thin = box[2] - box[0] < _THIN and abs(x) > _THIN
    return (x - math.copysign(_ASIDE, x), y) if thin else at


def _narrow(shape: Shape, area: str) -> tuple[Box, ...]:
    """An area in the middle of the car, which has no sides."""
    return tuple(box for box in shape.boxes(area) if box[2] - box[0] < _WIDE and box[0] < 0 < box[2])


def _within(box: Box, share: float) -> svg.Point:
    left, top, right, bottom = box
    return (left + right) / 2, top + share * (bottom - top)
