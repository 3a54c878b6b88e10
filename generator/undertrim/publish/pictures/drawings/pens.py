"""Kinds of line and hatching, told apart without colour."""

from typing import Literal, TypeAlias

from undertrim.publish.pictures.drawings import svg
from undertrim.publish.pictures.drawings.lettering import Box

Pen: TypeAlias = Literal["outline", "bold", "thin", "hidden", "centre", "front", "adjacent", "grille"]

# Width and dashes in drawing units. Types of line from memory of ISO 128-2: outlines 01.2, dimensions 01.1, hidden
# 02.1, centre lines 04.1, neighbouring parts 05.1. What stands in front of the dash is a wide chain line here.
_PENS: dict[Pen, tuple[float, str]] = {
    "outline": (1.8, ""),
    "bold": (3, ""),
    "thin": (0.8, ""),
    "hidden": (1.4, "6 3"),
    "centre": (0.8, "16 3 2 3"),
    "front": (1.8, "12 4 3 4"),
    "adjacent": (1, "12 3 2 3 2 3"),
    "grille": (2.6, "3 3"),
}
_PITCH = 5.0


def stroke(pen: Pen, *paths: str, part: str = "") -> str:
    """Unfilled paths with one pen, as one path; `part` says in `data-part` what it is."""
    width, dashes = _PENS[pen]
    more = {"stroke_dasharray": dashes} if dashes else {}
    named = {"data_part": part} if part else {}
    path = " ".join(paths)
    return svg.element("path", d=path, fill="none", stroke="currentColor", stroke_width=width, **more, **named)


def line(x: float, y: float, to_x: float, to_y: float) -> str:
    """The path text of a straight line."""
    return f"M{svg.number(x)} {svg.number(y)} L{svg.number(to_x)} {svg.number(to_y)}"


def hatch(box: Box, part: str = "") -> str:
    """Thin lines at 45 degrees over a box, rising to the right; nothing where the box is empty."""
    if box.right <= box.left or box.bottom <= box.top:
        return ""
    # On each hatch line x + y is the same.
    first, last = box.left + box.top, box.right + box.bottom
    count = max(1, int((last - first) / _PITCH))
    paths = [_slanted(box, first + (last - first) * (place + 0.5) / count) for place in range(count)]
    return stroke("thin", *paths, part=part)


def _slanted(box: Box, total: float) -> str:
    left, right = max(box.left, total - box.bottom), min(box.right, total - box.top)
    return line(left, total - left, right, total - right)
