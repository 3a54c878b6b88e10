"""A place for an amplifier, from above and from the front, with the amplifier in it, to one scale."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.publish.pictures.drawings import legends, pens, svg
from undertrim.publish.pictures.drawings.dimensions import UNKNOWN, Measure
from undertrim.publish.pictures.drawings.legends import Key
from undertrim.publish.pictures.drawings.lettering import PITCH
from undertrim.publish.pictures.drawings.pieces import EDGE, Piece, Sheet
from undertrim.words import Message, Value, message, say

_VIEWS = {"above": message("drawings/bay-above"), "front": message("drawings/from-front")}
_HIGHEST = 150.0  # of one view, in drawing units


@dataclass(frozen=True, slots=True)
class Cuboid:
    """A box by its three sides, as it lies."""

    width: Measure = UNKNOWN
    height: Measure = UNKNOWN
    depth: Measure = UNKNOWN

    @property
    def words(self) -> Message:
        """What it measures."""
        return message("drawings/box", width=self.width.text, height=self.height.text, depth=self.depth.text)

    @property
    def above(self) -> tuple[float, float] | None:
        """Across and front to rear in mm; None where one is not known."""
        return _both(self.width.mm, self.depth.mm)

    @property
    def front(self) -> tuple[float, float] | None:
        """Across and up in mm; None where one is not known."""
        return _both(self.width.mm, self.height.mm)


def _both(across: float | None, other: float | None) -> tuple[float, float] | None:
    return None if across is None or other is None else (across, other)


@dataclass(frozen=True, slots=True)
class Bay:
    """The free box, and the amplifier as it is turned."""

    title: Value
    space: Cuboid
    gear: str = ""
    box: Cuboid | None = None


def opening(bay: Bay, width: int = 320, size: str = "20em") -> str:
    """Both views as SVG, one under the other; `width` in drawing units, `size` its width on the page. Raises ValueError below 240 units."""
    sheet = Sheet(say(bay.title), width, size)
    keys, notes, pieces, top = list(_keys(bay)), list(_notes(bay)), list[Piece](), EDGE
    unit = _unit(bay, sheet)
    for name in ("above", "front"):
        if getattr(bay.space, name):
            pieces += _view(bay, name, sheet, unit, top)
            top = pieces[-1].end + 6
    last = legends.legend(keys, top + 2, sheet.right)
    below = sheet.paragraph(notes, last.end + 2)
    return sheet.finished([*pieces, last, below], [*(key.words for key in keys), *notes])


def _unit(bay: Bay, sheet: Sheet) -> float:
    """Units to a mm, so that the larger view finds room."""
    sizes = [view for one in (bay.space, bay.box) if one for view in (one.above, one.front) if view]
    across, other = max((size[0] for size in sizes), default=1), max((size[1] for size in sizes), default=1)
    return min(3.0, sheet.room / max(across, 1), _HIGHEST / max(other, 1))


def _view(bay: Bay, name: str, sheet: Sheet, unit: float, top: float) -> Iterator[Piece]:
    """One view with its title: the space, and the amplifier in the middle across, on the floor or at the rear edge."""
    title = sheet.paragraph([say(_VIEWS[name])], top)
    space, box = getattr(bay.space, name), getattr(bay.box, name) if bay.box else None
    across = max(space[0], box[0] if box else 0) * unit
    under = title.end + 2 + max(space[1], box[1] if box else 0) * unit
    marks = [_outline("outline", "space", space, unit, across, under)]
    marks += [_outline("hidden", "box", box, unit, across, under)] if box else []
    yield title
    yield Piece(tuple(marks), (), under + PITCH / 2)


def _outline(pen: pens.Pen, part: str, size: tuple[float, float], unit: float, across: float, under: float) -> str:
    wide, high = size[0] * unit, size[1] * unit
    return pens.stroke(pen, svg.rectangle(EDGE + (across - wide) / 2, under - high, wide, high), part=part)


def _keys(bay: Bay) -> Iterator[Key]:
    yield Key("outline", say(message("drawings/bay-space", size=bay.space.words)))
    if bay.box:
        yield Key("hidden", say(message("drawings/bay-box", gear=bay.gear, size=bay.box.words)))


def _notes(bay: Bay) -> Iterator[str]:
    """What is not drawn, and what of the picture is assumed."""
    if bay.space.above is None and bay.space.front is None:
        yield say(message("drawings/bay-nothing"))
    if bay.box:
        yield say(message("drawings/bay-middle", gear=bay.gear))
