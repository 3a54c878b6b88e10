"""What holds of every fit: monotone in depth, the same in either unit and turned, and marginal only within its uncertainty."""

from dataclasses import replace
from math import cos, pi, sin
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.kinds.speaker import fit as speaker
from undertrim.derive.fit.kinds.speaker.room import room
from undertrim.derive.fit.kinds.speaker.seats import seats
from undertrim.derive.fit.margins import compare, judge, typed
from undertrim.derive.fit.outline import Outline, contain, outline
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import KINDS
from undertrim.record.model import Blank, Bolts, Depth, Face, Hole
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity, parse

USUAL = clearances()
SIZES = st.integers(60, 250)
SHAPES = st.sampled_from(["round", "oval", "rectangle"])


def mm(value: float) -> Quantity:
    return parse(f"{value} mm", "length")


def hole(shape: str, width: int, height: int) -> Hole:
    return Hole(shape, diameter=mm(width)) if shape == "round" else Hole(shape, width=mm(width), height=mm(height))


HOLES = st.builds(hole, SHAPES, SIZES, SIZES)
BOLTS = st.builds(
    lambda ring, width, height: (
        Bolts("circle", 4, diameter=mm(width)) if ring else Bolts("rectangle", 4, width=mm(width), height=mm(height))
    ),
    st.booleans(),
    SIZES,
    SIZES,
)


@st.composite
def speakers(draw: st.DrawFn) -> Stocked[SpeakerGear]:
    facts: dict[str, Any] = {"basket": draw(HOLES), "flange": draw(HOLES), "bolts": draw(BOLTS)}
    facts |= {"depth": mm(draw(st.integers(20, 90))), "protrusion": mm(draw(st.integers(0, 20))), "gasket": Blank.NONE}
    return Stocked("one", SpeakerGear("Skerrowe", "One", **facts))


@st.composite
def openings(draw: st.DrawFn) -> SpeakerOpening:
    depth = Depth(
        mm(draw(st.integers(20, 100))), draw(st.sampled_from(["skin", "bracket"])), "no-glass", leans=Blank.NONE
    )
    facts: dict[str, Any] = {"hole": draw(HOLES), "bolts": draw(BOLTS), "depth": depth}
    facts |= {"room_to_grille": mm(draw(st.integers(2, 60))), "panel": Face(mm(300), mm(300))}
    facts |= {"factory_spacer": draw(st.one_of(st.just(Blank.NONE), st.integers(2, 30).map(mm)))}
    return SpeakerOpening("side", "Side", (), **facts)


@st.composite
def pairs(draw: st.DrawFn) -> tuple[Stocked[SpeakerGear], SpeakerOpening]:
    """A speaker with an opening that has its hole, flange and bolts more often than chance would have it."""
    item, opening = draw(speakers()), draw(openings())
    if draw(st.booleans()):
        facts = item.facts
        wide: dict[str, Any] = {"basket": hole("round", 127, 0), "flange": hole("round", 165, 0)}
        item = Stocked("one", replace(facts, bolts=opening.bolts, **wide))
        opening = replace(opening, hole=hole("round", draw(st.integers(120, 170)), 0))
    return item, opening


@given(pairs(), st.integers(0, 60))
@settings(max_examples=150, deadline=None)
def test_a_deeper_opening_never_turns_a_fit_into_a_misfit(
    pair: tuple[Stocked[SpeakerGear], SpeakerOpening], more: int
) -> None:
    item, opening = pair
    assert opening.depth
    assert isinstance(opening.depth.clear, Quantity)
    deeper = replace(opening, depth=replace(opening.depth, clear=mm(opening.depth.clear.value + more)))
    before, after = (speaker.fit(item, one, (), USUAL) for one in (opening, deeper))
    if before.kind != "does-not-fit":
        assert after.kind != "does-not-fit"
    if before.kind == "fits":
        assert after.kind == "fits"


def swapped(item: Any) -> Any:
    """A hole or bolt pattern with its axes exchanged."""
    return replace(item, width=item.height, height=item.width)


