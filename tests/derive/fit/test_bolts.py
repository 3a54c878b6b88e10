"""Bolt patterns against each other: geometry of circles and rectangles, worked by hand."""

import pytest

from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.kinds.speaker.bolts import Pose, match
from undertrim.record.model import Blank, Bolts
from undertrim.record.units import parse


def ring(count: int, across: str, angle: str = "") -> Bolts:
    turn = {"": None, "unknown": Blank.UNKNOWN}.get(
        angle, parse(f"{angle or 0} deg", "angle") if angle != "unknown" else None
    )
    return Bolts("circle", count, diameter=parse(f"{across} mm", "length"), angle=turn)


def box(width: str, height: str) -> Bolts:
    return Bolts("rectangle", 4, width=parse(f"{width} mm", "length"), height=parse(f"{height} mm", "length"))


def verdict(gear: Bolts, car: Bolts, *, turned: bool = False, free: bool = True) -> str:
    found = match("bolts", gear, car, clearances()["bolts"], "the car", Pose(turned, free))
    verdicts = {check.verdict for check in found}
    return next(word for word in ("fails", "unknown", "marginal", "fits") if word in verdicts)


@pytest.mark.parametrize(
    ("gear", "car", "expected"),
    [
        (ring(4, "160"), ring(4, "160"), "fits"),
        (ring(4, "160"), ring(4, "161"), "fits"),
        (ring(4, "160"), ring(4, "162"), "marginal"),  # the play is 2 mm, and so is the difference
        (ring(4, "160"), ring(4, "165"), "fails"),
        (ring(4, "160"), ring(2, "160"), "fits"),
        (ring(8, "160"), ring(4, "160"), "fits"),
        (ring(4, "160"), ring(3, "160"), "fails"),
        (box("110", "165"), box("110", "165"), "fits"),
        (box("110", "165"), box("165", "110"), "fails"),
        # 110 square: diagonal 155.56, corners 90 degrees apart
        (ring(4, "156"), box("110", "110"), "fits"),
        (box("110", "110"), ring(4, "156"), "fits"),
        # 110 x 165: diagonal 198.3, corners 112.6 and 67.4 degrees apart, the holes 90
        (ring(4, "198.3"), box("110", "165"), "fails"),
        # 1 : sqrt(3), corners 120 and 60 degrees apart: circles of six and twelve have holes there
        (ring(12, "200"), box("100", "173.2"), "fits"),
        (ring(12, "200"), box("173.2", "100"), "fits"),
        (ring(6, "200"), box("100", "173.2"), "fits"),
        (ring(9, "200"), box("100", "173.2"), "fails"),
    ],
)
def test_patterns(gear: Bolts, car: Bolts, expected: str) -> None:
    assert verdict(gear, car) == expected


def test_a_rectangle_may_be_turned() -> None:
    assert verdict(box("110", "165"), box("165", "110"), turned=True) == "fits"


# On a circle of 160 mm a degree is 80 x pi / 180 = 1.40 mm; the play is 2 mm. A whole degree is read to half of one, so 0.7 mm and 1 mm together
@pytest.mark.parametrize(
    ("gear", "car", "turned", "expected"),
    [
        (ring(4, "160", "45.0"), ring(4, "160", "45.0"), False, "fits"),
        (ring(4, "160", "45.0"), ring(4, "160", "135.0"), False, "fits"),  # the same holes, counted from another
        (ring(4, "160", "45.0"), ring(4, "160", "0.0"), False, "fails"),
        (ring(4, "160", "45.0"), ring(4, "160", "46.0"), False, "fits"),  # 1.40 mm
        (ring(4, "160", "45"), ring(4, "160", "46"), False, "marginal"),
        (ring(4, "160", "45.0"), ring(4, "160", "47.0"), False, "fails"),  # 2.79 mm
        (ring(4, "160", "0.0"), ring(4, "160", "0.0"), True, "fits"),  # a quarter turn brings four onto four
        (ring(2, "160", "0.0"), ring(2, "160", "0.0"), True, "fails"),  # and two beside two
        (ring(2, "160", "90.0"), ring(2, "160", "0.0"), True, "fits"),
        (ring(2, "160", "45.0"), ring(4, "160", "45.0"), False, "fits"),
        (ring(4, "160", "45.0"), ring(2, "160", "45.0"), False, "fits"),
        (ring(8, "160", "0.0"), ring(4, "160", "45.0"), False, "fits"),
        (ring(4, "160", "1.0"), ring(4, "160", "90.0"), False, "fits"),
        # The corners of a square stand at 45 degrees; those of 100 x 173.2 at 30 degrees from straight up, with holes of twelve every 30
        (ring(4, "156", "45.0"), box("110", "110"), False, "fits"),
        (ring(4, "156", "0.0"), box("110", "110"), False, "fails"),
        (box("110", "110"), ring(4, "156", "0.0"), False, "fails"),
        (ring(12, "200", "0.0"), box("100", "173.2"), False, "fits"),
        (ring(12, "200", "15.0"), box("100", "173.2"), False, "fails"),
        (box("110", "165"), box("110", "165"), False, "fits"),
    ],
)  # fmt: skip
def test_what_is_not_round_keeps_its_angle(gear: Bolts, car: Bolts, turned: bool, expected: str) -> None:
    assert verdict(gear, car, turned=turned, free=False) == expected


@pytest.mark.parametrize("angle", ["", "unknown"])
def test_an_angle_that_is_not_recorded_cannot_be_told_unless_it_may_turn(angle: str) -> None:
    for gear, car in ((ring(4, "160", angle), ring(4, "160", "45")), (ring(4, "160", "45"), ring(4, "160", angle))):
        assert verdict(gear, car, free=False) == "unknown"
        assert verdict(gear, car) == "fits"
    assert verdict(ring(4, "156", angle), box("110", "110"), free=False) == "unknown"
