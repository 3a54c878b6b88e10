"""Drawings of openings: to scale, nothing drawn that is not known, no text over another one, words for those who do not see them."""

import re
from dataclasses import replace
from itertools import combinations
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from undertrim.publish.pictures.drawings import dash, front, section
from undertrim.publish.pictures.drawings.axis import Margin, Section, Speaker
from undertrim.publish.pictures.drawings.dash import Dash, Frame
from undertrim.publish.pictures.drawings.dimensions import UNKNOWN, Measure
from undertrim.publish.pictures.drawings.front import DrawnOutline, Front, Pattern
from undertrim.publish.pictures.drawings.lettering import Box, Line

SVG = "{http://www.w3.org/2000/svg}"


def mm(value: float) -> Measure:
    return Measure(value, f"{value:g} mm ({value / 25.4:.2f} in)")


def circle(across: float) -> DrawnOutline:
    return DrawnOutline("round", mm(across), mm(across))


def parsed(drawn: str) -> ElementTree.Element:
    return ElementTree.fromstring(drawn)  # noqa: S314 - our own drawing


def part(drawn: str, name: str) -> list[str]:
    """The path texts of everything that is drawn as one part."""
    return [one.get("d", "") for one in parsed(drawn).iter(f"{SVG}path") if one.get("data-part") == name]


def bounds(path: str) -> tuple[float, float]:
    """Width and height of an arc or rectangle as this package writes them."""
    numbers = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", path)]
    if "A" in path:
        return 2 * numbers[2], 2 * numbers[3]
    return numbers[2], numbers[3]


def texts(drawn: str) -> list[Box]:
    found = []
    for one in parsed(drawn).iter(f"{SVG}text"):
        upright = "rotate" in one.get("transform", "")
        anchor: Any = one.get("text-anchor", "start")
        line = Line(float(one.get("x", 0)), float(one.get("y", 0)), one.text or "", anchor, upright)
        found.append(line.box)
    return found


def assert_readable(drawn: str) -> None:
    """No text over another, none beyond the edges (a hundredth of a unit is rounding)."""
    root = parsed(drawn)
    width, height = (float(number) for number in root.get("viewBox", "").split()[2:])
    boxes = texts(drawn)
    for one, other in combinations(boxes, 2):
        shrunk = Box(one.left + 0.02, one.top + 0.02, one.right - 0.02, one.bottom - 0.02)
        assert not shrunk.meets(other), (one, other)
    for box in boxes:
        assert box.left >= -0.02
        assert box.right <= width + 0.02
        assert box.bottom <= height + 0.02
    assert root.find(f"{SVG}title") is not None
    assert root.find(f"{SVG}desc") is not None


SPEAKER = Speaker("Skerrowe Shoal", mm(58), mm(10), mm(165), mm(127), mm(90))
DOOR = Section("Door", mm(62), mm(20), mm(130), speaker=SPEAKER, margin_behind=Margin("1 mm to spare", "fits"), margin_front=Margin("7 mm to spare", "fits"))  # fmt: skip
FACE = Front("Face", circle(130), Pattern(True, 4, mm(156), UNKNOWN), DrawnOutline("rectangle", mm(190), mm(182)), "Skerrowe Shoal", circle(127), circle(165), Pattern(True, 4, mm(156), UNKNOWN))  # fmt: skip
RADIO = Dash("Dash", Frame(mm(182), mm(112)), "Sandmartin DK", Frame(mm(182), mm(104)), Frame(mm(240), mm(150)), "Skerrowe Cleft", Frame(mm(180), mm(50)), Frame(mm(188), mm(58)), mm(172), "Cross-beam", mm(160), mm(30), "strikes, 18 mm short", strikes=True)  # fmt: skip


def test_outlines_from_the_front_are_to_one_scale() -> None:
    drawn = front.opening(FACE)
    unit = bounds(part(drawn, "hole")[0])[0] / 130
    for name, across in (("basket", 127), ("flange", 165)):
        assert bounds(part(drawn, name)[0]) == pytest.approx((across * unit, across * unit), abs=0.02)
    assert bounds(part(drawn, "panel")[0]) == pytest.approx((190 * unit, 182 * unit), abs=0.02)
    assert len(part(drawn, "bolt")) == 4
    assert len(part(drawn, "gear-bolt")) == 4


def test_turning_exchanges_the_sides_of_the_gear_alone() -> None:
    oval = DrawnOutline("oval", mm(150), mm(220))
    straight = replace(FACE, hole=oval, basket=oval, panel=None, flange=None)
    turned = replace(straight, turned=True)
    held, other = (bounds(part(front.opening(one), "basket")[0]) for one in (straight, turned))
    assert held[0] / held[1] == pytest.approx(150 / 220, abs=0.01)
    assert other[0] / other[1] == pytest.approx(220 / 150, abs=0.01)


