"""Whether two bolt patterns match: circles, rectangles, and a circle with a rectangle by its diagonal."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from undertrim.derive.fit.kinds.speaker import angles
from undertrim.derive.fit.lengths import both
from undertrim.derive.fit.margins import (
    NOT_RECORDED,
    Check,
    Number,
    compare,
    found,
    known,
    spread,
    typed,
    uncertain,
    untold,
)
from undertrim.record.model import Blank, Bolts
from undertrim.words import Message, Value, message

_DIAGONAL = message("fit-speaker/diagonal-of-rectangle")


@dataclass(frozen=True, slots=True)
class Pose:
    """How gear stands in front of the car: `turned` by 90 degrees or not; `free` to stand at any angle beside, as what is round can."""

    turned: bool = False
    free: bool = False


def match(name: str, gear: Bolts | None, car: Bolts | None, play: Number, what: Value, pose: Pose) -> tuple[Check, ...]:
    """Checks that the screws of `gear` meet those of `car`, where `play` mm of difference are taken up by the holes. `what` names the latter.

    Gear that is not round stands as it must, so that the angle of a bolt circle counts; where it is not recorded nothing can be told.
    """
    title = message("fit-speaker/bolts", of=what)
    if gear is None or car is None:
        holes = ((message("fit-speaker/holes-gear"), gear), (message("fit-speaker/holes-of", of=what), car))
        lost = [message("fit/missing", what=whose, how=NOT_RECORDED) for whose, bolts in holes if bolts is None]
        return (untold(name, title, lost),)
    if not _counts(gear, car):
        words = message("fit-speaker/counts-differ", check=title, car=car.count, gear=gear.count)
        return (Check(name, title, "fails", words, mend="adapter"),)
    pairs = (_same(name, _way(title, way), a, b, play) for way, a, b in _pairs(gear, car, turned=pose.turned))
    return (*pairs, *(() if pose.free else angles.check(name, title, gear, car, play, turned=pose.turned)))


def _way(title: Message, way: str) -> Message:
    """The title of a check of one length; there is but one where a circle meets a circle."""
    return message(way, check=title) if way else title


def _counts(gear: Bolts, car: Bolts) -> bool:
    """Two circles: the smaller count divides the larger. Two rectangles: the same count. One of each: four corners, and an even
    number of holes, which lie opposite each other as the corners do."""
    if gear.pattern == car.pattern == "rectangle":
        return gear.count == car.count
    if gear.pattern == car.pattern:
        few, many = sorted((gear.count, car.count))
        return many % few == 0
    box, ring = (gear, car) if gear.pattern == "rectangle" else (car, gear)
    return box.count == 4 and ring.count >= 4 and ring.count % 2 == 0


def _pairs(gear: Bolts, car: Bolts, *, turned: bool) -> Iterator[tuple[str, Number, Number]]:
    """What must be the same in both patterns."""
    if gear.pattern == car.pattern == "circle":
        yield "", _circle("gear", gear), _circle("car", car)
    elif gear.pattern == car.pattern:
        (across, up), theirs = _sides("gear", gear), _sides("car", car)
        ours = (up, across) if turned else (across, up)
        yield "fit/check-across", ours[0], theirs[0]
        yield "fit/check-up", ours[1], theirs[1]
    else:
        box, ring = (gear, car) if gear.pattern == "rectangle" else (car, gear)
        yield "fit-speaker/diagonal", _diagonal(box), _circle("circle", ring)
        yield "fit-speaker/round-the-circle", *_arcs(box, ring)


def _circle(whose: str, bolts: Bolts) -> Number:
    return typed(message(f"fit-speaker/circle-{whose}"), bolts.diameter)


def _sides(whose: str, bolts: Bolts) -> tuple[Number, Number]:
    width, height = message(f"fit-speaker/width-{whose}"), message(f"fit-speaker/height-{whose}")
    return typed(width, bolts.width), typed(height, bolts.height)


def _diagonal(box: Bolts) -> Number:
    width, height = _sides("rectangle", box)
    if width.value is None or height.value is None:
        return typed(_DIAGONAL, Blank.UNKNOWN)
    long = math.hypot(width.value, height.value)
    step = math.hypot(width.value * width.step, height.value * height.step) / long if long else 0
    return known(_DIAGONAL, long, step)


def _arcs(box: Bolts, ring: Bolts) -> tuple[Number, Number]:
    """How far apart two corners of the rectangle are on the circle, and the holes of the circle that come nearest to that."""
    (width, height), across = _sides("rectangle", box), _circle("circle", ring)
    if width.value is None or height.value is None or across.value is None:
        lost = typed(message("fit-speaker/pattern"), Blank.UNKNOWN)
        return lost, lost
    angle, pitch = 2 * math.atan2(height.value, width.value), 2 * math.pi / ring.count
    held = pitch * max(1, round(angle / pitch))
    radius, step = across.value / 2, spread([width, height])
    corners, holes = message("fit-speaker/corners-along"), message("fit-speaker/holes-along")
    return known(corners, angle * radius, step), known(holes, held * radius)


def _same(name: str, title: Message, gear: Number, car: Number, play: Number) -> Check:
    """One length that must be the same within the play."""
    if gear.value is None or car.value is None:
        return compare(name, title, [play], [gear, car], "adapter")
    apart = abs(gear.value - car.value)
    values = {"one": gear.label, "size": gear.text, "other": car.label, "other_size": car.text}
    difference = known(message("fit-speaker/difference", **values), apart, spread([gear, car]))
    check = compare(name, title, [play], [difference], "adapter")
    if check.verdict != "fails":
        return check
    said = uncertain(message("fit-speaker/apart", length=both(apart)), check.uncertainty or 0)
    return replace(check, said=found(title, said))
