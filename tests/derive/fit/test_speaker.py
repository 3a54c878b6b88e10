"""Speakers against openings. Unless a test says otherwise its numbers are worked examples, derived by hand from the formulas beside them."""

import math
from dataclasses import replace
from typing import Any

import pytest

from fitting import named
from undertrim.derive.fit.clearances import Clearances, clearances
from undertrim.derive.fit.kinds.speaker import fit as speaker
from undertrim.derive.fit.kinds.speaker.room import room
from undertrim.derive.fit.kinds.speaker.seats import seats
from undertrim.derive.fit.margins import Check, typed
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import Fit
from undertrim.record.gear import Place
from undertrim.record.model import Blank, Bolts, Depth, Face, Hole
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity, parse
from undertrim.words import say

USUAL = clearances()


def mm(text: str) -> Quantity:
    return parse(text if text[-1].isalpha() else f"{text} mm", "length")


def circle(across: str) -> Hole:
    return Hole("round", diameter=mm(across))


def oval(width: str, height: str, shape: str = "oval") -> Hole:
    return Hole(shape, width=mm(width), height=mm(height))


RING = Bolts("circle", 4, diameter=mm("156"))


def gear(depth: str = "58", protrusion: str | None = "10", **other: object) -> Stocked[SpeakerGear]:
    facts: dict[str, Any] = {"basket": circle("127"), "flange": circle("165"), "bolts": RING}
    facts |= {"depth": mm(depth), "protrusion": mm(protrusion) if protrusion else None, "gasket": Blank.NONE, **other}
    return Stocked("shoal", SpeakerGear("Skerrowe", "Shoal", **facts))


def square(clear: Quantity | Blank, datum: str = "skin", over: str = "no-glass", to: str = "") -> Depth:
    """A depth to something that stands square to it."""
    return Depth(clear, datum, over, to, leans=Blank.NONE)


def door(clear: str | Blank = "62", grille: str | None = "20", **other: object) -> SpeakerOpening:
    depth = square(mm(clear) if not isinstance(clear, Blank) else clear)
    facts: dict[str, Any] = {"hole": circle("130"), "bolts": RING, "depth": depth, "factory_spacer": Blank.NONE}
    facts |= {"room_to_grille": mm(grille) if grille else None, "panel": Face(mm("300"), mm("300")), **other}
    return SpeakerOpening("side", "Side", (), **{"area": "boot", **facts})


def ring(thickness: str, **other: object) -> Stocked[SpacerGear]:
    facts: dict[str, Any] = {"hole": circle("128"), "flange": circle("176"), "bolts": RING, **other}
    made_of = SpacerGear("Pellworth", f"Ring {thickness}", thickness=mm(thickness), **facts)
    return Stocked(f"ring-{thickness}", made_of)


def fit(
    item: Stocked[SpeakerGear], opening: SpeakerOpening, *spacers: Stocked[SpacerGear], usual: Clearances = USUAL
) -> Fit:
    return speaker.fit(item, opening, spacers, usual)


def leaning(opening: SpeakerOpening, lean: str) -> SpeakerOpening:
    assert opening.depth
    said = Blank.UNKNOWN if lean == "unknown" else parse(lean, "angle")
    return replace(opening, depth=replace(opening.depth, leans=said))


def check(found: Fit, name: str) -> Check:
    return next(check for check in found.checks if check.name == name)


# D + s - d - c and G - s - p - cg, with c = cg = 3 and no glass near
@pytest.mark.parametrize(
    ("clear", "spacer", "depth", "rear", "front", "kind"),
    [
        ("62", None, "58", 1, 7, "fits"),
        ("62", "6", "63", 2, 1, "fits-with"),
    ],
)
def test_depth_and_room_to_the_grille(
    clear: str, spacer: str | None, depth: str, rear: float, front: float, kind: str
) -> None:
    found = fit(gear(depth), door(clear), *([ring(spacer)] if spacer else []))
    assert found.kind == kind
    assert check(found, "depth").margin == pytest.approx(rear)
    assert check(found, "grille").margin == pytest.approx(front)
    assert named(found.parts) == ((f"Pellworth Ring {spacer}",) if spacer else ())


