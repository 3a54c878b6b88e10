"""Reads a drawing back: where its parts lie, how long its dimensions are, and whether its texts can be read."""

import re
from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from typing import Any
from xml.etree import ElementTree

from undertrim.publish.pictures.drawings.lettering import Box, Line

SVG = "{http://www.w3.org/2000/svg}"
Point = tuple[float, float]
_STEP = re.compile(r"([MLQAhvZ])([^MLQAhvZ]*)")


def parsed(drawn: str) -> ElementTree.Element:
    return ElementTree.fromstring(drawn)  # noqa: S314 - our own drawing


def described(drawn: str) -> str:
    return parsed(drawn).findtext(f"{SVG}desc") or ""


def part(drawn: str, name: str) -> list[str]:
    """The path texts of everything drawn as one part."""
    return [one.get("d", "") for one in parsed(drawn).iter(f"{SVG}path") if one.get("data-part") == name]


def paths_about(drawn: str) -> tuple[str, str]:
    """All that is stroked in a drawing and all that is filled, as path texts."""
    every = list(parsed(drawn).iter(f"{SVG}path"))
    filled = [one.get("d", "") for one in every if one.get("fill") != "none"]
    return " ".join(one.get("d", "") for one in every if one.get("fill") == "none"), " ".join(filled)


def points(path: str) -> list[Point]:
    """Where the strokes of a path end; a curve by its ends alone."""
    found: list[Point] = []
    for kind, text in _STEP.findall(path):
        numbers = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", text)]
        if kind in "MLQA":
            found.append((numbers[-2], numbers[-1]))
        elif kind in "hv":
            x, y = found[-1]
            found.append((x + numbers[0], y) if kind == "h" else (x, y + numbers[0]))
    return found


def extent(path: str) -> Box:
    """The box round the ends of all strokes; of an ellipse that is written as two arcs, by its radii."""
    if arc := re.match(r"M(\S+) (\S+) A(\S+) (\S+) ", path):
        left, y, wide, high = (float(number) for number in arc.groups())
        return Box(left, y - high, left + 2 * wide, y + high)
    xs, ys = zip(*points(path), strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


def size(path: str) -> Point:
    box = extent(path)
    return box.right - box.left, box.bottom - box.top


def length(drawn: str, name: str) -> float:
    """How long the line of one dimension is."""
    (path,) = part(drawn, f"dimension {name}")
    return max(size(path))


def texts(drawn: str) -> list[Line]:
    found = []
    for one in parsed(drawn).iter(f"{SVG}text"):
        anchor: Any = one.get("text-anchor", "start")
        upright = "rotate" in one.get("transform", "")
        found.append(Line(float(one.get("x", 0)), float(one.get("y", 0)), one.text or "", anchor, upright))
    return found


def shrunk(box: Box) -> Box:
    """A little smaller: a hundredth of a unit is rounding."""
    return Box(box.left + 0.02, box.top + 0.02, box.right - 0.02, box.bottom - 0.02)


def strokes(paths: Sequence[str]) -> Iterator[tuple[Point, Point]]:
    """The straight strokes of paths made of `M` and `L`."""
    for path in paths:
        for piece in re.findall(r"M[^M]*", path):
            yield from pairwise(points(piece))


def assert_clear(lines: Sequence[Line]) -> None:
    """No text over another one."""
    for one, other in combinations(lines, 2):
        assert not shrunk(one.box).meets(other.box), (one, other)


def assert_unstruck(lines: Sequence[Line], paths: Sequence[str]) -> None:
    """No upright or level line through a text."""
    for (x, y), (to_x, to_y) in strokes(paths):
        stroke = Box(min(x, to_x), min(y, to_y), max(x, to_x), max(y, to_y))
        for line in lines:
            assert not shrunk(line.box).meets(stroke), (line, stroke)


def assert_sound(drawn: str) -> None:
    """A drawing as all must be: alone, in the colour of the text, named, told in words, each text to be read."""
    root = parsed(drawn)
    _, _, width, height = (float(number) for number in root.get("viewBox", "").split())
    assert [child.tag for child in root][:2] == [f"{SVG}title", f"{SVG}desc"]
    assert described(drawn)
    elements = list(root.iter())
    assert {one.tag.removeprefix(SVG) for one in elements} <= {"svg", "title", "desc", "g", "path", "text"}
    assert not {key for one in elements for key in one.attrib} & {"id", "class", "style", "href"}
    assert {one.get(key) for one in elements for key in ("fill", "stroke")} <= {"none", "currentColor", None}
    assert "nan" not in drawn
    assert "inf" not in " ".join(one.get("d", "") for one in elements)
    lines = texts(drawn)
    assert_clear(lines)
    assert_unstruck(lines, [*part(drawn, "extension"), *part(drawn, "leader")])
    for box in (line.box for line in lines):
        assert box.left >= -0.02
        assert box.top >= -0.02
        assert box.right <= width + 0.02
        assert box.bottom <= height + 0.02
    for path in (one.get("d", "") for one in elements if one.get("data-part")):
        found = extent(path)
        assert found.left >= -1
        assert found.top >= -1
        assert found.right <= width + 1
        assert found.bottom <= height + 1
