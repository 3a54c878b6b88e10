"""A speaker in section: to scale along and across, what is not known is not drawn, texts that can be read."""

# Long because the sections drawn at random name each field that a section has, a line each.

import math
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from svg_reading import assert_sound, described, extent, length, part, points, size, strokes, texts
from undertrim.publish.pictures.drawings.axis import axis
from undertrim.publish.pictures.drawings.section import Margin, Measure, Section, Speaker, Verdict, door
from undertrim.words import say


def mm(value: float) -> Measure:
    return Measure(value, f"{value:g} mm ({value / 25.4:.2f} in)")


UNKNOWN = Measure()
SPEAKER = Speaker("Sandmartin Bank 65", mm(68), mm(9), mm(169), mm(130), mm(102))
DOOR = Section(
    "Front door",
    mm(62),
    mm(31),
    mm(144),
    behind="Window glass",
    bracket=mm(16),
    bracket_stays=True,
    gasket=mm(1.5),
    speaker=SPEAKER,
    margin_behind=Margin("6.5 mm (0.26 in) to spare", "fits"),
    margin_front=Margin("1.5 mm (0.06 in) to spare", "close"),
)


def unit(drawn: str, name: str, value: float) -> float:
    return length(drawn, name) / value


def test_all_lengths_along_the_axis_have_one_scale() -> None:
    drawn = door(DOOR)
    scale = unit(drawn, "clear", 62)
    measured = {"room": 31, "bracket": 16, "gasket": 1.5, "depth": 68, "protrusion": 9}
    for name, value in measured.items():
        assert length(drawn, name) == pytest.approx(value * scale, abs=0.02), name
    # The flange stands 16 + 1.5 above the skin: 62 + 17.5 - 68 are left behind, 31 - 17.5 - 9 in front.
    assert length(drawn, "behind") == pytest.approx(11.5 * scale, abs=0.02)
    assert length(drawn, "front") == pytest.approx(4.5 * scale, abs=0.02)


def test_radii_have_the_same_scale() -> None:
    drawn = door(DOOR)
    scale = unit(drawn, "clear", 62)
    (axis_line,) = part(drawn, "axis")
    centre = extent(axis_line).top
    (flange,), (body,), (skin,) = (part(drawn, name) for name in ("flange", "body", "skin"))
    assert centre - extent(flange).top == pytest.approx(169 / 2 * scale, abs=0.02)
    assert centre - extent(body).top == pytest.approx(130 / 2 * scale, abs=0.02)
    assert centre - extent(skin).bottom == pytest.approx(144 / 2 * scale, abs=0.02)
    assert centre - points(body)[-2][1] == pytest.approx(102 / 2 * scale, abs=0.02)


def test_what_holds_the_speaker_lies_face_on_face() -> None:
    drawn = door(replace(DOOR, spacer=mm(12)))
    (skin,), (bracket,), (spacer,), (gasket,), (flange,) = (
        part(drawn, name) for name in ("skin", "bracket", "spacer", "gasket", "flange")
    )
    assert extent(bracket).right == pytest.approx(extent(skin).left, abs=0.02)
    assert extent(spacer).right == pytest.approx(extent(bracket).left, abs=0.02)
    assert extent(gasket).right == pytest.approx(extent(spacer).left, abs=0.02)
    assert extent(flange).right == pytest.approx(extent(gasket).left, abs=0.02)


def test_a_gap_that_is_too_small_is_drawn_the_other_way_round() -> None:
    """Glass at 47 mm from the skin, mounting depth 55.56 mm, no bracket: 8.56 mm too deep."""
    flush = Section("x", mm(47), mm(24), mm(130), speaker=replace(SPEAKER, depth=mm(55.56)))
    drawn = door(replace(flush, margin_behind=Margin("8.56 mm short", "strikes")))
    assert length(drawn, "behind") == pytest.approx(8.56 * unit(drawn, "clear", 47), abs=0.02)
    (behind,), (body,) = part(drawn, "behind"), part(drawn, "body")
    assert extent(body).right > extent(behind).right
    assert len(part(drawn, "strike")) == 1


@pytest.mark.parametrize(
    ("verdict", "marks"), [("fits", 0), ("close", 0), ("too close", 0), ("strikes", 2), ("unknown", 0)]
)
def test_only_what_strikes_is_marked(verdict: Verdict, marks: int) -> None:
    drawn = door(replace(DOOR, margin_behind=Margin("a", verdict), margin_front=Margin("b", verdict)))
    assert len(part(drawn, "strike")) == marks
    assert ("it strikes here" in drawn) == bool(marks)
    assert f"behind, {verdict}: a" in described(drawn)
    assert f"in front, {verdict}: b" in described(drawn)


