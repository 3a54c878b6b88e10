"""What is drawn on paper: shapes in millimetres, x to the right and y downward, and the pages they stand on."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import reduce
from typing import Any, Self, TypeAlias

from undertrim.publish.encoding import said
from undertrim.publish.printed.paper import metrics


@dataclass(frozen=True, slots=True)
class Pen:
    """How a line is drawn: its width in mm, and its dashes and gaps in mm (none: a solid line)."""

    width: float
    dash: tuple[float, ...] = ()


OUTLINE = Pen(0.35)
DASHED = Pen(0.3, (4, 2))
THIN = Pen(0.12)
AXIS = Pen(0.12, (8, 1.5, 1, 1.5))
DOTTED = Pen(0.2, (0.6, 1.4))
FINE = Pen(0.2)
FRAME = Pen(0.5)


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle by its edges, in mm."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """From left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From top to bottom."""
        return self.bottom - self.top

    @property
    def middle(self) -> tuple[float, float]:
        """The point in its middle."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    def grown(self, by: float) -> "Box":
        """The box with every edge moved outward."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def meets(self, other: "Box") -> bool:
        """Whether the two have a point in common."""
        across = self.left <= other.right and other.left <= self.right
        return across and self.top <= other.bottom and other.top <= self.bottom

    def joined(self, other: "Box") -> "Box":
        """The smallest box that holds both."""
        return Box(
            min(self.left, other.left),
            min(self.top, other.top),
            max(self.right, other.right),
            max(self.bottom, other.bottom),
        )


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle about a point."""

    x: float
    y: float
    radius: float
    pen: Pen

    @property
    def bounds(self) -> Box:
        """What it covers, the width of the pen left aside."""
        return Box(self.x, self.y, self.x, self.y).grown(self.radius)

    def moved(self, x: float, y: float) -> "Circle":
        """The same elsewhere."""
        return replace(self, x=self.x + x, y=self.y + y)


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A rectangle about a point, by its whole width and height."""

    x: float
    y: float
    width: float
    height: float
    pen: Pen

    @property
    def bounds(self) -> Box:
        """What it covers, the width of the pen left aside."""
        across, up = self.width / 2, self.height / 2
        return Box(self.x - across, self.y - up, self.x + across, self.y + up)

    def moved(self, x: float, y: float) -> Self:
        """The same elsewhere."""
        return replace(self, x=self.x + x, y=self.y + y)


@dataclass(frozen=True, slots=True)
class Ellipse(Rectangle):
    """An ellipse about a point, by its whole width and height."""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line between two points."""

    x: float
    y: float
    to_x: float
    to_y: float
    pen: Pen

    @property
    def bounds(self) -> Box:
        """What it covers, the width of the pen left aside."""
        return Box(self.x, self.y, self.x, self.y).joined(Box(self.to_x, self.to_y, self.to_x, self.to_y))

    def moved(self, x: float, y: float) -> "Line":
        """The same elsewhere."""
        return Line(self.x + x, self.y + y, self.to_x + x, self.to_y + y, self.pen)


@dataclass(frozen=True, slots=True)
class Text:
    """Lines of text from the left end of the first base line; `size` in pt, `pitch` in mm from base line to base line. A `label` of what is drawn is no paragraph."""

    x: float
    y: float
    lines: tuple[str, ...]
    size: float
    pitch: float
    bold: bool = False
    heading: bool = False
    label: bool = False

    @property
    def bounds(self) -> Box:
        """What it covers, with room for capitals above and tails below."""
        wide = max(metrics.face("Semibold" if self.bold else "Regular").width(line, self.size) for line in self.lines)
        rise, last = self.size * metrics.POINT, self.y + self.pitch * (len(self.lines) - 1)
        return Box(self.x, self.y - 0.75 * rise, self.x + wide, last + 0.25 * rise)

    def moved(self, x: float, y: float) -> "Text":
        """The same elsewhere."""
        return replace(self, x=self.x + x, y=self.y + y)


Shape: TypeAlias = Circle | Rectangle | Line | Text


@dataclass(frozen=True, slots=True)
class Page:
    """One sheet: `shapes` anywhere on it, and `drawn` shapes of which only what is inside `window` shows.

    Both count from the upper left corner of the paper. `says` is the drawing in words.
    """

    shapes: tuple[Shape, ...]
    window: Box
    drawn: tuple[Shape, ...]
    says: str


def bounds(shapes: Iterable[Shape]) -> Box:
    """What shapes cover together; centre lines may run out of it. Raises TypeError where there is none."""
    return reduce(Box.joined, (shape.bounds for shape in shapes if not _is_axis(shape)))


def _is_axis(shape: Shape) -> bool:
    return isinstance(shape, Line) and shape.pen == AXIS


def data(shape: Shape) -> dict[str, Any]:
    """A shape as plain data with its kind."""
    return {"kind": type(shape).__name__.lower(), **said(shape)}
