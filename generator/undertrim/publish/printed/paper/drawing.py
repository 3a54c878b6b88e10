"""What stands in the opening in true size: the outlines of the car and, with gear, what meets them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.stock import Gear
from undertrim.publish.printed.paper.kinds import room
from undertrim.publish.printed.paper.layout import AXIS, FINE, Ellipse, Line, Rectangle, Shape, Text, bounds
from undertrim.publish.printed.paper.pieces import PENS, Drawing, sentences
from undertrim.publish.printed.sheet import glyphs
from undertrim.record.model import Opening, VehicleRecord
from undertrim.words import Items, Message, Value, message, say

_OVERHANG = 6  # mm of centre line beyond the outlines


class NotRecorded(Exception):  # noqa: N818 - it names what was found
    """The opening has no outline to draw; the text says what to measure."""


@dataclass(frozen=True, slots=True)
class Template:
    """What a template is asked for: an opening of a record (address: make/id), and gear to lay over it."""

    address: str
    record: VehicleRecord
    opening: Opening
    gear: Gear | None = None


def drawing(template: Template) -> Drawing:
    """The opening and the gear over it. Raises NotRecorded where the record has no outline of the opening."""
    found = Drawing().with_(*_car(template.opening), *(_gear(template.opening, template.gear) if template.gear else ()))
    box = bounds(found.shapes).grown(_OVERHANG)
    axes = (Line(box.left, 0, box.right, 0, AXIS), Line(0, box.top, 0, box.bottom, AXIS))
    height = bounds(found.shapes[:1]).height
    return found.with_(
        Drawing((*axes, *_upward(height, room(template.opening).up))), Drawing(notes=tuple(_remarks(found.shapes)))
    )


def _car(opening: Opening) -> Iterator[Drawing]:
    at = room(opening)
    source: Value = Items(tuple(opening.source), "comma") if opening.source else message("paper/no-source")
    drawn = list(at.car(source))
    if not drawn[0].shapes:
        raise NotRecorded(say(message("paper/no-outline", opening=opening.name, wanted=at.wanted)))
    return iter(drawn)


def _gear(opening: Opening, gear: Gear) -> Iterator[Drawing]:
    return room(opening).gear(gear.facts, gear.name, message("paper/gear-record", gear=gear.id))


def _upward(height: float, words: Message) -> tuple[Shape, ...]:
    """An arrow that points up, with its words, in the middle of the upper half of an opening so high."""
    y = -height / 4
    arrow = (Line(0, y + 4, 0, y - 4, FINE), Line(0, y - 4, -1.5, y - 1, FINE), Line(0, y - 4, 1.5, y - 1, FINE))
    return (*arrow, Text(3, y + 1, (glyphs.text(say(words)),), 8, 3.4))


def _remarks(shapes: Sequence[Shape]) -> Iterator[str]:
    """What the drawing takes for granted."""
    if len(shapes) > 1:
        yield sentences(message("paper/one-centre"))
    if any(type(shape) is Rectangle and shape.pen in PENS for shape in shapes):
        yield sentences(message("paper/square-corners"))
    if any(isinstance(shape, Ellipse) for shape in shapes):
        yield sentences(message("paper/oval"))
