"""The pieces of a template: outlines and bolt holes with what they mean."""

from collections.abc import Callable
from dataclasses import dataclass

from undertrim.publish.facts import dimensions, words
from undertrim.publish.printed.paper import outlines
from undertrim.publish.printed.paper.layout import AXIS, DASHED, OUTLINE, THIN, Line, Pen, Shape
from undertrim.record.model import Bolts, Face, Hole
from undertrim.words import Message, Value, message, say

Mark = Callable[[float, float, float], tuple[Shape, ...]]
PENS = {OUTLINE: "paper/solid-line", DASHED: "paper/dashed-line", THIN: "paper/thin-line"}
"""How a line is named that means something, by its pen."""
_MARKS: dict[Mark, str] = {
    outlines.upright: "paper/cross-in-circle",
    outlines.diagonal: "paper/cross-in-square",
    outlines.triangle: "paper/triangle",
}


@dataclass(frozen=True, slots=True)
class Key:
    """What a line or mark means; `sample` is drawn about (0, 0), no wider than 10 mm. `marks` where it stands for the middle of holes."""

    sample: tuple[Shape, ...]
    words: str
    marks: bool = False


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


def sentences(*values: Value) -> str:
    """Sentences one after the other, each with its full stop."""
    return " ".join(f"{say(value)}." for value in values)


def _not_drawn(what: Message) -> Drawing:
    return Drawing(notes=(sentences(message("paper/not-recorded", what=what)),))


def outline(what: Message, item: Hole | Face | None, pen: Pen, source: Value) -> Drawing:
    """The outline of what the message says; a note where it is not recorded."""
    shape = outlines.outline(item, pen)
    if item is None or shape is None:
        return _not_drawn(what)
    size = dimensions.hole(item) if isinstance(item, Hole) else _face(item)
    key = message(PENS[pen], what=what, size=size, source=source)
    return Drawing((shape,), (Key((Line(-5, 0, 5, 0, pen),), say(key)),))


def _face(item: Face) -> Message:
    return message("dimensions/face", width=words.quantity(item.width), height=words.quantity(item.height))


def bolts(what: Message, pattern: Bolts | None, mark: Mark, source: Value) -> Drawing:
    """A bolt pattern, each hole with its mark; a note where it is not recorded."""
    if pattern is None:
        return _not_drawn(what)
    note = sentences(*outlines.assumed(pattern, what))
    ring = outlines.ring(pattern, AXIS)
    shapes = (*(part for x, y in outlines.centres(pattern) for part in mark(x, y, 1)), *((ring,) if ring else ()))
    key = message(_MARKS[mark], what=what, size=dimensions.bolts(pattern), source=source)
    return Drawing(shapes, (Key(mark(0, 0, 0.4), say(key), marks=True),), (note,) if note else ())
