"""An opening from the front: shapes and bolt holes to scale, a mismatch that is seen, nothing drawn that is not known."""

import math
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from svg_reading import Point, assert_sound, described, extent, length, part, size, texts
from undertrim.publish.pictures.drawings.front import DrawnOutline, Front, Measure, Pattern, opening

UNKNOWN = Measure()


def mm(value: float) -> Measure:
    return Measure(value, f"{value:g} mm ({value / 25.4:.2f} in)")


def circle(across: float) -> DrawnOutline:
    return DrawnOutline("round", mm(across), mm(across))


def oval(width: float, height: float) -> DrawnOutline:
    return DrawnOutline("oval", mm(width), mm(height))


def ring(count: int, across: float) -> Pattern:
    return Pattern(True, count, mm(across), UNKNOWN)


def corners(count: int, width: float, height: float) -> Pattern:
    return Pattern(False, count, mm(width), mm(height))


ROUND = Front(
    "Front door",
    circle(146),
    ring(4, 160),
    DrawnOutline("rectangle", mm(188), mm(182)),
    "Sandmartin Bank 65",
    circle(130),
    circle(169),
    ring(4, 160),
)
OVAL = Front(
    "Cab corner",
    oval(153, 223),
    corners(4, 110, 165),
    None,
    "Skerrowe Longshore 69",
    oval(150, 220),
    oval(166, 237),
    corners(4, 110, 165),
)


def middles(drawn: str, name: str) -> list[Point]:
    boxes = [extent(path) for path in part(drawn, name)]
    return [((box.left + box.right) / 2, (box.top + box.bottom) / 2) for box in boxes]


def test_round_shapes_and_their_dimensions_have_one_scale() -> None:
    drawn = opening(ROUND)
    unit = length(drawn, "hole") / 146
    assert size(part(drawn, "hole")[0]) == pytest.approx((146 * unit, 146 * unit), abs=0.02)
    assert size(part(drawn, "basket")[0]) == pytest.approx((130 * unit, 130 * unit), abs=0.02)
    assert size(part(drawn, "flange")[0]) == pytest.approx((169 * unit, 169 * unit), abs=0.02)
    assert size(part(drawn, "panel")[0]) == pytest.approx((188 * unit, 182 * unit), abs=0.02)
    assert length(drawn, "bolts") == pytest.approx(160 * unit, abs=0.02)
    assert size(part(drawn, "bolt-circle")[0])[0] == pytest.approx(160 * unit, abs=0.02)


def test_an_oval_keeps_both_axes_and_both_are_dimensioned() -> None:
    drawn = opening(OVAL)
    unit = length(drawn, "hole") / 153
    assert size(part(drawn, "hole")[0]) == pytest.approx((153 * unit, 223 * unit), abs=0.02)
    assert length(drawn, "hole-height") == pytest.approx(223 * unit, abs=0.02)
    assert length(drawn, "bolts") == pytest.approx(110 * unit, abs=0.02)
    assert length(drawn, "bolts-height") == pytest.approx(165 * unit, abs=0.02)
    for x, y in middles(drawn, "bolt"):
        (cx, cy) = middles(drawn, "hole")[0]
        assert (abs(x - cx), abs(y - cy)) == pytest.approx((55 * unit, 82.5 * unit), abs=0.02)


@pytest.mark.parametrize("count", [2, 3, 4, 5, 6, 8])
def test_holes_stand_evenly_on_their_circle(count: int) -> None:
    drawn = opening(replace(ROUND, bolts=ring(count, 160)))
    unit = length(drawn, "hole") / 146
    ((cx, cy),) = middles(drawn, "hole")
    found = middles(drawn, "bolt")
    assert len(found) == count
    assert [math.dist((cx, cy), place) for place in found] == pytest.approx([80 * unit] * count, abs=0.02)
    angles = sorted(math.degrees(math.atan2(y - cy, x - cx)) % 360 for x, y in found)
    steps = [(b - a) % 360 for a, b in zip(angles, angles[1:] + angles[:1], strict=True)]
    assert steps == pytest.approx([360 / count] * count, abs=0.05)