def test_a_lean_has_its_angle_and_its_depth_at_the_axis() -> None:
    drawn = door(replace(DOOR, lean=6, lean_text="6 deg"))
    (x, y), (to_x, to_y) = points(part(drawn, "behind")[0])
    assert math.degrees(math.atan2(to_x - x, to_y - y)) == pytest.approx(6, abs=0.05)
    scale = unit(drawn, "clear", 62)
    assert to_x - extent(part(drawn, "skin")[0]).left == pytest.approx(62 * scale, abs=0.02)
    # At the edge of the magnet, 51 mm from the axis, it is 51 tan 6 nearer; from there its extension line starts.
    starts = [start for start, _ in strokes(part(drawn, "extension"))]
    near = 62 - 51 * math.tan(math.radians(6))
    edge = extent(part(drawn, "skin")[0]).left + near * scale, to_y - 51 * scale
    assert min(math.dist(edge, start) for start in starts) < 0.05
    assert length(drawn, "behind") == pytest.approx((11.5 - 51 * math.tan(math.radians(6))) * scale, abs=0.03)


@pytest.mark.parametrize("magnet", [mm(102), UNKNOWN])
def test_of_what_leans_by_an_unknown_angle_only_a_stub_at_the_axis_is_drawn(magnet: Measure) -> None:
    drawn = door(replace(DOOR, lean_text="unknown", speaker=replace(SPEAKER, magnet=magnet)))
    (behind,), (axis_line,) = part(drawn, "behind"), part(drawn, "axis")
    assert size(behind) == pytest.approx((0, 16), abs=0.02)
    assert extent(behind).bottom == extent(axis_line).top
    assert "lean of the Window glass: unknown" in described(drawn)
    assert part(drawn, "dimension behind") == []
    assert part(drawn, "dimension clear")
    assert size(part(door(replace(DOOR, lean=0, lean_text="0 deg")), "behind")[0])[1] > 16


def test_what_else_is_to_be_said_stands_below() -> None:
    drawn = door(replace(DOOR, more=("Drawn without a spacer.",)))
    assert "Drawn without a spacer." in described(drawn)
    assert "Drawn without a spacer." in {line.words for line in texts(drawn)}


def test_depths_from_the_bracket_count_from_its_face() -> None:
    stays = replace(DOOR, datum="bracket", datum_name="bracket face")
    assert (axis(stays).skin, axis(stays).seat) == (16, -1.5)
    off = replace(stays, bracket_stays=False)
    assert (axis(off).skin, axis(off).seat) == (16, 14.5)
    assert part(door(off), "bracket") == []
    assert part(door(off), "datum")


@pytest.mark.parametrize(
    "lost",
    [replace(DOOR, bracket=UNKNOWN), replace(DOOR, spacer=UNKNOWN), replace(DOOR, gasket=UNKNOWN), replace(DOOR, datum="other")],
)  # fmt: skip
def test_a_speaker_without_a_known_seat_is_not_drawn(lost: Section) -> None:
    drawn = door(lost)
    for name in ("flange", "body", "envelope", "cone", "dimension depth", "dimension behind", "dimension front"):
        assert part(drawn, name) == [], name
    assert "Sandmartin Bank 65: where its flange sits is not known" in described(drawn)
    assert "behind, fits: 6.5 mm" in described(drawn)


@pytest.mark.parametrize(
    ("lost", "gone", "said"),
    [
        (replace(DOOR, clear=Measure(None, "unknown")), ["behind", "dimension clear", "dimension behind"], "clear depth: unknown"),
        (replace(DOOR, room=UNKNOWN), ["grille", "dimension room", "dimension front"], "room to the grille: not recorded"),
        (replace(DOOR, hole=UNKNOWN), [], "hole: not recorded"),
        (replace(DOOR, speaker=replace(SPEAKER, depth=UNKNOWN)), ["body", "envelope", "dimension depth"], "mounting depth: not recorded"),
        (replace(DOOR, speaker=replace(SPEAKER, protrusion=UNKNOWN)), ["cone", "dimension front"], "protrusion of the cone: not recorded"),
        (replace(DOOR, speaker=replace(SPEAKER, flange=UNKNOWN)), ["flange"], "flange: not recorded"),
        (replace(DOOR, speaker=replace(SPEAKER, basket=UNKNOWN)), ["body"], "basket: not recorded"),
        (replace(DOOR, lean=4, speaker=replace(SPEAKER, magnet=UNKNOWN)), ["body", "dimension behind"], "magnet: not recorded"),
    ],
)  # fmt: skip
def test_what_is_not_known_is_not_drawn_but_said(lost: Section, gone: list[str], said: str) -> None:
    drawn = door(lost)
    assert [name for name in gone if part(drawn, name)] == []
    assert said in described(drawn)
    assert any(said.split(":")[0] in line.words for line in texts(drawn))
    assert_sound(drawn)


