"""An opening for a speaker from the front: hole and bolt holes of the car, and over them what the gear is, to scale."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from undertrim.publish.pictures.drawings import dimensions, legends, pens, svg
from undertrim.publish.pictures.drawings.dimensions import NOT_RECORDED, Measure, Span
from undertrim.publish.pictures.drawings.legends import Key
from undertrim.publish.pictures.drawings.pens import Pen
from undertrim.publish.pictures.drawings.pieces import EDGE, Piece, Sheet
from undertrim.publish.pictures.drawings.shapes import DrawnOutline, Front, Pattern
from undertrim.words import Message, Value, message, say

__all__ = ["DrawnOutline", "Front", "Measure", "Pattern", "opening"]

_HIGHEST = 260.0
_PAD = 12.0
_COLUMN = 110.0  # a picture with upright texts beside it is at least as high, in units


class _Shown(NamedTuple):
    shape: DrawnOutline
    pen: Pen
    part: str
    words: Message


@dataclass(frozen=True, slots=True)
class _View:
    """From mm round the centre to drawing units; `wide` and `high` is the picture in units."""

    unit: float
    wide: float
    high: float

    @property
    def x(self) -> float:
        """The centre."""
        return EDGE + _PAD + self.wide / 2

    @property
    def y(self) -> float:
        """The centre."""
        return EDGE + _PAD + self.high / 2

    def point(self, place: svg.Point) -> svg.Point:
        """A place in mm."""
        return self.x + place[0] * self.unit, self.y + place[1] * self.unit


def opening(front: Front, width: int = 320, size: str = "20em") -> str:
    """The opening from the cabin as SVG. `width` is in drawing units, in which lettering is 12 high; `size` is its width on the page.

    What is not known is left out and said in words. Raises ValueError for a width below 240 or another kind of size.
    """
    front = front.posed
    sheet, notes = Sheet(say(front.title), width, size), list(_notes(front))
    view = _view(front, sheet)
    upright, right = list(_upright(front, view)), view.x + view.wide / 2 + 8
    lower = EDGE + (max(2 * _PAD + view.high, _COLUMN if upright else 0) if list(_keys(front)) else 0)
    beside = dimensions.beside(upright, right, EDGE, lower)
    below = dimensions.below(list(_level(front, view)), lower, EDGE, sheet.right)
    key = legends.legend(list(_keys(front)), below.end + 6, sheet.right)
    pieces = [Piece(tuple(_drawn(front, view)), (), lower), beside, below, key, sheet.paragraph(notes, key.end + 2)]
    return sheet.finished(pieces, [say(message("drawings/from-cabin")), *(one.words for one in _keys(front)), *notes])


def _view(front: Front, sheet: Sheet) -> _View:
    column = dimensions.deep([span.words for span in _upright(front, _View(1, 0, 0))], _COLUMN)
    wide, high = _reach(front)
    unit = min((sheet.room - column - 2 * _PAD - 2) / wide, _HIGHEST / high)
    return _View(unit, wide * unit, high * unit)


def _outlines(front: Front) -> list[_Shown]:
    """Every outline that can be drawn."""
    named: list[tuple[DrawnOutline | None, Pen, str, Message]] = [
        (front.panel, "adjacent", "panel", message("drawings/flat-panel")),
        (front.hole, "bold", "hole", message("drawings/hole-of-car")),
        (front.flange, "thin", "flange", message("drawings/flange-of", gear=front.gear)),
        (front.basket, "hidden", "basket", message("drawings/basket-through", gear=front.gear)),
    ]
    return [_Shown(shape, pen, part, words) for shape, pen, part, words in named if shape and shape.known]


def _reach(front: Front) -> tuple[float, float]:
    """How far everything goes across and up, in mm."""
    points = [point for places in front.places for point in places]
    shapes = [shown.shape for shown in _outlines(front)]
    round_all = (front.bolts.width.mm or 0) if front.bolts and front.bolts.circle else 0
    wide = [2 * abs(x) for x, _ in points] + [shape.width.mm or 0 for shape in shapes]
    high = [2 * abs(y) for _, y in points] + [shape.height.mm or 0 for shape in shapes]
    return max(1.0, round_all, *wide), max(1.0, round_all, *high)


def _drawn(front: Front, view: _View) -> Iterator[str]:
    shown, (car, gear) = _outlines(front), front.places
    if not (shown or car or gear):
        return
    x, y = view.wide / 2 + 6, view.high / 2 + 6
    yield pens.stroke("centre", pens.line(view.x - x, view.y, view.x + x, view.y), part="axis")
    yield pens.stroke("centre", pens.line(view.x, view.y - y, view.x, view.y + y), part="axis")
    if front.bolts and front.bolts.circle and front.bolts.width.mm is not None:
        ring = svg.circle(view.x, view.y, front.bolts.width.mm / 2 * view.unit)
        yield pens.stroke("centre", ring, part="bolt-circle")
    yield from (pens.stroke(one.pen, one.shape.path(view.x, view.y, view.unit), part=one.part) for one in shown)
    yield from (legends.ring(*view.point(place), "bolt") for place in car)
    yield from (legends.cross(*view.point(place), "gear-bolt") for place in gear)


def _level(front: Front, view: _View) -> Iterator[Span]:
    """Dimensions across, under the picture."""
    hole, bolts = front.hole, front.bolts
    if hole.known and hole.width.mm is not None:
        start = view.y + ((hole.height.mm or 0) / 2 * view.unit if hole.kind == "rectangle" else 0)
        yield _span("hole", _hole_of(hole.width.text), view.x, hole.width.mm * view.unit, start)
    if bolts and bolts.width.mm is not None and bolts.points():
        start = view.y + (0 if bolts.circle else (bolts.height.mm or 0) / 2 * view.unit)
        code = "drawings/bolt-circle" if bolts.circle else "drawings/bolt-holes"
        yield _span("bolts", message(code, size=bolts.width.text), view.x, bolts.width.mm * view.unit, start)


def _upright(front: Front, view: _View) -> Iterator[Span]:
    """Dimensions up, at the right of the picture; a round hole and a circle need none."""
    hole, bolts = front.hole, front.bolts
    if hole.known and hole.kind != "round" and hole.height.mm is not None:
        start = view.x + ((hole.width.mm or 0) / 2 * view.unit if hole.kind == "rectangle" else 0)
        yield _span("hole-height", _hole_of(hole.height.text), view.y, hole.height.mm * view.unit, start)
    if bolts and not bolts.circle and bolts.height.mm is not None and bolts.points():
        start = view.x + (bolts.width.mm or 0) / 2 * view.unit
        words = message("drawings/bolt-holes", size=bolts.height.text)
        yield _span("bolts-height", words, view.y, bolts.height.mm * view.unit, start)


def _hole_of(size: Value) -> Message:
    return message("drawings/hole-of", size=size)


def _span(part: str, words: Message, middle: float, long: float, start: float) -> Span:
    return Span(part, say(words), middle - long / 2, middle + long / 2, start, start)


def _keys(front: Front) -> Iterator[Key]:
    yield from (Key(one.pen, say(_outlined(one))) for one in _outlines(front))
    car, gear = front.places
    if front.bolts and car:
        yield Key("ring", say(message("drawings/is", what=_OF_CAR, how=front.bolts.words)))
    if front.gear_bolts and gear:
        yield Key("cross", say(message("drawings/is", what=_of_gear(front), how=front.gear_bolts.words)))


def _outlined(one: _Shown) -> Message:
    shape = message(f"shapes/{one.shape.kind}")
    return message("drawings/outlined", what=one.words, shape=shape, size=one.shape.words)


_OF_CAR = message("drawings/bolt-holes-of-car")


def _of_gear(front: Front) -> Message:
    return message("drawings/bolt-holes-of", gear=front.gear)


def _notes(front: Front) -> Iterator[str]:
    """What is not drawn, and what of the picture is assumed."""
    yield from map(say, _left_out(front))
    drawn = front.places[1] or any(one.shape in (front.basket, front.flange) for one in _outlines(front))
    if front.gear and drawn:
        code = "drawings/centred-turned" if front.turned else "drawings/centred"
        yield say(message(code, gear=front.gear)) + "."
    if any(one and one.circle and one.known and one.angle is None for one in (front.bolts, front.gear_bolts)):
        yield say(message("drawings/angle-unknown")) + "."
    yield from map(say, front.more)


def _left_out(front: Front) -> Iterator[Value]:
    """What is not drawn."""
    if not front.hole.known:
        yield message("drawings/is", what=message("fit-speaker/hole"), how=front.hole.words)
    yield _bolts_left_out(front.bolts, _OF_CAR)
    if front.gear:
        for code, shape in (("drawings/basket-of", front.basket), ("drawings/flange-of", front.flange)):
            if shape is None or not shape.known:
                how = shape.words if shape else NOT_RECORDED
                yield message("drawings/is", what=message(code, gear=front.gear), how=how)
        yield _bolts_left_out(front.gear_bolts, _of_gear(front))


def _bolts_left_out(bolts: Pattern | None, holes: Message) -> Value:
    return bolts.left_out(holes) if bolts else message("drawings/is", what=holes, how=NOT_RECORDED)