@given(pairs())
@settings(max_examples=150, deadline=None)
def test_exchanging_the_axes_of_gear_and_hole_changes_nothing(
    pair: tuple[Stocked[SpeakerGear], SpeakerOpening],
) -> None:
    item, opening = pair
    facts = item.facts
    other = replace(facts, **{name: swapped(getattr(facts, name)) for name in ("basket", "flange", "bolts")})
    around = replace(opening, hole=swapped(opening.hole), bolts=swapped(opening.bolts))
    before = speaker.fit(item, opening, (), USUAL)
    after = speaker.fit(Stocked("one", other), around, (), USUAL)
    assert (before.kind, before.parts, before.to_get) == (after.kind, after.parts, after.to_get)
    assert before.margin == pytest.approx(after.margin)


@given(st.integers(40, 400), st.integers(40, 400))
def test_the_unit_changes_no_verdict_beyond_what_was_typed(have: int, need: int) -> None:
    """Of lengths in quarters of a millimetre, typed in mm and in inches, those that are apart by more than both steps."""
    metric = [parse(f"{value / 4:.2f} mm", "length") for value in (have, need)]
    inches = [parse(f"{value / 4 / 25.4:.3f} in", "length") for value in (have, need)]
    checks = [compare("one", "One", [typed("a", a)], [typed("b", b)]) for a, b in (metric, inches)]
    assert abs((checks[0].margin or 0) - (checks[1].margin or 0)) <= inches[0].step + inches[1].step
    if all(check.verdict != "marginal" for check in checks) and have != need:
        assert checks[0].verdict == checks[1].verdict


@given(st.floats(-50, 50), st.floats(0, 5))
def test_marginal_is_exactly_within_the_uncertainty(margin: float, uncertainty: float) -> None:
    assert (judge(margin, uncertainty) == "marginal") == (abs(margin) < uncertainty)
    assert (judge(margin, uncertainty) == "fails") == (margin < 0 and -margin >= uncertainty)


@given(pairs(), st.integers(0, 60))
@settings(max_examples=150, deadline=None)
def test_a_height_is_in_the_window_exactly_where_both_margins_hold(
    pair: tuple[Stocked[SpeakerGear], SpeakerOpening], height: int
) -> None:
    item, opening = pair
    space = room(item.facts, opening, USUAL)
    for seat in seats(opening):
        least, most = space.window(seat)
        raised = [seat.offset, typed("ring", mm(height))]
        depth, grille = space.depth(raised).margin, space.grille(raised).margin
        assert depth is not None
        assert grille is not None
        assert (least <= height <= most) == (depth >= 0 and grille >= 0)


@given(HOLES, HOLES)
def test_what_goes_in_goes_in_exactly_where_every_point_does(inner: Hole, outer: Hole) -> None:
    """Against points along the edge, by the equation of each shape: an independent way to the same answer."""
    small, large = outline("inner", inner), outline("outer", outer)
    fits = all((check.margin or 0) >= 0 for check in contain("in", "In", small, large))
    assert fits == all(inside(large, x, y) for x, y in edge(small))


def sides(item: Outline) -> tuple[float, float]:
    return (item.width.value or 0) / 2, (item.height.value or 0) / 2


def edge(item: Outline) -> list[tuple[float, float]]:
    a, b = sides(item)
    if item.shape == "rectangle":
        return [(x, y) for x in (a, -a) for y in (b, -b)]
    return [(a * cos(i * pi / 180), b * sin(i * pi / 180)) for i in range(360)]


def inside(item: Outline, x: float, y: float) -> bool:
    a, b = sides(item)
    if item.shape == "rectangle":
        return abs(x) <= a + 1e-6 and abs(y) <= b + 1e-6
    return (x / a) ** 2 + (y / b) ** 2 <= 1 + 1e-9


def test_kinds_are_ranked() -> None:
    assert KINDS == ("fits", "fits-with", "marginal", "unknown", "does-not-fit")
