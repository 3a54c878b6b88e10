"""Marks of fasteners on a panel: all that are asked for, evenly at their edge, none touching another."""

import math
import re
from collections import Counter

import pytest

from svg_reading import SVG, parsed
from undertrim.publish.pictures.drawings import panels
from undertrim.publish.pictures.drawings.panels import Edge, Mark


def drawn_marks(text: str) -> list[tuple[str, float, float, float]]:
    found = []
    for group in parsed(text).iter(f"{SVG}g"):
        if symbol := group.get("data-mark"):
            x, y, scale = re.findall(r"[\d.]+", group.attrib["transform"])
            found.append((symbol, float(x), float(y), 10 * float(scale)))
    return found


def assert_apart_and_inside(text: str) -> None:
    placed = drawn_marks(text)
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
    text = panels.panel("door", asked)
    wanted: Counter[str] = Counter()
    for mark in asked:
        wanted[mark.symbol] += mark.count
    assert Counter(symbol for symbol, *_ in drawn_marks(text)) == +wanted
    assert_apart_and_inside(text)


@pytest.mark.parametrize(
    ("edge", "axis", "low", "high"),
    [("top", 1, 0, 25), ("bottom", 1, 75, 100), ("left", 0, 0, 25), ("right", 0, 135, 160)],
)
def test_marks_lie_at_their_edge_evenly(edge: Edge, axis: int, low: float, high: float) -> None:
    placed = drawn_marks(panels.panel("door", [Mark("clip", edge, 3)]))
    inward, along = ([place[at] for place in ((x, y) for _, x, y, _ in placed)] for at in (axis, 1 - axis))
    assert all(low < place < high for place in inward)
    assert along[1] - along[0] == pytest.approx(along[2] - along[1], abs=0.02)
    assert along[1] == pytest.approx(50 if axis == 0 else 80, abs=0.02)


def test_a_second_kind_stands_further_in() -> None:
    placed = drawn_marks(panels.panel("door", [Mark("clip", "top", 2), Mark("screw", "top", 2)]))
    heights = {symbol: y for symbol, _, y, _ in placed}
    assert heights["clip"] < heights["screw"] < 50


def test_four_corners_are_four_corners() -> None:
    placed = drawn_marks(panels.panel("door", [Mark("screw", "corners", 4)]))
    assert {(x < 80, y < 50) for _, x, y, _ in placed} == {(a, b) for a in (True, False) for b in (True, False)}


def test_a_mark_that_makes_no_sense_is_refused() -> None:
    with pytest.raises(ValueError, match="cannot draw -1 marks at 'top'"):
        panels.panel("door", [Mark("clip", "top", -1)])
    with pytest.raises(ValueError, match="cannot draw 2 marks at 'middle'"):
        panels.panel("door", [Mark("clip", "middle", 2)])  # type: ignore[arg-type]
