"""A piece of gear by itself, from the front and from the side, to one scale."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.publish.pictures.drawings import dimensions, legends, pens, svg
from undertrim.publish.pictures.drawings.dimensions import Measure, Span
from undertrim.publish.pictures.drawings.legends import Key
from undertrim.publish.pictures.drawings.pens import Pen
from undertrim.publish.pictures.drawings.pieces import EDGE, Piece, Sheet
from undertrim.words import Value, message, say

_HIGHEST = 170.0  # of one view, in drawing units
_MOST = 2.5  # units to a mm
_FLAT = 0.55  # of the height: a part of which only the depth is known is sketched so high


@dataclass(frozen=True, slots=True)
class Outline:
    """What is seen from the front: round (height is width) or not, with what it is and what it measures."""

    pen: Pen
    part: str
    words: Value
    width: Measure
    height: Measure
    round: bool = False


@dataclass(frozen=True, slots=True)
class Block:
    """What is seen from the side: from `start` to `end` in mm behind the face (less than 0: before it), `height` where that is known."""

    pen: Pen
    part: str
    words: Value
    start: float
    end: float
    height: float | None = None


@dataclass(frozen=True, slots=True)
class Sketch:
    """A piece of gear; `bolts` are its holes in mm from the middle, with what they measure."""

    title: Value
    front: Sequence[Outline]
    side: Sequence[Block]
    bolts: Sequence[tuple[float, float]] = ()
    bolt_words: Value = ""


def circle(count: int, diameter: float | None, turned: float = 0) -> list[tuple[float, float]]:
    """Holes on a circle, the first `turned` degrees from straight up, clockwise; none where the circle is not known."""
    if diameter is None:
        return []
    angles = [math.radians(turned + 360 * place / count) for place in range(count)]
    return [(diameter / 2 * math.sin(angle), -diameter / 2 * math.cos(angle)) for angle in angles]


def corners(width: float | None, height: float | None) -> list[tuple[float, float]]:
    """Holes at the corners of a rectangle; none where a side of it is not known."""
    if width is None or height is None:
        return []
    return [(x * width / 2, y * height / 2) for x in (-1, 1) for y in (-1, 1)]


def drawn(sketch: Sketch, width: int = 320, size: str = "20em") -> str:
    """Both views as SVG, one under the other; `width` in drawing units, `size` its width on the page. Raises ValueError below 240 units."""
    sheet = Sheet(say(sketch.title), width, size)
    unit = _unit(sketch, sheet)
    pieces = _front(sketch, sheet, unit, EDGE)
    pieces += _side(sketch, sheet, unit, pieces[-1].end + 8 if pieces else EDGE)
    keys = list(_keys(sketch))
    last = legends.legend(keys, (pieces[-1].end if pieces else EDGE) + 6, sheet.right)
    return sheet.finished([*pieces, last], [key.words for key in keys] + [say(one.words) for one in sketch.side])


def _known(sketch: Sketch) -> list[tuple[Outline, float, float]]:
    found = ((one, one.width.mm, one.width.mm if one.round else one.height.mm) for one in sketch.front)
    return [(one, wide, high) for one, wide, high in found if wide is not None and high is not None]


def _unit(sketch: Sketch, sheet: Sheet) -> float:
    """Units to a mm, so that the larger view finds room."""
    known = _known(sketch)
    deep = max((one.end for one in sketch.side), default=0) - min((one.start for one in sketch.side), default=0)
    across = max([deep, *(wide for _, wide, _ in known)], default=1)
    high = max([high for _, _, high in known], default=1)
    return min(_MOST, sheet.room / max(across, 1), _HIGHEST / max(high, 1))


def _front(sketch: Sketch, sheet: Sheet, unit: float, top: float) -> list[Piece]:
    known = _known(sketch)
    if not known:
        return []
    title = sheet.paragraph([say(message("drawings/from-front"))], top)
    high = max(high for _, _, high in known) * unit
    x, y = sheet.width / 2, title.end + 4 + high / 2
    marks = [pens.stroke(one.pen, _shape(one, x, y, wide * unit, tall * unit), part=one.part) for one, wide, tall in known]  # fmt: skip
    marks += [legends.cross(x + dx * unit, y + dy * unit, "bolt") for dx, dy in sketch.bolts]
    return [title, Piece(tuple(marks), (), y + high / 2 + 4)]


def _shape(one: Outline, x: float, y: float, wide: float, high: float) -> str:
    return svg.circle(x, y, wide / 2) if one.round else svg.rectangle(x - wide / 2, y - high / 2, wide, high)


def _side(sketch: Sketch, sheet: Sheet, unit: float, top: float) -> list[Piece]:
    """From the side, the face at the left, with the depths below."""
    if not sketch.side:
        return []
    title = sheet.paragraph([say(message("drawings/gear-side"))], top)
    tallest = max([one.height for one in sketch.side if one.height is not None], default=_HIGHEST * _FLAT / unit)
    least = min(one.start for one in sketch.side)
    deep = (max(one.end for one in sketch.side) - least) * unit
    left, middle = max(EDGE, (sheet.width - deep) / 2) - least * unit, title.end + 4 + tallest * unit / 2
    spans: list[Span] = []
    marks: list[str] = []
    for one in sketch.side:
        high = (tallest * _FLAT if one.height is None else one.height) * unit
        start, end = left + one.start * unit, left + one.end * unit
        marks.append(pens.stroke(one.pen, svg.rectangle(start, middle - high / 2, end - start, high), part=one.part))
        spans.append(Span(one.part, say(one.words), start, end, middle + high / 2, middle + high / 2))
    low = middle + tallest * unit / 2
    measured = dimensions.below(spans, low + 6, EDGE, sheet.right)
    return [title, Piece(tuple(marks), (), low), measured]


def _keys(sketch: Sketch) -> Iterator[Key]:
    for one, _, _ in _known(sketch):
        yield Key(one.pen, say(one.words))
    if sketch.bolts:
        yield Key("cross", say(sketch.bolt_words))
