"""Whether two bolt patterns match: circles, rectangles, and a circle with a rectangle by its diagonal."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from undertrim.derive.fit.kinds.speaker import angles
from undertrim.derive.fit.margins import Check, Number, both, compare, known, spread, typed, uncertain, untold
from undertrim.record.model import Bolts


@dataclass(frozen=True, slots=True)
class Pose:
    """How gear stands in front of the car: `turned` by 90 degrees or not; `free` to stand at any angle beside, as what is round can."""

    turned: bool = False
    free: bool = False


def match(name: str, gear: Bolts | None, car: Bolts | None, play: Number, what: str, pose: Pose) -> tuple[Check, ...]:
    """Checks that the screws of `gear` meet those of `car`, where `play` mm of difference are taken up by the holes. `what` names the latter.

    Gear that is not round stands as it must, so that the angle of a bolt circle counts; where it is not recorded nothing can be told.
    """
    title = f"Bolt holes of {what}"
    if gear is None or car is None:
        lost = [
            what for what, bolts in (("bolt holes of the gear", gear), (f"bolt holes of {what}", car)) if bolts is None
        ]
        return (untold(name, title, [f"{what} (not recorded)" for what in lost]),)
    if not _counts(gear, car):
        words = f"{title}: {car.count} do not meet the {gear.count} of the gear"
        return (Check(name, title, "fails", words, mend="adapter"),)
    pairs = (_same(name, f"{title}{way}", a, b, play) for way, a, b in _pairs(gear, car, turned=pose.turned))
    return (*pairs, *(() if pose.free else angles.check(name, title, gear, car, play, turned=pose.turned)))


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
        yield "", _circle("gear", gear), _circle("held by", car)
    elif gear.pattern == car.pattern:
        (across, up), theirs = _sides("gear", gear), _sides("held by", car)
        ours = (up, across) if turned else (across, up)
        yield ", across", ours[0], theirs[0]
        yield ", up", ours[1], theirs[1]
    else:
        box, ring = (gear, car) if gear.pattern == "rectangle" else (car, gear)
        yield ", diagonal", _diagonal(box), _circle("circle", ring)
        yield ", round the circle", *_arcs(box, ring)


def _circle(whose: str, bolts: Bolts) -> Number:
    return typed(f"bolt circle ({whose})", bolts.diameter)


def _sides(whose: str, bolts: Bolts) -> tuple[Number, Number]:
    return typed(f"bolt width ({whose})", bolts.width), typed(f"bolt height ({whose})", bolts.height)


def _diagonal(box: Bolts) -> Number:
    width, height = _sides("rectangle", box)
    if width.value is None or height.value is None:
        return Number("diagonal of the bolt rectangle", None, 0, "unknown")
    long = math.hypot(width.value, height.value)
    step = math.hypot(width.value * width.step, height.value * height.step) / long if long else 0
    return known("diagonal of the bolt rectangle", long, step)


def _arcs(box: Bolts, ring: Bolts) -> tuple[Number, Number]:
    """How far apart two corners of the rectangle are on the circle, and the holes of the circle that come nearest to that."""
    (width, height), across = _sides("rectangle", box), _circle("circle", ring)
    if width.value is None or height.value is None or across.value is None:
        lost = Number("bolt pattern", None, 0, "unknown")
        return lost, lost
    angle, pitch = 2 * math.atan2(height.value, width.value), 2 * math.pi / ring.count
    held = pitch * max(1, round(angle / pitch))
    radius, step = across.value / 2, spread([width, height])
    return known("corners, along the circle", angle * radius, step), known("holes, along the circle", held * radius)


def _same(name: str, title: str, gear: Number, car: Number, play: Number) -> Check:
    """One length that must be the same within the play."""
    if gear.value is None or car.value is None:
        return compare(name, title, [play], [gear, car], "adapter")
    apart = abs(gear.value - car.value)
    words = f"difference between {gear.label} {gear.text} and {car.label} {car.text}"
    check = compare(name, title, [play], [known(words, apart, spread([gear, car]))], "adapter")
    said = f"{title}: {both(apart)} apart{uncertain(check.uncertainty or 0)}"
    return replace(check, words=said) if check.verdict == "fails" else check
