"""The pieces of a template: outlines and bolt holes with what they mean."""

from collections.abc import Callable
from dataclasses import dataclass

from undertrim.publish.facts import dimensions
from undertrim.publish.paper import outlines
from undertrim.publish.paper.layout import AXIS, DASHED, OUTLINE, THIN, Line, Pen, Shape
from undertrim.record.model import Bolts, Face, Hole
from undertrim.words import say

Mark = Callable[[float, float, float], tuple[Shape, ...]]
PENS = {OUTLINE: "Solid", DASHED: "Dashed", THIN: "Thin"}
_MARKS: dict[Mark, str] = {
    outlines.upright: "Cross in a circle",
    outlines.diagonal: "Diagonal cross in a square",
    outlines.triangle: "Triangle",
}


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


def outline(what: str, item: Hole | Face | None, pen: Pen, source: str) -> Drawing:
    """The outline of what the text says; a note where it is not recorded."""
    shape = outlines.outline(item, pen)
    if item is None or shape is None:
        return Drawing(notes=(f"Not recorded, not drawn: {what}.",))
    said = say(dimensions.hole(item)) if isinstance(item, Hole) else _face(item)
    return Drawing((shape,), (Key((Line(-5, 0, 5, 0, pen),), f"{PENS[pen]} line: {what}, {said}{source}"),))


def _face(item: Face) -> str:
    return say(dimensions.face(item))


def bolts(what: str, pattern: Bolts | None, mark: Mark, source: str) -> Drawing:
    """A bolt pattern, each hole with its mark; a note where it is not recorded."""
    if pattern is None:
        return Drawing(notes=(f"Not recorded, not drawn: {what}.",))
    note = outlines.assumed(pattern, what)
    ring = outlines.ring(pattern, AXIS)
    shapes = (*(part for x, y in outlines.centres(pattern) for part in mark(x, y, 1)), *((ring,) if ring else ()))
    key = Key(mark(0, 0, 0.4), f"{_MARKS[mark]}: {what}, {dimensions.bolts(pattern)}{source}")
    return Drawing(shapes, (key,), (note,) if note else ())
