"""The gear of the stock that comes nearest to a piece that does not fit."""

import math
from collections.abc import Callable, Sequence

from undertrim.derive.fit.margins import Number
from undertrim.derive.fit.stock import Gear
from undertrim.derive.fit.verdict import Fit

Size = tuple[Number, Number, Number]
"""Width, height and depth, in mm."""


def nearest(gear: Gear, fits: Sequence[Fit], shelf: Sequence[Gear], size: Callable[[Gear], Size]) -> str:
    """The id of the piece of gear that fits and is least unlike `gear` in its sizes; empty where none fits."""
    good = {fit.gear for fit in fits if fit.kind in ("fits", "fits-with") and not fit.to_get}
    near = [(distance(size(gear), size(item)), item.id) for item in shelf if item.id in good and item.id != gear.id]
    return min(near, default=(0.0, ""))[1]


def distance(one: Size, other: Size) -> float:
    """How unlike two sizes are in mm: the differences of width, height and depth, as a length in space."""
    pairs = zip(one, other, strict=True)
    return math.hypot(*((a.value or 0) - (b.value or 0) for a, b in pairs))
