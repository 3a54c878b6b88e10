"""Speakers against openings. Unless a test says otherwise its numbers are worked examples, derived by hand from the formulas beside them."""

from dataclasses import replace

import pytest

from fitting import named
from speakers import USUAL, check, circle, door, fit, gear, mm, ring, square
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.kinds.speaker.room import room
from undertrim.derive.fit.kinds.speaker.seats import seats
from undertrim.derive.fit.margins import typed
from undertrim.derive.fit.stock import Stocked
from undertrim.record.model import Blank
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import parse
from undertrim.words import say


def leaning(opening: SpeakerOpening, lean: str) -> SpeakerOpening:
    assert opening.depth
    said = Blank.UNKNOWN if lean == "unknown" else parse(lean, "angle")
    return replace(opening, depth=replace(opening.depth, leans=said))


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


# 10 log10(Z old / Z new): halving the impedance doubles the power
@pytest.mark.parametrize(("old", "new", "said"), [("4", "2", "+3.0 dB"), ("2", "4", "−3.0 dB"), ("4", "3", "+1.2 dB")])
def test_level_at_equal_voltage(old: str, new: str, said: str) -> None:
    item = gear(impedance=parse(f"{new} ohm", "resistance"))
    notes = [*map(say, fit(item, door(impedance=parse(f"{old} ohm", "resistance"))).notes)]
    assert any(said in note for note in notes)
    unknown = [*map(say, fit(item, door(impedance=Blank.UNKNOWN)).notes)]
    assert any("cannot be told: its impedance is not recorded" in note for note in unknown)