def test_matching_holes_lie_on_each_other_and_others_do_not() -> None:
    same = opening(ROUND)
    pairs = list(zip(middles(same, "bolt"), middles(same, "gear-bolt"), strict=True))
    assert [math.dist(*pair) for pair in pairs] == pytest.approx([0] * 4, abs=0.02)
    other = opening(replace(ROUND, gear_bolts=ring(4, 150)))
    unit = length(other, "hole") / 146
    pairs = list(zip(middles(other, "bolt"), middles(other, "gear-bolt"), strict=True))
    assert [math.dist(*pair) for pair in pairs] == pytest.approx([5 * unit] * 4, abs=0.02)


def test_a_circle_is_turned_so_that_it_meets_a_rectangle_with_its_diagonal() -> None:
    """3-4-5: corners of 120 by 90 lie on a circle of 150; of four holes at right angles two can meet it."""
    drawn = opening(replace(OVAL, bolts=corners(4, 120, 90), gear_bolts=ring(4, 150)))
    distances = [min(math.dist(a, b) for b in middles(drawn, "gear-bolt")) for a in middles(drawn, "bolt")]
    assert sum(distance < 0.02 for distance in distances) == 2
    square = opening(replace(OVAL, bolts=corners(4, 120, 120), gear_bolts=ring(4, 120 * math.sqrt(2))))
    assert all(min(math.dist(a, b) for b in middles(square, "gear-bolt")) < 0.02 for a in middles(square, "bolt"))


def test_turning_exchanges_the_sides_of_the_gear_alone() -> None:
    drawn = opening(replace(OVAL, turned=True))
    unit = length(drawn, "hole") / 153
    assert size(part(drawn, "hole")[0]) == pytest.approx((153 * unit, 223 * unit), abs=0.02)
    assert size(part(drawn, "basket")[0]) == pytest.approx((220 * unit, 150 * unit), abs=0.02)
    ((cx, cy),) = middles(drawn, "hole")
    for x, y in middles(drawn, "gear-bolt"):
        assert (abs(x - cx), abs(y - cy)) == pytest.approx((82.5 * unit, 55 * unit), abs=0.02)
    assert "turned by 90 degrees" in described(drawn)


@pytest.mark.parametrize(("count", "marks", "lost"), [(2, 0, "2 of 2"), (3, 0, "3 of 3"), (4, 4, ""), (6, 4, "2 of 6")])
def test_holes_of_a_rectangle_are_drawn_where_their_place_is_known(count: int, marks: int, lost: str) -> None:
    drawn = opening(replace(OVAL, bolts=corners(count, 110, 165)))
    assert len(part(drawn, "bolt")) == marks
    assert ("sit is not recorded" in described(drawn)) == bool(lost)
    assert lost in described(drawn)


@pytest.mark.parametrize(
    ("lost", "gone", "said"),
    [
        (replace(ROUND, hole=DrawnOutline("round", UNKNOWN, UNKNOWN)), ["hole", "dimension hole"], "hole: not recorded"),
        (replace(ROUND, hole=DrawnOutline("oval", mm(153), UNKNOWN)), ["hole", "dimension hole"], "hole: 153 mm (6.02 in) × not recorded"),
        (replace(ROUND, bolts=None), ["bolt", "bolt-circle", "dimension bolts"], "bolt holes of the car: not recorded"),
        (replace(ROUND, bolts=Pattern(True, 4, Measure(None, "unknown"), UNKNOWN)), ["bolt", "bolt-circle"], "bolt holes of the car: 4 on a circle of unknown"),
        (replace(ROUND, flange=None), ["flange"], "flange of Sandmartin Bank 65: not recorded"),
        (replace(ROUND, gear_bolts=None), ["gear-bolt"], "bolt holes of Sandmartin Bank 65: not recorded"),
    ],
)  # fmt: skip
def test_what_is_not_known_is_not_drawn_but_said(lost: Front, gone: list[str], said: str) -> None:
    drawn = opening(lost)
    assert [name for name in gone if part(drawn, name)] == []
    assert said in described(drawn)
    assert said in " ".join(line.words for line in texts(drawn))
    assert_sound(drawn)


