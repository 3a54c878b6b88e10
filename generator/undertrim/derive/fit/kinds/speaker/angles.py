"""Where the holes of two bolt patterns are round the middle, for gear that cannot be turned at will: an oval or square unit, or plate.

Angles are in degrees from straight up, clockwise as seen from the cabin.
"""

import math
from collections.abc import Iterator

from undertrim.derive.fit.margins import Check, Number, compare, known, typed
from undertrim.record.model import Bolts
from undertrim.record.units import Quantity
from undertrim.words import Value, message

_QUARTER, _TURN = 90.0, 360.0


def check(name: str, title: Value, gear: Bolts, car: Bolts, play: Number, *, turned: bool) -> Iterator[Check]:
    """That the holes stand at the same angles within the `play` in mm along the circle; `turned` if the gear is turned by 90 degrees.

    The counts must have been found to go together. Two rectangles have no angle of their own: nothing then.
    """
    rings = [(whose, one) for whose, one in (("gear", gear), ("car", car)) if one.pattern == "circle"]
    firsts = [typed(message(f"fit-speaker/angle-{whose}"), one.angle) for whose, one in rings]
    across = [typed(message(f"fit-speaker/circle-{whose}"), one.diameter) for whose, one in rings]
    title = message("fit-speaker/angle", check=title)
    if any(number.value is None for number in (*firsts, *across)):
        yield compare(f"{name}-angle", title, [play], [*firsts, *across], "adapter")
    elif rings:
        off, radius = _off(gear, car, _QUARTER if turned else 0.0), (across[0].value or 0) / 2
        step = radius * math.radians(math.hypot(*(first.step for first in firsts)))
        apart = known(message("fit-speaker/holes-apart", degrees=round(off, 1)), radius * math.radians(off), step)
        yield compare(f"{name}-angle", title, [play], [apart], "adapter")


def _off(gear: Bolts, car: Bolts, turn: float) -> float:
    """By how many degrees the hole that misses most misses, of the pattern whose holes must all find one in the other."""
    ours, theirs = [angle + turn for angle in _angles(gear)], _angles(car)
    if car.pattern == "rectangle" or (gear.pattern == "circle" and gear.count > car.count):
        ours, theirs = theirs, ours
    pitch = _TURN / len(theirs)
    return max(abs((angle - theirs[0] + pitch / 2) % pitch - pitch / 2) for angle in ours)


def _angles(bolts: Bolts) -> list[float]:
    """The angles of all holes of a circle, or of the four corners of a rectangle."""
    if bolts.pattern == "circle":
        first = bolts.angle.value if isinstance(bolts.angle, Quantity) else 0.0
        return [first + _TURN * number / bolts.count for number in range(bolts.count)]
    width, height = (side.value if isinstance(side, Quantity) else 0.0 for side in (bolts.width, bolts.height))
    corner = math.degrees(math.atan2(width, height))
    return [corner, 2 * _QUARTER - corner, 2 * _QUARTER + corner, _TURN - corner]
