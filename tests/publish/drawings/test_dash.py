"""A receiver in the dash: both views to one scale, what is left over hatched, nothing drawn that is not known."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from svg_reading import assert_sound, described, extent, length, part, points, size, texts
from undertrim.publish.pictures.drawings.dash import Dash, Frame, Measure, opening

UNKNOWN = Measure()


def mm(value: float) -> Measure:
    return Measure(value, f"{value:g} mm ({value / 25.4:.2f} in)")


def frame(width: float, height: float) -> Frame:
    return Frame(mm(width), mm(height))


RADIO = Dash(
    "Radio opening",
    frame(182, 112),
    "Sandmartin DK",
    frame(182, 104),
    frame(238, 140),
    "Sandmartin Burrow 1",
    frame(180, 50),
    frame(188, 58),
    mm(172),
    "Cross-beam behind the dash",
    mm(160),
    mm(30),
    "strikes, 18 mm (0.71 in) short",
    strikes=True,
)
SINGLE = Dash("Van", frame(182, 53), gear="Pellworth Brae 10", body=frame(180, 50), clear=mm(176), chassis=mm(98), plug_room=mm(30), margin="fits, 48 mm (1.89 in) to spare")  # fmt: skip


def test_both_views_have_one_scale() -> None:
    drawn = opening(RADIO)
    unit = length(drawn, "width") / 182
    sizes = {"face": (182, 112), "kit": (182, 104), "clear-front": (238, 140), "body": (180, 50), "trim": (188, 58)}
    for name, (width, height) in sizes.items():
        assert size(part(drawn, name)[0]) == pytest.approx((width * unit, height * unit), abs=0.02), name
    assert length(drawn, "height") == pytest.approx(112 * unit, abs=0.02)
    for name, deep in {"clear": 172, "chassis": 160, "plugs": 30, "margin": 18}.items():
        assert length(drawn, name) == pytest.approx(deep * unit, abs=0.02), name
    assert size(part(drawn, "chassis")[0]) == pytest.approx((160 * unit, 50 * unit), abs=0.02)
    assert size(part(drawn, "plugs")[0])[0] == pytest.approx(30 * unit, abs=0.02)


def test_the_body_stands_in_the_middle_of_the_lower_edge_of_what_holds_it() -> None:
    for dash, holder in ((RADIO, "kit"), (SINGLE, "face")):
        drawn = opening(dash)
        (held,), (body,) = part(drawn, holder), part(drawn, "body")
        assert extent(body).bottom == pytest.approx(extent(held).bottom, abs=0.02)
        assert extent(body).left + extent(body).right == pytest.approx(extent(held).left + extent(held).right, abs=0.03)


def test_what_is_left_over_is_hatched_between_body_and_upper_edge() -> None:
    drawn = opening(RADIO)
    hatched, body, kit = (extent(part(drawn, name)[0]) for name in ("left-over", "body", "kit"))
    assert kit.top - 0.02 <= hatched.top
    assert hatched.bottom <= body.top + 0.02
    assert (hatched.left, hatched.right) == pytest.approx((kit.left, kit.right), abs=4)
    assert "left over: 54 mm (2.13 in) of height" in described(drawn)


@pytest.mark.parametrize("body", [frame(180, 104), frame(180, 120), frame(190, 50)])
def test_nothing_is_left_over_of_a_body_that_is_as_high_or_does_not_go_in(body: Frame) -> None:
    drawn = opening(replace(RADIO, body=body))
    assert part(drawn, "left-over") == []
    assert "left over" not in drawn


def test_a_body_higher_than_the_opening_stands_out_above_it() -> None:
    drawn = opening(replace(SINGLE, body=frame(180, 100)))
    body, face = (extent(part(drawn, name)[0]) for name in ("body", "face"))
    assert face.top - body.top == pytest.approx(47 * length(drawn, "width") / 182, abs=0.03)


def test_what_strikes_is_marked_and_lies_beyond_what_is_behind() -> None:
    drawn = opening(RADIO)
    assert len(part(drawn, "strike")) == 1
    assert extent(part(drawn, "plugs")[0]).right > extent(part(drawn, "behind")[0]).right
    assert part(opening(SINGLE), "strike") == []
    assert "behind, fits, 48 mm (1.89 in) to spare" in described(opening(SINGLE))


def test_the_dash_is_open_in_front_of_the_chassis() -> None:
    drawn = opening(RADIO)
    ends = [y for _, y in points(part(drawn, "front")[0])]
    unit = length(drawn, "width") / 182
    assert ends[2] - ends[1] == pytest.approx(104 * unit, abs=0.02)


@pytest.mark.parametrize(
    ("lost", "gone", "said"),
    [
        (replace(RADIO, face=Frame(mm(182), UNKNOWN)), ["face", "dimension width", "dimension height"], "opening in the dash: 182 mm (7.17 in) × not recorded"),
        (replace(RADIO, body=None), ["body", "left-over"], "body of Sandmartin Burrow 1: not recorded"),
        (replace(RADIO, kit_opening=Frame()), ["kit", "left-over"], "opening of Sandmartin DK: not recorded"),
        (replace(RADIO, clear=Measure(None, "unknown")), ["behind", "strike", "dimension clear", "dimension margin"], "clear depth: unknown"),
        (replace(RADIO, chassis=UNKNOWN), ["chassis", "plugs", "strike", "dimension margin"], "chassis depth: not recorded"),
        (replace(RADIO, plug_room=UNKNOWN), ["plugs", "dimension plugs", "dimension margin"], "room for its plugs: not recorded"),
        (replace(RADIO, clear_front=None), ["clear-front"], "clear room in front of the dash: not recorded"),
        (replace(RADIO, trim=Frame()), ["trim"], "trim of Sandmartin Burrow 1: not recorded"),
    ],
)  # fmt: skip
def test_what_is_not_known_is_not_drawn_but_said(lost: Dash, gone: list[str], said: str) -> None:
    drawn = opening(lost)
    assert [name for name in gone if part(drawn, name)] == []
    assert said in described(drawn)
    assert said in " ".join(line.words for line in texts(drawn))
    assert_sound(drawn)


def test_a_margin_that_cannot_be_drawn_is_still_said() -> None:
    drawn = opening(replace(RADIO, clear=UNKNOWN, margin="unknown, cannot be told"))
    assert "behind, unknown, cannot be told" in described(drawn)


def test_nothing_known_draws_nothing_at_all() -> None:
    drawn = opening(Dash("x", Frame(), gear="Pellworth Nought"))
    assert "<path" not in drawn
    assert "is drawn" not in drawn
    assert_sound(drawn)


def test_sketched_heights_are_said() -> None:
    assert "Heights from the side are sketched" in described(opening(replace(SINGLE, body=None)))
    assert "Heights from the side are sketched" not in described(opening(SINGLE))


def test_what_else_is_to_be_said_stands_below() -> None:
    drawn = opening(replace(RADIO, more=("It goes on a ring.",)))
    assert "It goes on a ring." in described(drawn)
    assert "It goes on a ring." in {line.words for line in texts(drawn)}


def test_names_cannot_break_out() -> None:
    nasty = '<script>alert("x")</script> & \x00 "quoted"'
    drawn = opening(replace(RADIO, title=nasty, gear=nasty, kit=nasty, behind=nasty, margin=nasty))
    assert "<script" not in drawn
    assert_sound(drawn)


MEASURES = st.one_of(st.just(UNKNOWN), st.floats(0, 500).map(lambda value: mm(round(value, 2))))
NAMES = st.sampled_from(["Pellworth Cove", "", "Tidewrack Longshore Reference 69 second edition", "W" * 40])
FRAMES = st.builds(Frame, MEASURES, MEASURES)
MARGINS = st.sampled_from(["", "fits, 3 mm (0.12 in) to spare", "unknown, cannot be told"])
DASHES = st.builds(
    Dash, NAMES, FRAMES, NAMES, st.none() | FRAMES, st.none() | FRAMES, NAMES, st.none() | FRAMES,
    st.none() | FRAMES, MEASURES, NAMES, MEASURES, MEASURES, MARGINS, st.booleans(),
)  # fmt: skip


@given(DASHES, st.sampled_from([240, 320, 560]))
@settings(max_examples=250, deadline=None)
def test_whatever_is_drawn_can_be_read(dash: Dash, width: int) -> None:
    assert_sound(opening(dash, width))
