"""Outlines and bolt patterns that cannot be, at every boundary. The cases are worked by hand from the geometry beside them."""

from pathlib import Path

import pytest
from rule_pages import compose, load

from undertrim.check import nominal, outlines
from undertrim.check.across import findings
from undertrim.check.findings import Card, GearSubject
from undertrim.check.gear import same_measures
from undertrim.check.register import COLLECTION_RULES, GEAR_RULES
from undertrim.record.gear import GearRecord, Lead
from undertrim.record.model import Bolts, Face, Hole
from undertrim.record.model.kinds.receiver import ConverterGear, LeadsGear
from undertrim.record.units import Quantity, parse


def mm(value: float) -> Quantity:
    return parse(f"{value} mm", "length")


def pattern(bolts: Bolts) -> outlines.Pattern:
    found = outlines.of_bolts(bolts)
    assert found
    return found


def face(width: float, height: float) -> outlines.KnownOutline:
    found = outlines.of_face(Face(mm(width), mm(height)))
    assert found
    return found


# A circle of bolts leaves a rectangle at every angle only where its radius reaches the corners: sqrt(40^2 + 30^2) = 50
@pytest.mark.parametrize(("diameter", "outside"), [(99.9, False), (100, True), (110, True)])
def test_a_circle_of_bolts_against_a_panel(diameter: float, outside: bool) -> None:
    assert outlines.outside(pattern(Bolts("circle", 4, diameter=mm(diameter))), face(80, 60)) is outside


# The corners of a 60 x 80 rectangle lie on a circle of 100
@pytest.mark.parametrize(("diameter", "inside"), [(100, True), (99.9, False), (120, True)])
def test_a_rectangle_of_bolts_in_a_round_hole(diameter: float, inside: bool) -> None:
    hole = outlines.of_hole(Hole("round", diameter=mm(diameter)))
    assert hole
    assert outlines.inside(pattern(Bolts("rectangle", 4, width=mm(60), height=mm(80))), hole) is inside


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


def test_a_basket_as_large_as_its_flange_falls_through() -> None:
    same = outlines.of_hole(Hole("round", diameter=mm(130)))
    smaller = outlines.of_hole(Hole("round", diameter=mm(129.9)))
    assert same
    assert smaller
    assert outlines.too_wide(same, same) is not None
    assert outlines.too_wide(smaller, same) is None


# 70 x 50 lies inside 80 x 60 on both axes, though its corner is farther from the middle than a side of the panel is
def test_a_rectangle_of_bolts_in_a_panel_is_compared_side_by_side() -> None:
    bolts = pattern(Bolts("rectangle", 4, width=mm(70), height=mm(50)))
    assert not outlines.outside(bolts, face(80, 60))
    assert outlines.outside(bolts, face(70, 60))


@pytest.mark.parametrize(("magnet", "found"), [("150 mm", False), ("160 mm", True)])
def test_a_magnet_must_pass_the_narrow_side_of_an_oval_basket(magnet: str, found: bool) -> None:
    text = f"""gear:
      kind: speaker
      maker: Skerrowe
      model: Longshore 69
      basket: {{shape: oval, width: 150 mm, height: 220 mm}}
      flange: {{shape: oval, width: 166 mm, height: 237 mm}}
      depth: 82 mm
      magnet: {magnet}
      impedance: 4 ohm
"""
    item = load("speakers/skerrowe-longshore-69.yaml", compose(text.replace("    ", "  ")))
    assert isinstance(item.record, GearRecord)
    said = list(GEAR_RULES["unlikely-gear"].check_gear(GearSubject(item, item.record)))
    assert bool(said) is found


def test_gear_without_dimensions_measures_nothing() -> None:
    one = ConverterGear("Tidewrack", "Weir 2", takes="speaker", gives="line")
    other = ConverterGear("Tidewrack", "Weir 4", takes="speaker", gives="line")
    assert not same_measures(one, other)


def test_one_lead_set_in_two_housings_is_two() -> None:
    leads = {
        "battery": Lead("battery-feed", "yellow", fuse=parse("15 A", "current")),
        "turn-on": Lead("amplifier-turn-on", "blue/white", limit=parse("200 mA", "current")),
    }
    pair = [LeadsGear("Skerrowe", model, leads=leads) for model in ("L16", "L20")]
    cards = [Card(Path(f"{facts.model}.yaml"), f"leads/{facts.model}", facts) for facts in pair]
    assert same_measures(*pair)
    assert not list(findings(COLLECTION_RULES["gear-twice"], cards))