def test_a_window_for_a_spacer_that_is_not_in_stock() -> None:
    found = fit(gear("63"), door("62"))
    space = room(gear("63").facts, door("62"), USUAL)
    seat = seats(door("62"))[0]
    assert space.depth([seat.offset]).margin == pytest.approx(-4)
    assert space.window(seat) == pytest.approx((4, 7))
    assert (found.kind, found.parts) == ("fits-with", ())
    assert say(found.headline) == "fits with a spacer 4 mm (0.157 in) to 7 mm (0.276 in) high: none in stock suits"


def test_half_an_inch_mends_the_depth_and_breaks_the_grille() -> None:
    half = ring("1/2 in")  # 12.7 mm, where 4 to 7 mm would do
    space, height = room(gear("63").facts, door("62"), USUAL), [typed("thickness", half.facts.thickness)]
    assert space.depth(height).margin == pytest.approx(8.7)
    assert space.grille(height).margin == pytest.approx(-5.7)
    assert fit(gear("63"), door("62"), half).parts == ()


def test_an_empty_window_does_not_fit() -> None:
    found = fit(gear("63"), door("55"), ring("9"))
    assert found.kind == "does-not-fit"
    assert found.checks[0].name == "depth"
    assert found.checks[0].margin == pytest.approx(-11)
    assert any("11 mm (0.43 in) high at least, and the grille leaves 7 mm" in note for note in map(say, found.notes))


# r tan(theta): r 45, 5 deg -> 3.94; r 45, 10 deg -> 7.93; r 60, 8 deg -> 8.43
@pytest.mark.parametrize(("magnet", "tilt", "less"), [("90", 5, 3.94), ("90", 10, 7.93), ("120", 8, 8.43)])
def test_a_leaning_glass_takes_depth_at_the_edge_of_the_magnet(magnet: str, tilt: float, less: float) -> None:
    check = room(gear(magnet=mm(magnet)).facts, leaning(door(), f"{tilt}.00 deg"), USUAL).depth([])
    assert check.margin == pytest.approx(1 - less, abs=0.005)
    assert check.verdict == "fails"


def test_a_lean_needs_the_magnet() -> None:
    assert fit(gear(), leaning(door(), "5 deg")).kind == "unknown"
    assert fit(gear(magnet=mm("90")), leaning(door(), "0 deg")).kind == "fits"


def test_a_lean_that_is_not_known_stays_unknown() -> None:
    found = fit(gear(magnet=mm("90")), leaning(door(), "unknown"))
    assert found.kind == "unknown"
    assert "lean of the thing behind (unknown)" in say(found.headline)


def test_a_coarse_angle_makes_a_margin_marginal() -> None:
    """r 45 at 1 ± 0.5 deg: 45 tan 1° = 0.785, 45 x 0.00873 / cos² 1° = 0.393 more or less; the margin of 0.2 is less than that."""
    found = fit(gear(magnet=mm("90.00")), leaning(door("62.00", "20.00"), "1 deg"))
    assert check(found, "depth").verdict == "marginal"
    assert check(found, "depth").margin == pytest.approx(1 - 0.785, abs=0.001)


# The gasket lifts the flange: its thickness is added to the depth and taken from the room to the grille
def test_a_gasket_gives_depth_and_takes_room_to_the_grille() -> None:
    found = fit(gear("63", gasket=mm("4.5")), door("62"))
    assert check(found, "depth").margin == pytest.approx(62 + 4.5 - 63 - 3)
    assert check(found, "grille").margin == pytest.approx(20 - 4.5 - 10 - 3)
    assert fit(gear(gasket=Blank.NONE), door()).checks == fit(gear(), door()).checks
    assert fit(gear(gasket=Blank.UNKNOWN), door()).kind == "unknown"


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