def test_an_empty_opening_has_its_hole_dimensioned_to_the_axis() -> None:
    drawn = door(replace(DOOR, speaker=None, margin_behind=None, margin_front=None, bracket_stays=False))
    assert length(drawn, "hole") == pytest.approx(72 * unit(drawn, "clear", 62), abs=0.02)
    assert_sound(drawn)


def test_both_sides_are_named_and_every_number_is_in_the_description() -> None:
    drawn = door(replace(DOOR, near="cabin side", far="outside"))
    assert {"← cabin side", "outside →"} <= {line.words for line in texts(drawn)}
    for measure in (DOOR.clear, DOOR.room, DOOR.bracket, DOOR.gasket, SPEAKER.depth, SPEAKER.protrusion):
        assert measure
        assert say(measure.text) in described(drawn)


def test_a_name_too_long_for_its_row_stands_whole_below() -> None:
    long = "Air duct, measured in the tighter right-hand drive van of the first year"
    drawn = door(replace(DOOR, behind=long))
    assert any(line.words.endswith("...") for line in texts(drawn))
    assert "of the first year" in " ".join(line.words for line in texts(drawn))
    assert long in described(drawn)


def test_names_cannot_break_out() -> None:
    nasty = '<script>alert("x")</script> & \x00 "quoted"'
    drawn = door(replace(DOOR, title=nasty, behind=nasty, far=nasty, speaker=replace(SPEAKER, name=nasty)))
    assert "<script" not in drawn
    assert_sound(drawn)


MEASURES = st.one_of(st.just(UNKNOWN), st.floats(0, 300).map(lambda value: mm(round(value, 2))))
NAMES = st.sampled_from(["Pellworth Cove", "A", "", "Tidewrack Longshore Reference 69 second edition", "W" * 40])
SPEAKERS = st.builds(Speaker, NAMES, *[MEASURES] * 5)
MARGINS = st.none() | st.builds(
    Margin,
    st.sampled_from(
        ["8.56 mm (0.34 in) short", "11.5 mm (0.45 in) free, of which 5 mm (0.2 in) are wanted to the glass"]
    ),
    st.sampled_from(["fits", "close", "too close", "strikes", "unknown"]),
)
SECTIONS = st.builds(
    Section,
    title=NAMES,
    clear=MEASURES,
    room=MEASURES,
    hole=MEASURES,
    datum=st.sampled_from(["skin", "bracket", "other"]),
    datum_name=NAMES,
    behind=NAMES,
    lean=st.none() | st.floats(0, 45),
    lean_text=st.sampled_from(["3 deg", ""]),
    bracket=st.none() | MEASURES,
    bracket_stays=st.booleans(),
    spacer=st.none() | MEASURES,
    spacer_name=NAMES,
    gasket=st.none() | MEASURES,
    speaker=st.none() | SPEAKERS,
    margin_behind=MARGINS,
    margin_front=MARGINS,
    more=st.sampled_from([(), ("Drawn without what would have to be got: a spacer 3 mm to 7 mm high.",)]),
)


@given(SECTIONS, st.sampled_from([240, 320, 560]))
@settings(max_examples=250, deadline=None)
def test_whatever_is_drawn_can_be_read(section: Section, width: int) -> None:
    assert_sound(door(section, width))


@given(SECTIONS)
@settings(max_examples=200, deadline=None)
def test_whatever_is_drawn_is_to_one_scale_and_known(section: Section) -> None:
    drawn = door(section)
    speaker = section.speaker or Speaker("")
    wanted = {"clear": section.clear, "room": section.room, "depth": speaker.depth, "protrusion": speaker.protrusion}
    pairs = [
        (length(drawn, name), measure.mm)
        for name, measure in wanted.items()
        if part(drawn, f"dimension {name}") and measure.mm is not None
    ]
    known = [name for name, measure in wanted.items() if measure.mm is not None]
    assert all(name in known for name in wanted if part(drawn, f"dimension {name}"))
    for (drawn_long, long), (other_drawn, other) in pairwise(pairs):
        assert drawn_long * other == pytest.approx(other_drawn * long, abs=0.02 * (long + other))
