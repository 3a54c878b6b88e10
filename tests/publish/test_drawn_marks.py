"""Marks of fasteners on a panel: all that are asked for, evenly at their edge, none touching another."""

import math
from collections import Counter

import pytest

from svg_reading import assert_clear, paths_about, texts
from undertrim.publish.pictures import small
from undertrim.publish.pictures.drawings import panels
from undertrim.publish.pictures.drawings.panels import Edge, Mark, Panel


def assert_apart_and_inside(placed: list[tuple[str, float, float, float]]) -> None:
    for at, (_, x, y, across) in enumerate(placed):
        assert across / 2 + 2 <= x <= 158 - across / 2
        assert across / 2 + 2 <= y <= 98 - across / 2
        for _, other_x, other_y, _ in placed[:at]:
            assert math.dist((x, y), (other_x, other_y)) > across


CROWDED = [
    [],
    [Mark("clip", "top", 1)],
    [Mark("clip", "left", 0), Mark("screw", "left", 2)],
    [Mark("clip", "left", 9), Mark("clip", "right", 9), Mark("hook", "top", 14), Mark("nut", "bottom", 14)],
    [Mark("screw", "corners", 9), Mark("nut", "corners", 4), Mark("bond", "corners", 1)],
    [Mark(symbol, "top", 6) for symbol in ("screw", "clip", "hook", "scrivet", "nut", "bond")],
    [Mark(symbol, "centre", 5) for symbol in ("screw", "clip", "hook", "scrivet", "nut", "bond")],
    [Mark("clip", edge, 20) for edge in ("top", "bottom", "left", "right", "corners", "centre")],
    [Mark("clip", "left", 150)],
]


@pytest.mark.parametrize("asked", CROWDED, ids=range(len(CROWDED)))
def test_every_mark_asked_for_is_drawn_and_none_touch(asked: list[Mark]) -> None:
    placed = panels.placed(asked)
    wanted: Counter[str] = Counter()
    for mark in asked:
        wanted[mark.symbol] += mark.count
    assert Counter(symbol for symbol, *_ in placed) == +wanted
    assert_apart_and_inside(placed)


@pytest.mark.parametrize(
    ("edge", "axis", "low", "high"),
    [("top", 1, 0, 25), ("bottom", 1, 75, 100), ("left", 0, 0, 25), ("right", 0, 135, 160)],
)
def test_marks_lie_at_their_edge_evenly(edge: Edge, axis: int, low: float, high: float) -> None:
    placed = panels.placed([Mark("clip", edge, 3)])
    inward, along = ([place[at] for place in ((x, y) for _, x, y, _ in placed)] for at in (axis, 1 - axis))
    assert all(low < place < high for place in inward)
    assert along[1] - along[0] == pytest.approx(along[2] - along[1], abs=0.02)
    assert along[1] == pytest.approx(50 if axis == 0 else 80, abs=0.02)


def test_a_second_kind_stands_further_in() -> None:
    placed = panels.placed([Mark("clip", "top", 2), Mark("screw", "top", 2)])
    heights = {symbol: y for symbol, _, y, _ in placed}
    assert heights["clip"] < heights["screw"] < 50


def test_four_corners_are_four_corners() -> None:
    placed = panels.placed([Mark("screw", "corners", 4)])
    assert {(x < 80, y < 50) for _, x, y, _ in placed} == {(a, b) for a in (True, False) for b in (True, False)}


def test_a_mark_that_makes_no_sense_is_refused() -> None:
    with pytest.raises(ValueError, match="cannot draw -1 marks at 'top'"):
        panels.placed([Mark("clip", "top", -1)])
    with pytest.raises(ValueError, match="cannot draw 2 marks at 'middle'"):
        panels.placed([Mark("clip", "middle", 2)])  # type: ignore[arg-type]


def test_what_is_placed_is_drawn_each_by_itself() -> None:
    """A clip is a filled triangle, a screw a circle with a cross: each has its own strokes, and the outline one."""
    marks = Mark("clip", "top", 3), Mark("screw", "bottom", 2)
    stroked, filled = paths_about(Panel(marks).picture("door", "20em"))
    assert filled.count("M") == 3
    assert stroked.count("M") == 1 + 2 * 3


WORDS = {"top": "top", "left": "front", "right": "a longer word", "bottom": "below"}
KEY = {"clip": "clips", "hook": "hooks", "screw": "screws", "rivet": "rivets as named"}


@pytest.mark.parametrize("letters", [12, 20])
def test_words_at_the_edges_and_in_the_key_meet_nothing(letters: float) -> None:
    panel = Panel((Mark("clip", "top", 3),), WORDS, KEY if letters == 12 else {}, letters)  # type: ignore[arg-type]
    lines = texts(panel.picture("door", "20em"))
    assert [line.words for line in lines] == [*WORDS.values(), *(KEY.values() if letters == 12 else ())]
    if letters == 12:
        assert_clear(lines)
        wide, high = panel.box
        for line in lines:
            assert -0.02 <= line.box.left <= line.box.right <= wide + 0.2
            assert line.box.bottom <= high


def test_the_upper_edge_is_named_and_the_front_where_a_part_has_a_side() -> None:
    def named(side: str, at: dict[str, int]) -> dict[str, str]:
        lines = [{"kind": "clip", "fate": "out", "at": at}]
        drawn = small.panel({"title": "x", "side": side, "on_side": "", "fasteners": lines})
        assert drawn is not None
        return {str(edge): words for edge, words in drawn.edges.items()}

    assert named("left", {"front": 1}) == {"top": "top", "right": "front"}
    assert named("right", {"front": 1}) == {"top": "top", "left": "front"}
    assert named("", {"left": 1}) == {"top": "top"}
    assert named("", {"front": 1, "left": 1}) == {"top": "front"}
