"""An opening in the dash: from the front with the receiver in it, and from the side with what is behind, to scale."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.publish.drawings import dimensions, legends, pens, svg
from undertrim.publish.drawings.dimensions import UNKNOWN, Measure, Span
from undertrim.publish.drawings.legends import Key
from undertrim.publish.drawings.lettering import PITCH, SIZE, Box, Line
from undertrim.publish.drawings.pens import Pen
from undertrim.publish.drawings.pieces import EDGE, Piece, Sheet

__all__ = ["Dash", "Frame", "Measure", "opening"]

_PAD = 10.0
_HIGHEST = 190.0
_SIDE = 78.0  # height of the side view, in units


@dataclass(frozen=True, slots=True)
class Frame:
    """An upright rectangle by width and height."""

    width: Measure = UNKNOWN
    height: Measure = UNKNOWN

    @property
    def size(self) -> tuple[float, float] | None:
        """Width and height in mm; None where one is not known."""
        if self.width.mm is None or self.height.mm is None:
            return None
        return self.width.mm, self.height.mm

    @property
    def words(self) -> str:
        """What it measures."""
        return f"{self.width.text} × {self.height.text}"


@dataclass(frozen=True, slots=True)
class Dash:
    """The opening, the kit in it and the receiver in that; the receiver is centred across and stands at the bottom.

    `clear` is the depth behind the front of the dash to `behind`; `margin` says in words what is left of it, `verdict` whether that does.
    """

    title: str
    face: Frame
    kit: str = ""
    kit_opening: Frame | None = None
    clear_front: Frame | None = None
    gear: str = ""
    body: Frame | None = None
    trim: Frame | None = None
    clear: Measure = UNKNOWN
    behind: str = "first thing behind"
    chassis: Measure = UNKNOWN
    plug_room: Measure = UNKNOWN
    margin: str = ""
    strikes: bool = False

    @property
    def holder(self) -> Frame:
        """What the receiver goes into."""
        return self.kit_opening or self.face


def opening(dash: Dash, width: int = 320, size: str = "20em") -> str:
    """Front and side view as SVG, one under the other. `width` is in drawing units, in which lettering is 12 high; `size` is its width on the page.

    What is not known is left out and said in words. Raises ValueError for a width below 240 or another kind of size.
    """
    sheet = Sheet(dash.title, width, size)
    front = list(_front(dash, sheet))
    side = list(_side(dash, sheet, front[-1].end + 10))
    notes = list(_notes(dash))
    last = sheet.paragraph(notes, [*front, *side][-1].end + 2)
    return sheet.finished([*front, *side, last], _words(dash, notes))


def _outlines(dash: Dash) -> Iterator[tuple[Frame, Pen, str, str]]:
    """What is drawn from the front, each with its pen, its part and what it stands for."""
    named = (
        (dash.clear_front, "adjacent", "clear-front", "clear room in front of the dash"),
        (dash.face, "bold", "face", "opening in the dash"),
        (dash.kit_opening, "thin", "kit", f"opening of {dash.kit}"),
        (dash.trim, "front", "trim", f"trim of {dash.gear}, before the dash"),
        (dash.body, "outline", "body", f"body of {dash.gear}"),
    )
    for frame, pen, part, words in named:
        if frame and frame.size:
            yield frame, pen, part, words  # type: ignore[misc] # the pens above are pens


def _front(dash: Dash, sheet: Sheet) -> Iterator[Piece]:
    shown = list(_outlines(dash))
    wide = max((frame.size[0] for frame, *_ in shown if frame.size), default=180.0)
    high = max((frame.size[1] for frame, *_ in shown if frame.size), default=60.0)
    column = dimensions.deep(["height 112 mm (4.41 in)"], 110)
    unit = min((sheet.room - column - 2 * _PAD) / wide, _HIGHEST / high)
    middle, top = EDGE + _PAD + wide * unit / 2, EDGE + PITCH + _PAD
    centre = top + high * unit / 2
    boxes = {part: _box(dash, frame, part, (middle, centre, unit)) for frame, _, part, _ in shown}
    right, bottom = middle + wide * unit / 2 + 8, top + high * unit + 8
    yield Piece((), (Line(EDGE, EDGE + SIZE, "From the front"),), top)
    yield Piece(tuple(_pictured(dash, shown, boxes)), (), bottom)
    if "face" in boxes:
        face = boxes["face"]
        up = Span("height", f"height {dash.face.height.text}", face.top, face.bottom, face.right, face.right)
        yield dimensions.beside([up], right, EDGE + PITCH, max(bottom, EDGE + PITCH + 120))
        across = Span("width", f"width {dash.face.width.text}", face.left, face.right, face.bottom, face.bottom)
        below = dimensions.below([across], bottom, EDGE, sheet.right)
        yield below
        bottom = max(below.end, EDGE + PITCH + 124)
    yield legends.legend(list(_keys(dash, shown, boxes)), bottom + 6, sheet.right)


def _box(dash: Dash, frame: Frame, part: str, view: tuple[float, float, float]) -> Box:
    """Where an outline is drawn. The body stands on the lower edge of what holds it, the trim is centred on the body."""
    middle, centre, unit = view
    width, height = frame.size or (0.0, 0.0)
    holder = dash.holder.size
    if part in ("body", "trim") and holder and dash.body and dash.body.size:
        centre += (holder[1] - dash.body.size[1]) / 2 * unit
    return Box(
        middle - width * unit / 2, centre - height * unit / 2, middle + width * unit / 2, centre + height * unit / 2
    )


def _pictured(dash: Dash, shown: list[tuple[Frame, Pen, str, str]], boxes: dict[str, Box]) -> Iterator[str]:
    if left := _left_over(dash, boxes):
        yield pens.hatch(left, "left-over")
    for _, pen, part, _ in shown:
        box = boxes[part]
        yield pens.stroke(pen, svg.rectangle(box.left, box.top, box.right - box.left, box.bottom - box.top), part=part)


def _left_over(dash: Dash, boxes: dict[str, Box]) -> Box | None:
    """The part of the opening above the body; None where the body is not lower than it."""
    holder, body = boxes.get("kit") or boxes.get("face"), boxes.get("body")
    if holder is None or body is None or body.top <= holder.top or body.left < holder.left:
        return None
    return Box(holder.left, holder.top, holder.right, body.top)


def _keys(dash: Dash, shown: list[tuple[Frame, Pen, str, str]], boxes: dict[str, Box]) -> Iterator[Key]:
    yield from (Key(pen, f"{words}: {frame.words}") for frame, pen, _, words in shown)
    holder, body = dash.holder.size, dash.body.size if dash.body else None
    if _left_over(dash, boxes) and holder and body:
        yield Key("hatch", f"left over: {round(holder[1] - body[1], 2):g} mm of height, for a filler or a pocket")


def _side(dash: Dash, sheet: Sheet, top: float) -> Iterator[Piece]:
    """Depth behind the front of the dash: what is there over what is needed."""
    known = [mm for mm in (dash.clear.mm, _needed(dash)) if mm is not None]
    if not known:
        return
    unit = (sheet.room - 2 * _PAD - 6) / max(known)
    start, upper, lower = EDGE + _PAD, top + PITCH + 12, top + PITCH + 12 + _SIDE
    yield Piece((), (Line(EDGE, top + SIZE, "From the side, front of the dash at the left"),), upper)
    yield Piece(tuple(_depths(dash, (start, unit), (upper, lower))), (), lower + 6)
    yield dimensions.below(list(_deep_spans(dash, (start, unit), lower)), lower + 4, EDGE, sheet.right)


def _needed(dash: Dash) -> float | None:
    """Chassis and plugs together in mm, as far as known; None where not even the chassis is."""
    return None if dash.chassis.mm is None else dash.chassis.mm + (dash.plug_room.mm or 0)


def _depths(dash: Dash, along: tuple[float, float], edges: tuple[float, float]) -> Iterator[str]:
    (start, unit), (top, bottom) = along, edges
    yield pens.stroke("bold", pens.line(start, top, start, bottom), part="front")
    if dash.chassis.mm is not None:
        long = dash.chassis.mm * unit
        yield pens.stroke("outline", svg.rectangle(start, top + 14, long, bottom - top - 28), part="chassis")
        if dash.plug_room.mm is not None:
            yield pens.stroke(
                "hidden",
                svg.rectangle(start + long, top + 24, dash.plug_room.mm * unit, bottom - top - 48),
                part="plugs",
            )
    if dash.clear.mm is not None:
        x = start + dash.clear.mm * unit
        yield pens.stroke("outline", pens.line(x, top, x, bottom), part="behind")
        feet = [top + 8 + 8 * place for place in range(int((bottom - top - 8) / 8))]
        yield pens.stroke("thin", *(pens.line(x, y, x + 5, y - 5) for y in feet))
        if dash.strikes:
            yield legends.strike(x, (top + bottom) / 2)


def _deep_spans(dash: Dash, along: tuple[float, float], bottom: float) -> Iterator[Span]:
    start, unit = along
    if dash.clear.mm is not None:
        yield Span(
            "clear",
            f"clear depth {dash.clear.text}, to: {dash.behind}",
            start,
            start + dash.clear.mm * unit,
            bottom,
            bottom,
        )
    if dash.chassis.mm is None:
        return
    end = start + dash.chassis.mm * unit
    yield Span("chassis", f"chassis {dash.chassis.text}", start, end, bottom - 14, bottom - 14)
    if dash.plug_room.mm is not None:
        yield Span(
            "plugs", f"plugs {dash.plug_room.text}", end, end + dash.plug_room.mm * unit, bottom - 24, bottom - 24
        )


def _notes(dash: Dash) -> Iterator[str]:
    if dash.margin:
        yield f"Behind: {dash.margin}."
    if dash.face.size is None:
        yield f"The opening in the dash: {dash.face.words}."
    if dash.clear.mm is None:
        yield f"Clear depth: {dash.clear.text}."
    if dash.gear:
        lost = [
            what
            for what, known in (("body", dash.body and dash.body.size), ("chassis depth", dash.chassis.mm))
            if known is None
        ]
        if lost:
            yield f"Of {dash.gear} not recorded: {', '.join(lost)}."
        if dash.trim and dash.trim.size and dash.clear_front is None:
            yield "The clear room in front of the dash is not recorded."
        yield f"{dash.gear} is drawn in the middle, at the bottom of what holds it; where it stands is not recorded."


def _words(dash: Dash, notes: list[str]) -> Iterator[str]:
    yield "Seen from the seats, and below from the side"
    yield from (f"{words}: {frame.words}" for frame, _, _, words in _outlines(dash))
    for what, measure in (("clear depth", dash.clear), ("chassis", dash.chassis), ("plugs", dash.plug_room)):
        if measure.mm is not None:
            yield f"{what} {measure.text}"
    yield from notes