def test_a_dash_is_to_scale_and_what_is_left_over_is_hatched() -> None:
    drawn = dash.opening(RADIO)
    unit = bounds(part(drawn, "face")[0])[0] / 182
    assert bounds(part(drawn, "body")[0]) == pytest.approx((180 * unit, 50 * unit), abs=0.02)
    assert bounds(part(drawn, "trim")[0]) == pytest.approx((188 * unit, 58 * unit), abs=0.02)
    assert part(drawn, "left-over")
    assert "left over: 54 mm of height" in drawn.replace("\n", " ") or "54 mm" in drawn
    chassis, plugs = bounds(part(drawn, "chassis")[0])[0], bounds(part(drawn, "plugs")[0])[0]
    assert chassis / plugs == pytest.approx(160 / 30, abs=0.01)


def test_a_section_is_to_scale() -> None:
    """The gap behind is drawn as 4 mm where the mounting depth is 58: 62 - 58."""
    drawn = section.door(DOOR)
    spans = {}
    for name in ("depth", "clear", "room"):
        numbers = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", part(drawn, f"dimension {name}")[0])]
        spans[name] = abs(numbers[2] - numbers[0])
    assert spans["depth"] / spans["clear"] == pytest.approx(58 / 62, abs=0.005)
    assert spans["room"] / spans["clear"] == pytest.approx(20 / 62, abs=0.005)


@pytest.mark.parametrize(
    ("drawn", "gone"),
    [
        (front.opening(replace(FACE, flange=DrawnOutline("round", UNKNOWN, UNKNOWN))), "flange"),
        (front.opening(replace(FACE, gear_bolts=None)), "gear-bolt"),
        (dash.opening(replace(RADIO, trim=None)), "trim"),
        (dash.opening(replace(RADIO, chassis=UNKNOWN)), "chassis"),
        (dash.opening(replace(RADIO, clear=UNKNOWN)), "behind"),
        (section.door(replace(DOOR, room=UNKNOWN)), "grille"),
        (section.door(replace(DOOR, clear=UNKNOWN)), "behind"),
        (section.door(replace(DOOR, speaker=replace(SPEAKER, protrusion=UNKNOWN))), "cone"),
    ],
)
def test_what_is_not_known_is_not_drawn_but_said(drawn: str, gone: str) -> None:
    assert part(drawn, gone) == []
    assert "not recorded" in drawn


def test_names_from_a_record_cannot_break_out() -> None:
    nasty = '<script>alert("x")</script> & more'
    for drawn in (
        front.opening(replace(FACE, gear=nasty, title=nasty)),
        dash.opening(replace(RADIO, gear=nasty, kit=nasty, behind=nasty)),
        section.door(replace(DOOR, title=nasty, behind=nasty, speaker=replace(SPEAKER, name=nasty))),
    ):
        assert "<script" not in drawn
        assert_readable(drawn)


MEASURES = st.one_of(st.just(UNKNOWN), st.floats(0.5, 300).map(lambda value: mm(round(value, 2))))
KNOWN = st.floats(30, 300).map(lambda value: mm(round(value, 2)))
NAMES = st.sampled_from(["Skerrowe Shoal", "A", "Tidewrack Longshore Reference 69 second edition", "Wm" * 9])


@st.composite
def outlines(draw: st.DrawFn) -> DrawnOutline:
    if draw(st.booleans()):
        across = draw(MEASURES)
        return DrawnOutline("round", across, across)
    return DrawnOutline(draw(st.sampled_from(["oval", "rectangle"])), draw(MEASURES), draw(MEASURES))


PATTERNS = st.builds(Pattern, st.booleans(), st.integers(2, 16), MEASURES, MEASURES)


@given(st.builds(Front, NAMES, outlines(), st.none() | PATTERNS, st.none() | outlines(), NAMES, st.none() | outlines(), st.none() | outlines(), st.none() | PATTERNS, st.booleans()))  # fmt: skip
@settings(max_examples=150, deadline=None)
def test_no_texts_meet_from_the_front(made: Front) -> None:
    assert_readable(front.opening(made))


FRAMES = st.builds(Frame, MEASURES, MEASURES)


@given(st.builds(Dash, NAMES, FRAMES, NAMES, st.none() | FRAMES, st.none() | FRAMES, NAMES, st.none() | FRAMES, st.none() | FRAMES, MEASURES, NAMES, MEASURES, MEASURES, st.sampled_from(["", "fits, 3 mm to spare"]), st.booleans()))  # fmt: skip
@settings(max_examples=150, deadline=None)
def test_no_texts_meet_in_a_dash(made: Dash) -> None:
    assert_readable(dash.opening(made))


SPEAKERS = st.builds(Speaker, NAMES, MEASURES, MEASURES, MEASURES, MEASURES, MEASURES)
MARGINS = st.none() | st.builds(
    Margin, st.just("8.56 mm (0.34 in) short"), st.sampled_from(["fits", "close", "strikes", "unknown"])
)


@given(st.builds(
    Section, NAMES, MEASURES, MEASURES, MEASURES, st.sampled_from(["skin", "bracket", "other"]), st.just("door skin"), NAMES, st.just("grille"),
    st.none() | st.floats(0, 20), st.just("3 deg"), st.none() | MEASURES, st.booleans(), st.none() | MEASURES, NAMES, st.none() | MEASURES,
    st.none() | SPEAKERS, MARGINS, MARGINS,
))  # fmt: skip
@settings(max_examples=200, deadline=None)
def test_no_texts_meet_in_a_section(made: Section) -> None:
    assert_readable(section.door(made))
