"""Bolt patterns against each other: geometry of circles and rectangles, worked by hand."""

import pytest

from undertrim.derive.fit.bolts import Pose, match
from undertrim.derive.fit.clearances import clearances
from undertrim.record.model import Bolts
from undertrim.record.units import parse


def ring(count: int, across: str) -> Bolts:
    return Bolts("circle", count, diameter=parse(f"{across} mm", "length"))


def box(width: str, height: str) -> Bolts:
    return Bolts("rectangle", 4, width=parse(f"{width} mm", "length"), height=parse(f"{height} mm", "length"))


def verdict(gear: Bolts, car: Bolts, *, turned: bool = False) -> str:
    verdicts = {
        check.verdict for check in match("bolts", gear, car, clearances().bolts, "the car", Pose(turned, free=True))
    }
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
