"""Outlines and bolt patterns that cannot be, at every boundary. The cases are worked by hand from the geometry beside them."""

import pytest

from undertrim.check import nominal, outlines
from undertrim.record.model import Bolts, Face, Hole
from undertrim.record.units import Quantity, parse


def mm(value: float) -> Quantity:
    return parse(f"{value} mm", "length")


def pattern(bolts: Bolts) -> outlines.Pattern:
    found = outlines.of_bolts(bolts)
    assert found
    return found


def face(width: float, height: float) -> outlines.Outline:
    found = outlines.of_face(Face(mm(width), mm(height)))
    assert found
    return found


# A circle of bolts leaves a rectangle at every angle only where its radius reaches the corners: sqrt(40^2 + 30^2) = 50
@pytest.mark.parametrize(("diameter", "outside"), [(99.9, False), (100, True), (110, True)])
def test_a_circle_of_bolts_against_a_panel(diameter: float, outside: bool) -> None:
    assert outlines.all_outside(pattern(Bolts("circle", 4, diameter=mm(diameter))), face(80, 60)) is outside


# The corners of a 60 x 80 rectangle lie on a circle of 100
@pytest.mark.parametrize(("diameter", "inside"), [(100, True), (99.9, False), (120, True)])
def test_a_rectangle_of_bolts_in_a_round_hole(diameter: float, inside: bool) -> None:
    hole = outlines.of_hole(Hole("round", diameter=mm(diameter)))
    assert hole
    assert outlines.all_inside(pattern(Bolts("rectangle", 4, width=mm(60), height=mm(80))), hole) is inside


def test_what_is_not_recorded_is_never_wrong() -> None:
    assert outlines.of_hole(None) is None
    assert outlines.of_bolts(Bolts("circle", 4)) is None


# Names people type for one size; the ranges are common practice (data/nominal-sizes.toml)
@pytest.mark.parametrize("said", ["6.5 in", '6 1/2"', "6.5", "165 mm", "16.5 cm", "6.5 inch"])
def test_one_size_by_many_names(said: str) -> None:
    size = nominal.find(said)
    assert size
    assert "6.5 in" in size.names


@pytest.mark.parametrize("said", ["6x9", "6 x 9 in", "9x6 in", "6 by 9"])
def test_both_orders_of_an_oval_are_one(said: str) -> None:
    size = nominal.find(said)
    assert size
    assert "6x9 in" in size.names


@pytest.mark.parametrize("said", ["large", "", "2DIN", "6x", "x"])
def test_other_words_are_no_size(said: str) -> None:
    assert nominal.find(said) is None
