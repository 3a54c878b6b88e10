"""Outlines and bolt patterns as plain numbers in mm, and what cannot be true of them at any angle.

A circle of bolts whose angle is not recorded is only taken to be wrong where no angle would do; with its angle every bolt has its place.
"""

import math
from dataclasses import dataclass

from undertrim.record.model import Bolts, Face, Hole
from undertrim.record.units import Quantity
from undertrim.words import Message, message

_LEAST = 1e-9  # mm; a size of nothing is nonsense, which another rule says


@dataclass(frozen=True, slots=True)
class Side:
    """One measurement across or up, or a diameter for both: its value in mm, its name, and the text as typed."""

    name: str
    value: float
    text: str

    @property
    def called(self) -> Message:
        """Its name in a message."""
        return message(f"outlines/{self.name}")


@dataclass(frozen=True, slots=True)
class KnownOutline:
    """A round or oval outline (an ellipse), or one with corners; centred."""

    across: Side
    up: Side
    corners: bool

    @property
    def said(self) -> Message:
        """As a message says it: '146 mm' or '152 mm' by '221 mm'."""
        return _one(self.across) if self.across is self.up else _two(self.across, self.up)


def _one(side: Side) -> Message:
    return message("outlines/one", across=side.text)


def _two(across: Side, up: Side) -> Message:
    return message("outlines/two", across=across.text, up=up.text)


def of_hole(hole: Hole | None) -> KnownOutline | None:
    """The outline of a hole, basket, rim or flange; None where some of it is not recorded."""
    if hole is None:
        return None
    if hole.shape == "round":
        across = _side("diameter", hole.diameter)
        return KnownOutline(across, across, corners=False) if across else None
    return _pair(hole.width, hole.height, corners=hole.shape == "rectangle")


def of_face(face: Face | None) -> KnownOutline | None:
    """The outline of a panel or a receiver; None where some of it is not recorded."""
    return _pair(face.width, face.height, corners=True) if face else None


def _pair(width: object, height: object, *, corners: bool) -> KnownOutline | None:
    across, up = _side("width", width), _side("height", height)
    return KnownOutline(across, up, corners) if across and up else None


def _side(name: str, typed: object) -> Side | None:
    return Side(name, typed.value, typed.text) if isinstance(typed, Quantity) else None


@dataclass(frozen=True, slots=True)
class Pattern:
    """Where bolts are: at a radius in mm, or at the corners of a rectangle, `across` and `up` from its middle.

    `places` are those of the bolts of a circle whose angle is recorded, across and up.
    """

    radius: float
    across: float
    up: float
    said: Message
    places: tuple[tuple[float, float], ...] = ()


def of_bolts(bolts: Bolts | None) -> Pattern | None:
    """The pattern of some bolts; None where it is not recorded in full."""
    if bolts is None:
        return None
    if bolts.pattern == "circle":
        circle = _side("diameter", bolts.diameter)
        return _circle(bolts, circle) if circle else None
    box = _pair(bolts.width, bolts.height, corners=True)
    if box is None:
        return None
    across, up = box.across.value / 2, box.up.value / 2
    return Pattern(math.hypot(across, up), across, up, box.said)


def _circle(bolts: Bolts, circle: Side) -> Pattern:
    radius = circle.value / 2
    return Pattern(radius, 0, 0, _one(circle), _places(bolts, radius))


def _places(bolts: Bolts, radius: float) -> tuple[tuple[float, float], ...]:
    if not isinstance(bolts.angle, Quantity):
        return ()
    turns = (math.radians(bolts.angle.value + 360 * number / bolts.count) for number in range(bolts.count))
    return tuple((radius * math.sin(turn), radius * math.cos(turn)) for turn in turns)


def too_wide(inner: KnownOutline, outer: KnownOutline) -> tuple[Side, Side] | None:
    """The first axis on which `inner` is not smaller than `outer`; None where it goes in on both."""
    pairs = ((inner.across, outer.across), (inner.up, outer.up))
    return next(((one, other) for one, other in pairs if one.value >= other.value), None)


def inside(bolts: Pattern, outline: KnownOutline) -> bool:
    """Whether a bolt has its middle in the outline or on its edge; of a circle without an angle every bolt at any angle must."""
    half_across, half_up = outline.across.value / 2, outline.up.value / 2
    if bolts.places:
        return min(_reach(place, half_across, half_up, corners=outline.corners) for place in bolts.places) <= 1
    if not bolts.across:
        return bolts.radius <= min(half_across, half_up)
    return _reach((bolts.across, bolts.up), half_across, half_up, corners=outline.corners) <= 1


def outside(bolts: Pattern, outline: KnownOutline) -> bool:
    """Whether a bolt has its middle on the edge of the outline or beyond; of a circle without an angle every bolt at any angle must."""
    half_across, half_up = outline.across.value / 2, outline.up.value / 2
    if bolts.places:
        return max(_reach(place, half_across, half_up, corners=outline.corners) for place in bolts.places) >= 1
    if not bolts.across:
        farthest = math.hypot(half_across, half_up) if outline.corners else max(half_across, half_up)
        return bolts.radius >= farthest
    return _reach((bolts.across, bolts.up), half_across, half_up, corners=outline.corners) >= 1


def _reach(place: tuple[float, float], half_across: float, half_up: float, *, corners: bool) -> float:
    """How far out a place is: 1 is on the edge of the outline."""
    x, y = abs(place[0]) / max(half_across, _LEAST), abs(place[1]) / max(half_up, _LEAST)
    return max(x, y) if corners else math.hypot(x, y)
