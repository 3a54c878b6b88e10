"""What a speaker sits on: flange, hole, panel, bolts, and rings and plates between. Its numbers are worked by hand from the formulas beside them."""

import math
from dataclasses import replace
from typing import Any

import pytest

from fitting import named
from speakers import RING, USUAL, check, circle, door, fit, gear, mm, ring
from undertrim.derive.fit.kinds.speaker import fit as speaker
from undertrim.derive.fit.stock import Stocked
from undertrim.record.gear import Place
from undertrim.record.model import Blank, Bolts, Face, Hole
from undertrim.record.model.kinds.speaker import SpacerGear
from undertrim.record.units import parse
from undertrim.words import say


def oval(width: str, height: str, shape: str = "oval") -> Hole:
    return Hole(shape, width=mm(width), height=mm(height))


def test_the_flange_must_lie_on_the_panel() -> None:
    wide, tight = Face(mm("180"), mm("170")), Face(mm("180"), mm("160"))
    assert fit(gear(), door(panel=wide)).kind == "fits"
    found = fit(gear(), door(panel=tight))
    assert found.kind == "does-not-fit"
    assert (
        say(found.headline)
        == "does not fit: Flange on the panel of the car, up: 5 mm (0.197 in) short, ± 0.71 mm (0.028 in)"
    )
    assert fit(gear(), door(panel=Face(mm("180"), Blank.UNKNOWN))).kind == "unknown"


# K <= H and H <= F - 2 x overlap
def test_a_flange_covers_a_hole_with_its_overlap() -> None:
    assert fit(gear(), door()).kind == "fits"  # 127 <= 130 <= 155
    wide = fit(gear(), door(hole=circle("158")))
    assert say(wide.headline).startswith("fits with an adapter plate up to 7 mm")  # 158 > 155
    assert any("only 3.5 mm" in note for note in map(say, wide.notes))


def test_an_oval_hole_leaves_a_round_flange_open_at_both_ends() -> None:
    """198 x 132: 132 - 127 = 5 of slack; (198 - 165) / 2 = 16.5 open at each end."""
    found = fit(gear(), door(hole=oval("198", "132")))
    assert say(found.headline).startswith("fits with an adapter plate")
    assert check(found, "hole-up").margin == pytest.approx(5)
    assert any(
        "16.5 mm (0.65 in) open at each end, ± 0.35 mm (0.014 in), adapter plate needed" in note
        for note in map(say, found.notes)
    )


def test_turning_is_said_and_done_only_where_it_helps() -> None:
    item = gear(
        basket=oval("150", "220"), flange=oval("166", "237"), bolts=replace(RING, angle=parse("45 deg", "angle"))
    )
    straight = fit(item, door(hole=oval("153", "223"), bolts=item.facts.bolts))
    turned = fit(item, door(hole=oval("223", "153"), bolts=item.facts.bolts))
    assert (straight.kind, turned.kind) == ("fits", "fits")
    assert "turned by 90 degrees" in [*map(say, turned.notes)]
    assert "turned by 90 degrees" not in [*map(say, straight.notes)]


def test_a_rectangle_needs_room_for_its_corners() -> None:
    """A square of 90 has a diagonal of 127.28: it goes into 130 and not into 127."""
    square = gear(basket=oval("90", "90", "rectangle"))
    assert check(fit(square, door()), "hole-up").need == pytest.approx(90 * math.sqrt(2))
    assert fit(square, door(hole=circle("125"))).kind == "does-not-fit"


def test_the_nominal_size_is_never_used() -> None:
    assert fit(gear(nominal="10 in"), door(nominal="4 in")).kind == "fits"


def test_a_ring_for_any_car_must_cover_the_hole_and_meet_the_bolts() -> None:
    assert named(fit(gear("63"), door("62"), ring("6")).parts) == ("Pellworth Ring 6",)
    small = ring("6", flange=circle("134"))
    assert fit(gear("63"), door("62"), small).parts == ()
    assert fit(gear("63"), door("62"), ring("6", hole=circle("120"))).parts == ()


SUITS = (Place("kelbrook/finch-2014-2018", "side"),)


@pytest.mark.parametrize(
    ("other", "held"),
    [
        ({}, True),
        ({"flange": circle("134")}, False),  # 130 + 2 x 5 must be covered
        ({"flange": circle("310")}, False),  # the panel is 300
        ({"hole": circle("120")}, False),  # the basket of 127 does not go through
        ({"bolts": Bolts("circle", 4, diameter=mm("156")), "car_bolts": Bolts("circle", 3, diameter=mm("156"))}, False),
        ({"car_bolts": Bolts("circle", 4, diameter=mm("166"))}, False),
        ({"thickness": mm("9")}, False),  # 7 mm are left to the grille
    ],
)
def test_a_ring_that_is_said_to_suit_is_held_against_the_car_all_the_same(other: dict[str, Any], held: bool) -> None:
    for suits in ((), SUITS):
        facts: dict[str, Any] = {
            "hole": circle("128"),
            "flange": circle("176"),
            "bolts": RING,
            "thickness": mm("6"),
            **other,
        }
        item = Stocked("ring", SpacerGear("Pellworth", "Ring", suits=suits, **facts))
        assert bool(fit(gear("63"), door("62"), item).parts) is held


def test_an_oval_plate_keeps_its_angle() -> None:
    """A round ring is turned until its holes meet, an oval one whose angle nobody knows is not."""
    facts: dict[str, Any] = {"hole": circle("128"), "bolts": RING, "thickness": mm("6")}
    round_, oval_ = (
        SpacerGear("Pellworth", "Plate", flange=rim, **facts) for rim in (circle("176"), oval("176", "190"))
    )
    assert fit(gear("63"), door("62"), Stocked("plate", round_)).kind == "fits-with"
    found = speaker.fit(gear("63"), door("62"), [Stocked("plate", oval_)], USUAL)
    assert found.parts == ()


@pytest.mark.parametrize(("sensor", "warned"), [("yes", True), ("unknown", True), ("no", False)])
def test_bolts_that_do_not_match_tempt_to_drill(sensor: str, warned: bool) -> None:
    other = Bolts("circle", 3, diameter=mm("156"))
    found = fit(gear(), door(bolts=other, crash_sensor=sensor))
    assert any("no drilling" in note for note in map(say, found.notes)) is warned
