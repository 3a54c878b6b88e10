"""What a drawing from the front is made from: outlines and bolt patterns, in mm about their middle."""

import math
from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

from undertrim.publish.pictures.drawings import svg
from undertrim.publish.pictures.drawings.dimensions import Measure
from undertrim.words import Message, Value, message

Kind: TypeAlias = Literal["round", "oval", "rectangle"]
_CORNERS = 4


@dataclass(frozen=True, slots=True)
class DrawnOutline:
    """A hole, basket, flange or panel: `width` across and `height` up, the same for a round one; an oval is an ellipse."""

    kind: Kind
    width: Measure
    height: Measure

    @property
    def turned(self) -> "DrawnOutline":
        """The same turned by 90 degrees."""
        return DrawnOutline(self.kind, self.height, self.width)

    @property
    def known(self) -> bool:
        """Whether it can be drawn."""
        return self.width.mm is not None and self.height.mm is not None

    @property
    def words(self) -> Value:
        """What it measures."""
        if self.kind == "round":
            return self.width.text
        return message("drawings/by", width=self.width.text, height=self.height.text)

    def path(self, x: float, y: float, unit: float) -> str:
        """Its path about a centre at `unit` units a mm; its sizes must be known."""
        width, height = (self.width.mm or 0) * unit, (self.height.mm or 0) * unit
        left, top = x - width / 2, y - height / 2
        if self.kind == "rectangle":
            return svg.rectangle(left, top, width, height)
        start, end = f"{svg.number(left)} {svg.number(y)}", f"{svg.number(left + width)} {svg.number(y)}"
        radii = f"{svg.number(width / 2)} {svg.number(height / 2)}"
        return f"M{start} A{radii} 0 1 0 {end} A{radii} 0 1 0 {start} Z"


@dataclass(frozen=True, slots=True)
class Pattern:
    """Bolt holes: `count` on a circle of diameter `width`, else at the corners of `width` by `height`.

    `angle` is that of a hole of a circle in degrees clockwise from straight up; None where it is not recorded.
    """

    circle: bool
    count: int
    width: Measure
    height: Measure
    angle: float | None = None

    @property
    def turned(self) -> "Pattern":
        """The same turned by 90 degrees."""
        if self.circle:
            return self if self.angle is None else replace(self, angle=self.angle + 90)
        return Pattern(False, self.count, self.height, self.width)

    @property
    def words(self) -> Message:
        """What it measures."""
        if not self.circle:
            size = message("drawings/by", width=self.width.text, height=self.height.text)
            return message("drawings/bolts-at", number=self.count, size=size)
        if self.angle is None:
            return message("drawings/on-circle", number=self.count, across=self.width.text)
        return message("drawings/on-circle-turned", number=self.count, across=self.width.text, angle=self.angle)

    @property
    def known(self) -> bool:
        """Whether its sizes are."""
        return self.width.mm is not None and (self.circle or self.height.mm is not None)

    @property
    def corner(self) -> float | None:
        """The angle of the upper right corner of a rectangle, degrees clockwise from right; None where there is none."""
        if self.circle or not self.width.mm or not self.height.mm:
            return None
        return -math.degrees(math.atan2(self.height.mm, self.width.mm))

    def points(self, first: float | None = None) -> list[svg.Point]:
        """The middles of the holes that have a place, y downwards; nothing where a size is not known.

        Where the angle on a circle is not recorded the first is drawn at `first`, in degrees clockwise from right; else four are drawn
        as the corners of a square, any other count from the top on. Fewer than four on a rectangle have no place, and of more
        only the corners do.
        """
        if self.width.mm is None or not self.known:
            return []
        if self.circle:
            usual = -45.0 if self.count == _CORNERS else -90.0
            assumed = usual if first is None else first
            return svg.ring(0, 0, self.width.mm / 2, self.count, assumed if self.angle is None else self.angle - 90)
        if self.count < _CORNERS:
            return []
        x, y = self.width.mm / 2, (self.height.mm or 0) / 2
        return [(-x, -y), (x, -y), (x, y), (-x, y)]

    def left_out(self, holes: Message) -> Value:
        """What is not drawn of it, `holes` being what it is; empty where all is."""
        if not self.known:
            return message("drawings/is", what=holes, how=self.words)
        lost = self.count - len(self.points())
        return message("drawings/places-lost", what=holes, count=lost, of=self.count) if lost else ""


@dataclass(frozen=True, slots=True)
class Front:
    """The opening and, where there is any, the gear over it (`turned` by 90 degrees or not). All are centred: no offset is recorded.

    `more` are sentences to stand below, such as what goes between and is not drawn.
    """

    title: Value
    hole: DrawnOutline
    bolts: Pattern | None = None
    panel: DrawnOutline | None = None
    gear: str = ""
    basket: DrawnOutline | None = None
    flange: DrawnOutline | None = None
    gear_bolts: Pattern | None = None
    turned: bool = False
    more: tuple[Value, ...] = ()

    @property
    def posed(self) -> "Front":
        """The same with the sizes of the gear as it is held."""
        if not self.turned:
            return self
        basket, flange = (part.turned if part else None for part in (self.basket, self.flange))
        bolts = self.gear_bolts.turned if self.gear_bolts else None
        return replace(self, basket=basket, flange=flange, gear_bolts=bolts)

    @property
    def places(self) -> tuple[list[svg.Point], list[svg.Point]]:
        """The bolt holes of the car and those of the gear in mm; a circle is turned so that it meets a rectangle where it can."""
        patterns = self.bolts, self.gear_bolts
        first = next((one.corner for one in patterns if one and one.corner is not None), None)
        car, gear = (one.points(first) if one else [] for one in patterns)
        return car, gear
