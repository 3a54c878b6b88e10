"""Numbered dots over a photograph, as SVG of its own size; their labels stand below it as text."""

import math
from base64 import b64encode
from collections.abc import Iterator

from undertrim.publish.encoding import Published
from undertrim.publish.pictures.drawings import svg
from undertrim.publish.pictures.drawings.lettering import FAMILY

_RADIUS = 0.04
"""Of a dot, as part of the longer edge: 13 px where the picture is 320 px wide."""

_ON_PAPER = 1.8
"""By how much more where it is printed 24 mm wide, so that its number can be read."""

_AWAY, _RING = 2.0, 0.4
"""How far the middle of a dot is from its spot, so that it hides nothing of it, and the ring around the spot; in radii of the dot."""


def marks(photo: Published) -> str:
    """The dots of a photograph, dark with a light ring so that they show on any ground."""
    width, height = photo["width"], photo["height"]
    radius = _RADIUS * max(width, height)
    drawn = "".join(part for mark in photo["marks"] for part in _mark(mark, (width / 2, height / 2), radius))
    return svg.element("svg", drawn, viewBox=f"0 0 {width} {height}", aria_hidden="true", focusable="false")


def whole(photo: Published, jpeg: bytes) -> str:
    """A photograph with its dots as one picture for paper, which has no style of a page: what it looks like stands in it."""
    width, height = photo["width"], photo["height"]
    radius = _RADIUS * max(width, height) * _ON_PAPER
    data = f"data:image/jpeg;base64,{b64encode(jpeg).decode('ascii')}"
    image = svg.element("image", href=data, width=width, height=height)
    drawn = [part for mark in photo["marks"] for part in _mark(mark, (width / 2, height / 2), radius)]
    dots = svg.element("g", *drawn, stroke="#fff", fill="#000", font_family=FAMILY)
    return svg.element("svg", image, dots, xmlns="http://www.w3.org/2000/svg", viewBox=f"0 0 {width} {height}")


def _mark(mark: Published, middle: svg.Point, radius: float) -> Iterator[str]:
    """A ring around the spot, and the dot beside it on the side of the middle, where there is room for sure."""
    x, y = mark["x"], mark["y"]
    to_x, to_y = middle[0] - x, middle[1] - y
    far = math.hypot(to_x, to_y)
    way_x, way_y = (to_x / far, to_y / far) if far > radius else (0.0, -1.0)
    at_x, at_y = x + way_x * _AWAY * radius, y + way_y * _AWAY * radius
    start = {"x1": x + way_x * _RING * radius, "y1": y + way_y * _RING * radius}
    yield svg.element("line", **start, x2=at_x, y2=at_y, stroke_width=radius / 3)
    yield svg.element("circle", cx=x, cy=y, r=_RING * radius, stroke_width=radius / 3, fill="none")
    yield svg.element("circle", cx=at_x, cy=at_y, r=radius, stroke_width=radius / 6)
    size: dict[str, str | float] = {
        "font_size": radius * 1.3,
        "dy": "0.36em",
        "text_anchor": "middle",
        "fill": "#fff",
        "stroke": "none",
    }
    yield svg.element("text", str(mark["number"]), x=at_x, y=at_y, **size)
