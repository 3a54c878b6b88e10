"""An opening in the dash: from the front with the receiver in it, and from the side with what is behind, to one scale."""

from collections.abc import Iterator, Sequence

from undertrim.derive.fit.lengths import both
from undertrim.publish.pictures.drawings import dash_side, dimensions, frames, legends, pens, svg
from undertrim.publish.pictures.drawings.dash_side import Side
from undertrim.publish.pictures.drawings.dimensions import NOT_RECORDED, Measure, Span
from undertrim.publish.pictures.drawings.frames import Dash, Frame, Placed
from undertrim.publish.pictures.drawings.legends import Key
from undertrim.publish.pictures.drawings.lettering import PITCH, SIZE, Box, Line
from undertrim.publish.pictures.drawings.pieces import EDGE, Piece, Sheet
from undertrim.words import Message, message, say

__all__ = ["Dash", "Frame", "Measure", "opening"]

_PAD = 10.0
_HIGHEST = 190.0
_COLUMN = 110.0  # the front view is at least as high, in units, so that a text beside it finds room


def opening(dash: Dash, width: int = 320, size: str = "20em") -> str:
    """Front and side view as SVG, one under the other. `width` is in drawing units, in which lettering is 12 high; `size` is its width on the page.

    What is not known is left out and said in words. Raises ValueError for a width below 240 or another kind of size.
    """
    sheet, notes = Sheet(say(dash.title), width, size), list(_notes(dash))
    unit = _unit(dash, sheet)
    front = list(_front(dash, sheet, unit))
    side = list(_side(dash, sheet, unit, front[-1].end + 8 if front else EDGE))
    above = [*front, *side]
    last = sheet.paragraph(notes, above[-1].end + 2 if above else EDGE)
    return sheet.finished([*above, last], [*_words(dash), *notes])


def _unit(dash: Dash, sheet: Sheet) -> float:
    """Units to a mm, so that both views find room."""
    scales = [3.0]
    if shown := frames.placed(dash):
        extent, column = _extent(shown), dimensions.deep([_height_words(dash)], _COLUMN)
        scales.append((sheet.room - column - 2 * _PAD - 8) / max(extent.right - extent.left, 1))
        scales.append(_HIGHEST / max(extent.bottom - extent.top, 1))
    if deepest := dash_side.deepest(dash):
        scales.append((sheet.room - 2 * _PAD - 6) / deepest)
    return min(scales)


def _extent(shown: Sequence[Placed]) -> Box:
    """Round everything, in mm."""
    boxes = [one.box for one in shown]
    left, top = min(box.left for box in boxes), min(box.top for box in boxes)
    return Box(left, top, max(box.right for box in boxes), max(box.bottom for box in boxes))


def _front(dash: Dash, sheet: Sheet, unit: float) -> Iterator[Piece]:
    shown = frames.placed(dash)
    if not shown:
        return
    extent, top = _extent(shown), EDGE + PITCH + _PAD
    middle = EDGE + _PAD - extent.left * unit, top - extent.top * unit
    bottom = top + max((extent.bottom - extent.top) * unit, _COLUMN) + 8
    yield Piece(
        tuple(_pictured(dash, shown, middle, unit)),
        (Line(EDGE, EDGE + SIZE, say(message("drawings/from-front"))),),
        bottom,
    )
    if face := next((_scaled(one.box, middle, unit) for one in shown if one.part == "face"), None):
        up = Span("height", _height_words(dash), face.top, face.bottom, face.right, face.right)
        yield dimensions.beside([up], middle[0] + extent.right * unit + 8, top - _PAD + 2, bottom)
        words = say(message("drawings/width", size=dash.face.width.text))
        across = Span("width", words, face.left, face.right, face.bottom, face.bottom)
        below = dimensions.below([across], bottom, EDGE, sheet.right)
        yield below
        bottom = below.end
    yield legends.legend(list(_keys(dash, shown)), bottom + 6, sheet.right)


def _height_words(dash: Dash) -> str:
    return say(message("drawings/height", size=dash.face.height.text))


def _scaled(box: Box, middle: svg.Point, unit: float) -> Box:
    x, y = middle
    return Box(x + box.left * unit, y + box.top * unit, x + box.right * unit, y + box.bottom * unit)


