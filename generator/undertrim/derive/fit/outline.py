"""Outlines of holes, baskets, flanges and bodies, and whether one goes into another."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive.fit.margins import Check, Number, compare, known, spread, typed
from undertrim.record.model import Blank, Face, Hole
from undertrim.record.units import Quantity
from undertrim.words import Value, message

_CORNERS = message("fit/corners")


@dataclass(frozen=True, slots=True)
class Outline:
    """An outline by its shape (round, oval, rectangle) and what it measures across and up."""

    shape: str
    width: Number
    height: Number

    @property
    def turned(self) -> "Outline":
        """The same turned by 90 degrees."""
        return Outline(self.shape, self.height, self.width)


def outline(what: Value, hole: Hole | None) -> Outline:
    """The outline of a hole, basket or flange; one that is not recorded has numbers that are missing."""
    if hole is None or hole.shape == "round":
        across = typed(message("fit/diameter", of=what) if hole else what, hole.diameter if hole else None)
        return Outline("round", across, across)
    return Outline(hole.shape, _width(what, hole.width), _height(what, hole.height))


def rectangle(what: Value, face: Face | None) -> Outline:
    """The outline of a receiver's body or opening."""
    width, height = (face.width, face.height) if face else (None, None)
    return Outline("rectangle", _width(what, width), _height(what, height))


def _width(what: Value, size: Quantity | Blank | None) -> Number:
    return typed(message("fit/width", of=what), size)


def _height(what: Value, size: Quantity | Blank | None) -> Number:
    return typed(message("fit/height", of=what), size)


def contain(
    name: str, title: Value, inner: Outline, outer: Outline, room: Sequence[Number] = (), mend: str = ""
) -> tuple[Check, ...]:
    """Whether `inner`, with `room` more on each axis, goes into `outer`, centred: one check for two circles, else one an axis.

    An oval is an ellipse. The corners of a rectangle must go into a circle or ellipse too.
    """
    if inner.shape == outer.shape == "round":
        return (compare(name, title, [outer.width], [inner.width, *room], mend),)
    pairs = (("across", inner.width, outer.width), ("up", inner.height, outer.height))
    more = _corners(inner, outer, room)
    return tuple(
        compare(
            f"{name}-{axis}",
            message(f"fit/check-{axis}", check=title),
            [have],
            [*_stretched(need, more, room), *room],
            mend,
        )
        for axis, need, have in pairs
    )


def _corners(inner: Outline, outer: Outline, room: Sequence[Number]) -> float:
    """By what factor a rectangle must be held larger so that its corners go into a circle or ellipse."""
    if inner.shape != "rectangle" or outer.shape == "rectangle":
        return 1
    extra = sum(number.value or 0 for number in room)
    pairs = ((inner.width.value, outer.width.value), (inner.height.value, outer.height.value))
    shares = [(need + extra) / have for need, have in pairs if need is not None and have]
    return math.hypot(*shares) / max(shares) if len(shares) == 2 and max(shares) else 1


def _stretched(need: Number, more: float, room: Sequence[Number]) -> tuple[Number, ...]:
    """A side, and what its corners add to it."""
    if need.value is None or more == 1:
        return (need,)
    extra = (need.value + sum(number.value or 0 for number in room)) * (more - 1)
    return (need, known(_CORNERS, extra, spread([need]) * (more - 1)))
