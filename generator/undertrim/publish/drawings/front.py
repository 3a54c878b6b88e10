"""An opening for a speaker from the front: hole and bolt holes of the car, and over them what the gear is, to scale."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, TypeAlias

from undertrim.publish.drawings import dimensions, legends, pens, svg
from undertrim.publish.drawings.dimensions import Measure, Span
from undertrim.publish.drawings.legends import Key
from undertrim.publish.drawings.pens import Pen
from undertrim.publish.drawings.pieces import EDGE, Piece, Sheet

__all__ = ["Front", "Measure", "Outline", "Pattern", "opening"]

Kind: TypeAlias = Literal["round", "oval", "rectangle"]
_HIGHEST = 260.0
_PAD = 12.0
_COLUMN = 116.0
"""A picture with upright texts beside it is at least as high, in units."""


@dataclass(frozen=True, slots=True)
class Outline:
    """A hole, basket, flange or panel: `width` across and `height` up, the same for a round one; an oval is an ellipse."""

    kind: Kind
    width: Measure
    height: Measure

    @property
    def turned(self) -> "Outline":
        """The same turned by 90 degrees."""
        return Outline(self.kind, self.height, self.width)

    @property
    def known(self) -> bool:
        """Whether it can be drawn."""
        return self.width.mm is not None and self.height.mm is not None

    @property
    def words(self) -> str:
        """What it measures."""
        return self.width.text if self.kind == "round" else f"{self.width.text} × {self.height.text}"


@dataclass(frozen=True, slots=True)
class Pattern:
    """Bolt holes: `count` on a circle of diameter `width`, else at the corners of `width` by `height`."""

    circle: bool
    count: int
    width: Measure
    height: Measure

    @property
    def turned(self) -> "Pattern":
        """The same turned by 90 degrees."""
        return self if self.circle else Pattern(False, self.count, self.height, self.width)

    @property
    def words(self) -> str:
        """What it measures."""
        if self.circle:
            return f"{self.count} on a circle of {self.width.text}"
        return f"{self.count} at {self.width.text} × {self.height.text}"

    def points(self) -> list[tuple[float, float]]:
        """The middles in mm from the centre, y downwards; nothing where a size is not known.

        The angle on a circle is not recorded: four are drawn at the corners, any other count from the top on. Of a rectangle with
        another count than four only the corners are drawn.
        """
        if self.width.mm is None or (self.height.mm is None and not self.circle):
            return []
        if not self.circle:
            x, y = self.width.mm / 2, (self.height.mm or 0) / 2
            return [(-x, -y), (x, -y), (x, y), (-x, y)]
        return svg.ring(0, 0, self.width.mm / 2, self.count, -45 if self.count == 4 else -90)


@dataclass(frozen=True, slots=True)
class Front:
    """The opening and, where there is any, the gear over it (`turned` by 90 degrees or not). All are centred: no offset is recorded."""

    title: str
    hole: Outline
    bolts: Pattern | None = None
    panel: Outline | None = None
    gear: str = ""
    basket: Outline | None = None
    flange: Outline | None = None
    gear_bolts: Pattern | None = None
    turned: bool = False


@dataclass(frozen=True, slots=True)
class _View:
    """From mm round the centre to drawing units."""

    unit: float
    x: float
    y: float

    def outline(self, shape: Outline) -> str:
        """The path of an outline whose sizes are known."""
        width, height = (shape.width.mm or 0) * self.unit, (shape.height.mm or 0) * self.unit
        left, top = self.x - width / 2, self.y - height / 2
        if shape.kind == "rectangle":
            return svg.rectangle(left, top, width, height)
        start, end = f"{svg.number(left)} {svg.number(self.y)}", f"{svg.number(left + width)} {svg.number(self.y)}"
        radii = f"{svg.number(width / 2)} {svg.number(height / 2)}"
        return f"M{start} A{radii} 0 1 0 {end} A{radii} 0 1 0 {start} Z"

    def point(self, place: tuple[float, float]) -> tuple[float, float]:
        """A place in mm."""
        return self.x + place[0] * self.unit, self.y + place[1] * self.unit


def opening(front: Front, width: int = 320, size: str = "20em") -> str:
    """The opening from the cabin as SVG. `width` is in drawing units, in which lettering is 12 high; `size` is its width on the page.

    What is not known is left out and said in words. Raises ValueError for a width below 240 or another kind of size.
    """
    sheet, shown = Sheet(front.title, width, size), list(_shown(front))
    column = dimensions.deep([span.words for span in _upright(front, _View(1, 0, 0), 0)], _COLUMN)
    wide, high = _reach(front)
    unit = min((sheet.room - column - 2 * _PAD) / wide, _HIGHEST / high)
    left, top = EDGE + _PAD, EDGE + _PAD
    view = _View(unit, left + wide * unit / 2, top + high * unit / 2)
    right, bottom = view.x + wide * unit / 2 + 8, top + high * unit + 8
    upright = list(_upright(front, view, right))
    lower = max(bottom, EDGE + _COLUMN) if upright else bottom
    picture = Piece(tuple(_drawn(front, view, (wide * unit, high * unit))), (), lower)
    beside = dimensions.beside(upright, right, EDGE, lower)
    below = dimensions.below(list(_level(front, view, bottom)), lower, EDGE, sheet.right)
    key = legends.legend(shown, below.end + 6, sheet.right)
    notes = list(_notes(front))
    return sheet.finished(
        [picture, beside, below, key, sheet.paragraph(notes, key.end + 2)], _words(front, shown, notes)
    )


def _posed(front: Front) -> tuple[Outline | None, Outline | None, Pattern | None]:
    """Basket, flange and bolts of the gear as they are held."""
    if not front.turned:
        return front.basket, front.flange, front.gear_bolts
    return (
        front.basket.turned if front.basket else None,
        front.flange.turned if front.flange else None,
        front.gear_bolts.turned if front.gear_bolts else None,
    )


def _outlines(front: Front) -> Iterator[tuple[Outline, Pen, str, str]]:
    """Every outline that can be drawn: its pen, its part and what it stands for."""
    basket, flange, _ = _posed(front)
    named = (
        (front.panel, "adjacent", "panel", "flat panel round the hole"),
        (front.hole, "bold", "hole", "hole of the car"),
        (flange, "thin", "flange", f"flange of {front.gear}"),
        (basket, "hidden", "basket", f"basket of {front.gear}"),
    )
    for shape, pen, part, words in named:
        if shape and shape.known:
            yield shape, pen, part, words  # type: ignore[misc] # the pens above are pens


def _reach(front: Front) -> tuple[float, float]:
    """How far everything goes across and up, in mm."""
    bolts = _posed(front)[2]
    points = [point for pattern in (front.bolts, bolts) if pattern for point in pattern.points()]
    shapes = [shape for shape, *_ in _outlines(front)]
    wide = max([2 * abs(x) + 8 for x, _ in points] + [shape.width.mm or 0 for shape in shapes], default=100.0)
    high = max([2 * abs(y) + 8 for _, y in points] + [shape.height.mm or 0 for shape in shapes], default=100.0)
    return max(wide, 1.0), max(high, 1.0)


def _drawn(front: Front, view: _View, size: tuple[float, float]) -> Iterator[str]:
    x, y = size[0] / 2 + 6, size[1] / 2 + 6
    yield pens.stroke("centre", pens.line(view.x - x, view.y, view.x + x, view.y), part="axis")
    yield pens.stroke("centre", pens.line(view.x, view.y - y, view.x, view.y + y), part="axis")
    for shape, pen, part, _ in _outlines(front):
        yield pens.stroke(pen, view.outline(shape), part=part)
    for point in front.bolts.points() if front.bolts else ():
        yield legends.ring(*view.point(point), "bolt")
    bolts = _posed(front)[2]
    for point in bolts.points() if bolts else ():
        yield legends.cross(*view.point(point), "gear-bolt")


def _level(front: Front, view: _View, bottom: float) -> Iterator[Span]:
    """Dimensions across, under the picture."""
    if front.hole.known and (across := front.hole.width.mm) is not None:
        yield _span(
            "hole",
            f"hole {front.hole.width.text}",
            view.x,
            across * view.unit,
            view.y if front.hole.kind != "rectangle" else bottom - 8,
        )
    if front.bolts and (across := front.bolts.width.mm) is not None and front.bolts.points():
        what = "bolt circle" if front.bolts.circle else "bolt holes"
        yield _span("bolts", f"{what} {front.bolts.width.text}", view.x, across * view.unit, view.y)


def _upright(front: Front, view: _View, right: float) -> Iterator[Span]:
    """Dimensions up, at the right of the picture; a round hole and a circle need none."""
    if front.hole.known and front.hole.kind != "round" and (up := front.hole.height.mm) is not None:
        yield _span("hole-height", f"hole {front.hole.height.text}", view.y, up * view.unit, view.x)
    if front.bolts and front.bolts.points() and not front.bolts.circle and (up := front.bolts.height.mm) is not None:
        yield _span("bolts-height", f"bolt holes {front.bolts.height.text}", view.y, up * view.unit, view.x)


def _span(part: str, words: str, middle: float, long: float, start: float) -> Span:
    return Span(part, words, middle - long / 2, middle + long / 2, start, start)


def _shown(front: Front) -> Iterator[Key]:
    for shape, pen, _, words in _outlines(front):
        yield Key(pen, f"{words}: {shape.kind}, {shape.words}")
    if front.bolts and front.bolts.points():
        yield Key("ring", f"bolt holes of the car: {front.bolts.words}")
    bolts = _posed(front)[2]
    if bolts and bolts.points():
        yield Key("cross", f"bolt holes of {front.gear}: {bolts.words}")


def _notes(front: Front) -> Iterator[str]:
    """What is not drawn, and what of the picture is assumed."""
    basket, flange, bolts = _posed(front)
    if not front.hole.known:
        yield "The hole is not recorded."
    if front.bolts is None or not front.bolts.points():
        yield "The bolt holes of the car are not recorded."
    if front.gear:
        lost = [what for what, item in (("basket", basket), ("flange", flange)) if item is None or not item.known]
        lost += ["bolt holes"] if bolts is None or not bolts.points() else []
        if lost:
            yield f"Of {front.gear} not recorded: {', '.join(lost)}."
        yield f"{front.gear} is drawn centred{', turned by 90 degrees' if front.turned else ''}."
    circles = [pattern for pattern in (front.bolts, bolts) if pattern and pattern.circle and pattern.points()]
    if circles:
        yield "At which angle bolts stand on their circle is not recorded."


def _words(front: Front, shown: list[Key], notes: list[str]) -> Iterator[str]:
    yield "Seen from the cabin"
    yield from (key.words for key in shown)
    yield from notes
