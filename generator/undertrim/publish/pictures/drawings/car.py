"""Where the areas of a car are, seen from above with its front at the top: boxes in drawing units, for a sketch that is not to scale.

Left is left as seen from the driver's seat facing forward. x counts from the middle of the car to the right, y from its front to the rear.
"""

from dataclasses import dataclass
from typing import TypeAlias

from undertrim.publish.pictures.drawings import svg
from undertrim.publish.pictures.drawings.car_bodies import BODIES, PLAIN, Stations

Box: TypeAlias = tuple[float, float, float, float]
"""Left, top, right and bottom."""

SKIN = 10.0
"""How thick a door or a side is drawn."""


@dataclass(frozen=True, slots=True)
class Shape:
    """A body with its doors; one that is not known is drawn as a hatchback."""

    body: str
    four_doors: bool

    @property
    def stations(self) -> Stations:
        """Where things are along it."""
        return BODIES.get(self.body, PLAIN)

    @property
    def b_pillar(self) -> float:
        """Where its front doors end."""
        return self.stations.door if self.four_doors else self.stations.long_door

    @property
    def cab_end(self) -> float:
        """Where its last doors end."""
        return self.stations.rear if self.four_doors else self.stations.long_door

    @property
    def load(self) -> Box:
        """What is behind the seats: boot, bed or load space."""
        at = self.stations
        inner, (front, back) = at.half - SKIN - 2, at.load
        if not self.four_doors and at.tail == "bed":
            front = self.cab_end + 12
        return -inner, front, inner, back

    def boxes(self, area: str, side: str = "") -> tuple[Box, ...]:
        """Where an area is, on one side or on both; nothing for an area that such a body does not have."""
        sides = (side,) if side else ("left", "right")
        whole = self._whole(area)
        if whole and not side:
            return (whole,)
        if whole:
            return (_third(whole, side),)
        return tuple(_mirrored(box, one) for one in sides for box in self._sided(area))

    def _whole(self, area: str) -> Box | None:
        """An area that goes from side to side."""
        at = self.stations
        inner = at.half - SKIN - 2
        behind = at.rows[0] if at.rows else self.cab_end
        return {
            "engine-bay": (-inner, min(16, at.cowl - 18), inner, at.cowl - 6),
            "dash": (-inner, at.cowl + 3, inner, at.dash + 1),
            "console": (-8.0, at.dash + 4, 8.0, behind - 4),
            "cab-rear": (-inner, self.cab_end - 11, inner, self.cab_end + 2),
            "load-bay": self.load,
            "boot": self.load,
        }.get(area)

    def _sided(self, area: str) -> tuple[Box, ...]:
        """An area that is at both sides, on the right one."""
        at, b_pillar = self.stations, self.b_pillar
        skin, half, row = at.half - SKIN, at.half, at.seat + 38
        found: dict[str, tuple[Box, ...]] = {
            "front-door": ((skin, at.cowl + 16, half, b_pillar - 2),),
            "rear-door": ((skin, b_pillar + 2, half, max(at.rear, b_pillar + 20) - 2),),
            "side": ((skin, self.cab_end + 2, half, max(at.length - 2 * at.end + 6, self.cab_end + 16)),),
            "pillar": ((skin - 2, at.cowl + 4, half, at.cowl + 16), (skin - 2, b_pillar - 5, half, b_pillar + 5)),
            "footwell": ((12, at.dash + 3, skin - 2, at.seat - 2),),
            "seat": ((12, at.seat, skin - 4, row),),
            "floor": ((12, row, skin - 2, max(at.rows[0] if at.rows else row + 12, row + 10)),),
            "roof": ((half - 18, at.dash, half - 11, self._roof_end),),
        }
        return found.get(area, ())

    @property
    def _roof_end(self) -> float:
        at = self.stations
        return {"deck": at.load[0] - 18, "bed": self.cab_end + 2}.get(at.tail, at.load[1] - 6)


def areas_path(boxes: tuple[Box, ...]) -> str:
    """Some boxes as one path."""
    return " ".join(rounded(box, 2) for box in boxes)


def middle(boxes: tuple[Box, ...]) -> svg.Point:
    """The middle of all of them."""
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return (min(lefts) + max(rights)) / 2, (min(tops) + max(bottoms)) / 2


def part_of(boxes: tuple[Box, ...], place: int, count: int) -> tuple[Box, ...]:
    """The `place`-th of `count` parts, from the front on, of what several things share."""
    if count < 2 or len(boxes) != 1:
        return boxes
    ((left, top, right, bottom),) = boxes
    tall = (bottom - top) / count
    return ((left, top + place * tall, right, top + (place + 1) * tall),)


def rounded(box: Box, radius: float) -> str:
    """The path text of a rectangle with round corners."""
    left, top, right, bottom = box
    r = min(radius, (right - left) / 2, (bottom - top) / 2)
    wide, high, by = svg.number(right - left - 2 * r), svg.number(bottom - top - 2 * r), svg.number(r)
    turn = f"a{by} {by} 0 0 1"
    return (
        f"M{point(left + r, top)} h{wide} {turn} {by} {by} v{high} {turn} -{by} {by} h-{wide} {turn} -{by} -{by}"
        f" v-{high} {turn} {by} -{by} Z"
    )


def point(x: float, y: float) -> str:
    """A point as path text."""
    return f"{svg.number(x)} {svg.number(y)}"


def _third(box: Box, side: str) -> Box:
    left, top, right, bottom = box
    wide = (right - left) / 3
    return (left, top, left + wide, bottom) if side == "left" else (right - wide, top, right, bottom)


def _mirrored(box: Box, side: str) -> Box:
    left, top, right, bottom = box
    return box if side == "right" else (-right, top, -left, bottom)
