"""What stands in the opening in true size: the outlines of the car and, with gear, what meets them."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.stock import Gear
from undertrim.publish.facts import openings, words
from undertrim.publish.paper import outlines
from undertrim.publish.paper.layout import (
    AXIS,
    DASHED,
    FINE,
    OUTLINE,
    THIN,
    Ellipse,
    Line,
    Pen,
    Rectangle,
    Shape,
    Text,
    bounds,
)
from undertrim.record.model import Bolts, Face, Hole, Opening, VehicleRecord

SUITABLE = {"speaker": ("speaker", "spacer"), "receiver": ("receiver", "kit")}
"""The kinds of gear that a kind of opening is drawn with."""

Mark = Callable[[float, float, float], tuple[Shape, ...]]
_PENS = {OUTLINE: "Solid", DASHED: "Dashed", THIN: "Thin"}
_MARKS: dict[Mark, str] = {
    outlines.upright: "Cross in a circle",
    outlines.diagonal: "Diagonal cross in a square",
    outlines.triangle: "Triangle",
}
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


@dataclass(frozen=True, slots=True)
class Key:
    """What a line or mark means; `sample` is drawn about (0, 0), no wider than 10 mm."""

    sample: tuple[Shape, ...]
    words: str


@dataclass(frozen=True, slots=True)
class Drawing:
    """Shapes in mm about the middle of the opening, what they mean, and what must be said beside them."""

    shapes: tuple[Shape, ...] = ()
    keys: tuple[Key, ...] = ()
    notes: tuple[str, ...] = ()

    def with_(self, *others: "Drawing") -> "Drawing":
        """This and others, one over the other."""
        every = (self, *others)
        shapes, keys, notes = zip(*((one.shapes, one.keys, one.notes) for one in every), strict=True)
        return Drawing(sum(shapes, ()), sum(keys, ()), sum(notes, ()))


def drawing(template: Template) -> Drawing:
    """The opening and the gear over it. Raises NotRecorded where the record has no outline of the opening."""
    found = Drawing().with_(*_car(template.opening), *(_gear(template.gear) if template.gear else ()))
    box = bounds(found.shapes).grown(_OVERHANG)
    axes = (Line(box.left, 0, box.right, 0, AXIS), Line(0, box.top, 0, box.bottom, AXIS))
    height = bounds(found.shapes[:1]).height
    return found.with_(Drawing((*axes, *_upward(height))), Drawing(notes=tuple(_remarks(found.shapes))))


def _car(opening: Opening) -> Iterator[Drawing]:
    item, what = (opening.hole, "hole") if opening.kind == "speaker" else (opening.face, "opening")
    source = f" [{', '.join(opening.source) or 'no source recorded'}]"
    drawn = _outline(f"{what} of the car", item, OUTLINE, source)
    if not drawn.shapes:
        fields = "'hole' with its shape and size" if what == "hole" else "'face' with its width and height"
        raise NotRecorded(f"the outline of opening '{opening.name}' is not recorded: measure it and write {fields}")
    yield drawn
    if opening.kind == "speaker":
        yield _bolts("bolt holes of the car", opening.bolts, outlines.upright, source)


def _gear(gear: Gear) -> Iterator[Drawing]:
    facts, name, source = gear.facts, gear.name, f" [gear record {gear.id}]"
    if facts.kind == "speaker":
        yield _outline(f"basket of {name}, what must pass through", facts.basket, DASHED, source)
        yield _outline(f"flange of {name}", facts.flange, THIN, source)
        yield _bolts(f"bolt holes of {name}", facts.bolts, outlines.diagonal, source)
    elif facts.kind == "spacer":
        yield _outline(f"hole in {name}", facts.hole, DASHED, source)
        yield _outline(f"rim of {name}", facts.flange, THIN, source)
        yield _bolts(f"bolt holes of {name}", facts.bolts, outlines.diagonal, source)
        if facts.car_bolts:
            yield _bolts(f"bolt holes of {name} towards the car", facts.car_bolts, outlines.triangle, source)
    elif facts.kind == "receiver":
        yield _outline(f"body of {name}", facts.body, DASHED, source)
        yield _outline(f"front of {name} with its trim or screen", facts.trim, THIN, source)
    elif facts.kind == "kit":
        yield _outline(f"opening of {name}", facts.opening, DASHED, source)


def _outline(what: str, item: Hole | Face | None, pen: Pen, source: str) -> Drawing:
    shape = outlines.outline(item, pen)
    if item is None or shape is None:
        return Drawing(notes=(f"Not recorded, not drawn: {what}.",))
    said = openings.hole(item) if isinstance(item, Hole) else _face(item)
    return Drawing((shape,), (Key((Line(-5, 0, 5, 0, pen),), f"{_PENS[pen]} line: {what}, {said}{source}"),))


def _face(item: Face) -> str:
    return f"{words.quantity(item.width)} wide × {words.quantity(item.height)} high"


def _bolts(what: str, bolts: Bolts | None, mark: Mark, source: str) -> Drawing:
    if bolts is None:
        return Drawing(notes=(f"Not recorded, not drawn: {what}.",))
    note = outlines.assumed(bolts, what)
    ring = outlines.ring(bolts, AXIS)
    shapes = (*(part for x, y in outlines.centres(bolts) for part in mark(x, y, 1)), *((ring,) if ring else ()))
    key = Key(mark(0, 0, 0.4), f"{_MARKS[mark]}: {what}, {openings.bolts(bolts)}{source}")
    return Drawing(shapes, (key,), (note,) if note else ())


def _upward(height: float) -> tuple[Shape, ...]:
    """An arrow that points up, in the middle of the upper half of an opening so high."""
    y = -height / 4
    arrow = (Line(0, y + 4, 0, y - 4, FINE), Line(0, y - 4, -1.5, y - 1, FINE), Line(0, y - 4, 1.5, y - 1, FINE))
    return (*arrow, Text(3, y + 1, ("up, seen from the cabin",), 8, 3.4))


def _remarks(shapes: Sequence[Shape]) -> Iterator[str]:
    """What the drawing takes for granted."""
    if len(shapes) > 1:
        yield "All is drawn about one centre: whether it sits so in the car is not recorded."
    if any(type(shape) is Rectangle and shape.pen in _PENS for shape in shapes):
        yield "Corners are drawn square: their radii are not recorded."
    if any(isinstance(shape, Ellipse) for shape in shapes):
        yield "An oval is drawn as an ellipse: a real rim can be fuller."