def _pictured(dash: Dash, shown: Sequence[Placed], middle: svg.Point, unit: float) -> Iterator[str]:
    if left := frames.left_over(dash):
        yield pens.hatch(_scaled(left, middle, unit), "left-over")
    for one in shown:
        box = _scaled(one.box, middle, unit)
        path = svg.rectangle(box.left, box.top, box.right - box.left, box.bottom - box.top)
        yield pens.stroke(one.pen, path, part=one.part)


def _keys(dash: Dash, shown: Sequence[Placed]) -> Iterator[Key]:
    yield from (Key(one.pen, say(one.words)) for one in shown)
    if left := frames.left_over(dash):
        yield Key("hatch", say(message("drawings/left-over", height=both(left.bottom - left.top))))


def _side(dash: Dash, sheet: Sheet, unit: float, top: float) -> Iterator[Piece]:
    """Depth behind the front of the dash: what is there over what is needed."""
    if dash_side.deepest(dash) is None:
        return
    title = sheet.paragraph([say(message("drawings/from-side"))], top)
    side = Side(dash, unit, EDGE + _PAD, title.end + 2)
    yield Piece(tuple(dash_side.drawn(side)), title.lines, side.bottom)
    below = dimensions.below(list(dash_side.spans(side)), side.bottom + 4, EDGE, sheet.right)
    yield below
    yield legends.legend(list(_side_keys(dash)), below.end + 4, sheet.right)


def _side_keys(dash: Dash) -> Iterator[Key]:
    if dash.chassis.mm is not None and dash.plug_room.mm is not None:
        yield Key("hidden", say(message("drawings/plug-room-sketched")))
    if dash.strikes and dash.chassis.mm is not None and dash.clear.mm is not None:
        yield Key("strike", say(message("drawings/strikes")))


def _notes(dash: Dash) -> Iterator[str]:
    """What is not drawn, and what of the picture is assumed."""
    yield from map(say, _left_out(dash))
    if dash.gear:
        yield from map(say, _gear_left_out(dash))
        yield from (f"{say(one)}." for one in _assumed(dash))
    yield from map(say, dash.more)


def _left_out(dash: Dash) -> Iterator[Message]:
    measured = (dash.chassis.mm, dash.plug_room.mm, dash.clear.mm)
    if dash.margin and None in measured:
        yield message("drawings/behind", margin=dash.margin)
    if dash.face.size is None:
        yield message("drawings/is", what=message("drawings/dash-opening"), how=dash.face.words)
    if dash.clear.mm is None:
        yield message("drawings/is", what=message("fit/clear-depth"), how=dash.clear.text)
    if dash.kit_opening and dash.kit_opening.size is None:
        yield message("drawings/is", what=message("fit-receiver/opening-of", kit=dash.kit), how=dash.kit_opening.words)


def _gear_left_out(dash: Dash) -> Iterator[Message]:
    if dash.body is None or dash.body.size is None:
        body = message("drawings/body-of", gear=dash.gear)
        yield message("drawings/is", what=body, how=dash.body.words if dash.body else NOT_RECORDED)
    for code, measure in (("fit-receiver/chassis-depth", dash.chassis), ("drawings/plug-room", dash.plug_room)):
        if measure.mm is None:
            yield message("drawings/is", what=message(code), how=measure.text)
    if dash.trim and dash.trim.size and (dash.clear_front is None or dash.clear_front.size is None):
        yield message("drawings/is", what=message("drawings/clear-front"), how=NOT_RECORDED)
    if dash.trim and dash.trim.size is None:
        yield message("drawings/is", what=message("drawings/trim-of", gear=dash.gear), how=dash.trim.words)


def _assumed(dash: Dash) -> Iterator[Message]:
    if dash_side.deepest(dash) is not None and dash_side.sketched(dash):
        yield message("drawings/heights-sketched")
    if dash.kit_opening and dash.kit_opening.size and dash.face.size:
        yield message("drawings/kit-in-middle", kit=dash.kit)
    if {"trim", "body"} & {one.part for one in frames.placed(dash)}:
        yield message("drawings/gear-in-middle", gear=dash.gear)


def _words(dash: Dash) -> Iterator[str]:
    yield say(message("drawings/from-seats"))
    shown = frames.placed(dash)
    yield from (key.words for key in _keys(dash, shown))
    yield from (span.words for span in dash_side.spans(Side(dash, 1, 0, 0)))