def test_a_bracket_left_off_strikes_the_glass_and_kept_strikes_the_grille() -> None:
    """47 - 55.5625 = -8.56; kept 19.05: rear +10.49, front 24 - 19.05 - 9 = -4.05; window [11.56, 13.00]."""
    usual = clearances(rear="3 mm", rear_glass="3 mm", grille="2 mm")
    depth = replace(square(mm("47"), "skin", "whole-travel", "Window glass"), obstruction="glass")
    opening = door(grille="24", depth=depth, factory_spacer=mm("19.05"))
    item = gear("2 3/16 in", "9")
    space, (off, kept) = room(item.facts, opening, usual), seats(opening)
    assert space.depth([off.offset]).gap == pytest.approx(-8.5625)
    assert space.depth([kept.offset]).gap == pytest.approx(10.4875)
    assert space.grille([kept.offset]).gap == pytest.approx(-4.05)
    assert space.window(off) == pytest.approx((11.5625, 13.0))
    assert fit(item, opening, usual=usual).kind == "fits-with"
    found = fit(item, opening, ring("12"), usual=usual)
    assert named(found.parts) == ("Pellworth Ring 12",)
    assert check(found, "depth").margin == pytest.approx(0.4375)  # closer than a sixteenth of an inch can tell
    assert found.kind == "marginal"


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


@pytest.mark.parametrize("datum", ["", "panel", "face"])
def test_a_depth_from_another_or_no_face_is_unknown(datum: str) -> None:
    found = fit(gear(), door(depth=square(mm("90"), datum)))
    assert found.kind == "unknown"
    assert "the face that the depth is measured from" in say(found.headline)


def test_a_depth_from_the_bracket_includes_it() -> None:
    """62 from the bracket's face, 10 high: 52 from the skin, where 58 + 3 do not go in."""
    from_bracket = square(mm("62"), "bracket")
    found = fit(gear(), door(depth=from_bracket, factory_spacer=mm("10")))
    assert found.kind == "fits"
    assert any("stays under the new speaker" in note for note in map(say, found.notes))
    assert any(
        note.startswith("on the mounting face: does not fit: Depth") and "9 mm" in note
        for note in map(say, found.notes)
    )


@pytest.mark.parametrize(("over", "place"), [("glass-down", "front-door"), ("", "front-door")])
def test_a_depth_without_the_whole_travel_is_marginal_at_best(over: str, place: str) -> None:
    found = fit(gear(), door(depth=square(mm("90"), over=over), area=place))
    assert found.kind == "marginal"
    assert "measure over the whole travel" in say(found.headline)
    short = fit(gear(), door(grille="9", depth=square(mm("40"), over=over), area=place))
    assert short.kind == "does-not-fit"


@pytest.mark.parametrize(
    ("item", "opening", "missing"),
    [
        (gear(protrusion=None), door(), "protrusion of the cone (not recorded)"),
        (gear(), door(grille=None), "room to the grille (not recorded)"),
        (gear(), door(Blank.UNKNOWN), "clear depth (unknown)"),
        (gear(bolts=None), door(), "bolt holes of the gear (not recorded)"),
    ],
)
def test_what_is_missing_is_named(item: Stocked[SpeakerGear], opening: SpeakerOpening, missing: str) -> None:
    found = fit(item, opening)
    assert found.kind == "unknown"
    assert missing in say(found.headline)


def test_what_fails_outweighs_what_is_unknown() -> None:
    assert fit(gear(protrusion=None), door(hole=circle("120"))).kind == "does-not-fit"


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


# 10 log10(Z old / Z new): halving the impedance doubles the power
@pytest.mark.parametrize(("old", "new", "said"), [("4", "2", "+3.0 dB"), ("2", "4", "−3.0 dB"), ("4", "3", "+1.2 dB")])
def test_level_at_equal_voltage(old: str, new: str, said: str) -> None:
    item = gear(impedance=parse(f"{new} ohm", "resistance"))
    notes = [*map(say, fit(item, door(impedance=parse(f"{old} ohm", "resistance"))).notes)]
    assert any(said in note for note in notes)
    unknown = [*map(say, fit(item, door(impedance=Blank.UNKNOWN)).notes)]
    assert any("cannot be told: its impedance is not recorded" in note for note in unknown)


@pytest.mark.parametrize(("sensor", "warned"), [("yes", True), ("unknown", True), ("no", False)])
def test_bolts_that_do_not_match_tempt_to_drill(sensor: str, warned: bool) -> None:
    other = Bolts("circle", 3, diameter=mm("156"))
    found = fit(gear(), door(bolts=other, crash_sensor=sensor))
    assert any("no drilling" in note for note in map(say, found.notes)) is warned
