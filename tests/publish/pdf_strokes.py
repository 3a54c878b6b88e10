"""What is stroked on the pages of a PDF, in millimetres.

The PDF is read operator by operator with the current transformation matrix (ISO 32000-1, 8.3 and 8.5). One unit of user space
is 1/72 in (8.3.2.3), an inch is 25.4 mm.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from pypdf import PageObject
from pypdf.generic import ContentStream

MM = 25.4 / 72

Point = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]


@dataclass(frozen=True)
class Stroke:
    """A stroked path in mm from the upper left corner of the paper: its corners (ends of curves too), and points on its curves."""

    corners: tuple[Point, ...]
    curved: tuple[Point, ...]
    width: float
    dash: tuple[float, ...]

    @property
    def box(self) -> tuple[float, float, float, float]:
        xs, ys = [x for x, _ in self.corners], [y for _, y in self.corners]
        return min(xs), min(ys), max(xs), max(ys)

    @property
    def size(self) -> Point:
        left, top, right, bottom = self.box
        return right - left, bottom - top

    @property
    def middle(self) -> Point:
        left, top, right, bottom = self.box
        return (left + right) / 2, (top + bottom) / 2

    @property
    def round(self) -> bool:
        return bool(self.curved)


def times(a: Matrix, b: Matrix) -> Matrix:
    """`a` applied first, then `b`."""
    return (
        a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4], a[4] * b[1] + a[5] * b[3] + b[5],
    )  # fmt: skip


class Walker:
    """Follows the operators of a page and of the forms it uses."""

    def __init__(self, page: PageObject) -> None:
        self.page, self.height = page, float(page.mediabox.height)
        self.matrix: Matrix = (1, 0, 0, 1, 0, 0)
        self.width = 1.0  # the initial state, 8.4.1
        self.dash: tuple[float, ...] = ()
        self.saved: list[tuple[Matrix, float, tuple[float, ...]]] = []
        self.corners: list[Point] = []
        self.curved: list[Point] = []
        self.paths: list[Stroke] = []
        self.clips: list[Stroke] = []
        contents = page.get_contents()
        assert contents is not None
        self.walk(contents, page["/Resources"].get_object())

    def point(self, x: float, y: float) -> Point:
        a, b, c, d, e, f = self.matrix
        return (a * x + c * y + e) * MM, (self.height - (b * x + d * y + f)) * MM

    def walk(self, stream: Any, resources: Any) -> None:
        for operands, name in ContentStream(stream, self.page.pdf).operations:
            values = [float(value) for value in operands if isinstance(value, int | float)]
            self.state(name.decode(), values, operands)
            self.build(name.decode(), values)
            self.paint(name.decode())
            if name == b"Do":
                self.form(resources["/XObject"][operands[0]].get_object(), resources)

    def form(self, form: Any, resources: Any) -> None:
        assert form["/Subtype"] == "/Form"
        kept = self.matrix
        a, b, c, d, e, f = (float(value) for value in form.get("/Matrix", (1, 0, 0, 1, 0, 0)))
        self.matrix = times((a, b, c, d, e, f), self.matrix)
        self.walk(form, form.get("/Resources", resources))
        self.matrix = kept

    def state(self, name: str, values: list[float], operands: Any) -> None:
        if name == "q":
            self.saved.append((self.matrix, self.width, self.dash))
        elif name == "Q":
            self.matrix, self.width, self.dash = self.saved.pop()
        elif name == "cm":
            a, b, c, d, e, f = values
            self.matrix = times((a, b, c, d, e, f), self.matrix)
        elif name == "w":
            (self.width,) = values
        elif name == "d":
            self.dash = tuple(float(value) for value in operands[0])

    def build(self, name: str, values: list[float]) -> None:
        if name in ("m", "l"):
            self.corners.append(self.point(*values))
        elif name == "c":
            start, *others = self.corners[-1], *(self.point(*values[at : at + 2]) for at in (0, 2, 4))
            self.curved.extend(curve(start, *others))
            self.corners.append(others[-1])
        elif name == "re":
            x, y, width, height = values
            places = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
            self.corners.extend(self.point(*place) for place in places)
        assert name not in ("v", "y"), "a curve that is not read"

    def paint(self, name: str) -> None:
        if name not in ("S", "s", "f", "f*", "B", "B*", "b", "b*", "n"):
            return
        made = Stroke(tuple(self.corners), tuple(self.curved), self.width * MM, tuple(part * MM for part in self.dash))
        if self.corners and name in ("S", "s"):
            self.paths.append(made)
        elif self.corners and name == "n":
            self.clips.append(made)
        self.corners, self.curved = [], []


def curve(a: Point, b: Point, c: Point, d: Point) -> Iterator[Point]:
    for t in (0.125, 0.25, 0.5, 0.75, 0.875):
        u = 1 - t
        shares = (u**3, 3 * u * u * t, 3 * u * t * t, t**3)
        xs, ys = zip(a, b, c, d, strict=True)
        yield sum(s * x for s, x in zip(shares, xs, strict=True)), sum(s * y for s, y in zip(shares, ys, strict=True))