def test_nothing_known_draws_nothing_at_all() -> None:
    drawn = opening(Front("x", DrawnOutline("round", UNKNOWN, UNKNOWN), gear="Pellworth Nought"))
    assert "<path" not in drawn
    assert "is drawn" not in drawn
    assert_sound(drawn)


def test_two_axes_cross_in_the_middle_as_chain_lines() -> None:
    drawn = opening(ROUND)
    level, upright = (extent(path) for path in part(drawn, "axis"))
    ((cx, cy),) = middles(drawn, "hole")
    assert (level.top, upright.left) == pytest.approx((cy, cx), abs=0.02)
    assert drawn.count('stroke-dasharray="16 3 2 3"') >= 2


def test_bolt_holes_of_car_and_gear_have_different_marks() -> None:
    drawn = opening(ROUND)
    assert all("A" in path for path in part(drawn, "bolt"))
    assert all("A" not in path and path.count("L") == 2 for path in part(drawn, "gear-bolt"))


def test_what_else_is_to_be_said_stands_below() -> None:
    drawn = opening(replace(ROUND, more=("It goes on a ring.",)))
    assert "It goes on a ring." in described(drawn)
    assert "It goes on a ring." in {line.words for line in texts(drawn)}


def test_names_cannot_break_out() -> None:
    nasty = '<script>alert("x")</script> & \x00 "quoted"'
    drawn = opening(replace(ROUND, title=nasty, gear=nasty))
    assert "<script" not in drawn
    assert_sound(drawn)


MEASURES = st.one_of(st.just(UNKNOWN), st.floats(0.5, 300).map(lambda value: mm(round(value, 2))))
NAMES = st.sampled_from(["Pellworth Cove", "", "Tidewrack Longshore Reference 69 second edition", "W" * 40])
OUTLINES = st.one_of(
    MEASURES.map(lambda across: DrawnOutline("round", across, across)),
    st.builds(DrawnOutline, st.sampled_from(["oval", "rectangle"]), MEASURES, MEASURES),
)
PATTERNS = st.builds(Pattern, st.booleans(), st.integers(1, 16), MEASURES, MEASURES)
FRONTS = st.builds(
    Front, NAMES, OUTLINES, st.none() | PATTERNS, st.none() | OUTLINES, NAMES,
    st.none() | OUTLINES, st.none() | OUTLINES, st.none() | PATTERNS, st.booleans(),
)  # fmt: skip


@given(FRONTS, st.sampled_from([240, 320, 560]))
@settings(max_examples=250, deadline=None)
def test_whatever_is_drawn_can_be_read(front: Front, width: int) -> None:
    assert_sound(opening(front, width))


@given(FRONTS)
@settings(max_examples=150, deadline=None)
def test_every_known_outline_is_drawn_to_one_scale_and_no_other(front: Front) -> None:
    drawn, posed = opening(front), front.posed
    shapes = {"hole": posed.hole, "panel": posed.panel, "basket": posed.basket, "flange": posed.flange}
    scales = []
    for name, shape in shapes.items():
        assert len(part(drawn, name)) == (shape is not None and shape.known)
        for path in part(drawn, name):
            assert shape
            (wide, high), across, up = size(path), shape.width.mm or 0, shape.height.mm or 0
            assert wide * up == pytest.approx(high * across, abs=0.03 * (across + up))
            scales.append((wide, across))
    for (wide, across), (other, other_across) in pairwise(scales):
        assert wide * other_across == pytest.approx(other * across, abs=0.03 * (across + other_across))
