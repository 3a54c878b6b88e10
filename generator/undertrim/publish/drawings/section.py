"""An opening for a speaker in section: what is behind, what is in front, and the speaker between the two, to scale."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.publish.drawings import callouts, dimensions, legends, lettering, profile, views
from undertrim.publish.drawings.axis import Axis, Datum, Margin, Section, Speaker, Verdict, axis
from undertrim.publish.drawings.callouts import Name
from undertrim.publish.drawings.dimensions import Measure, Span
from undertrim.publish.drawings.legends import Key
from undertrim.publish.drawings.lettering import PITCH, SIZE, Line
from undertrim.publish.drawings.pieces import EDGE, Piece, Sheet
from undertrim.publish.drawings.views import View

__all__ = ["Datum", "Margin", "Measure", "Section", "Speaker", "Verdict", "door"]


@dataclass(frozen=True, slots=True)
class _Case:
    section: Section
    axis: Axis
    view: View
    room: float  # width for text, in units

    def span(self, part: str, words: str, *ends: tuple[float, float]) -> Span:
        """A dimension along the axis between two points in mm (along, across), where its extension lines begin."""
        (start, start_from), (end, end_from) = ends
        view = self.view
        return Span(part, words, view.x(start), view.x(end), view.y(start_from), view.y(end_from))


def door(section: Section, width: int = 320, size: str = "20em") -> str:
    """The section as SVG, cabin at the left. `width` is in drawing units, in which lettering is 12 high; `size` is its width on the page.

    What is not known is left out and said in words. Basket and rings are sketched between their recorded faces.
    Raises ValueError for a width below 240 or another kind of size.
    """
    sheet, along = Sheet(section.title, width, size), axis(section)
    head = _sides(section, sheet)
    column = dimensions.deep([_hole_words(section)], views.LOWEST) if _empty(section, along) else 0
    flat = views.view(section, along, EDGE, sheet.right - column)
    names = callouts.above(_names(_Case(section, along, flat, sheet.room)), head.end, EDGE, sheet.right)
    case = _Case(section, along, flat.moved(names.end), sheet.room)
    return sheet.finished([head, names, *_pictured(case, sheet)], _words(case))


def _pictured(case: _Case, sheet: Sheet) -> Iterator[Piece]:
    """The picture and all that stands beside and below it."""
    view = case.view
    yield Piece(tuple(profile.drawn(case.section, case.axis, view)))
    yield dimensions.beside(list(_across(case)), view.right, view.top, view.bottom)
    rows = dimensions.below(list(_spans(case)), view.bottom + 2, EDGE, sheet.right)
    key = legends.legend(list(_keys(case)), rows.end + 4, sheet.right)
    yield from (rows, key, sheet.paragraph(list(_notes(case)), key.end))


def _words(case: _Case) -> Iterator[str]:
    section = case.section
    yield f"Cut along the axis, {section.near} at the left, {section.far} at the right"
    yield f"Shown from left to right: {', '.join(name.words for name in _names(case))}"
    yield from (span.words for span in (*_across(case), *_spans(case)))
    yield from _notes(case)


def _sides(section: Section, sheet: Sheet) -> Piece:
    """Which side is which, at the two upper corners."""
    room = sheet.room / 2 - 8
    near, far = lettering.wrapped(f"← {section.near}", room), lettering.wrapped(f"{section.far} →", room)
    left = [Line(EDGE, (row + 1) * PITCH, words) for row, words in enumerate(near)]
    right = [Line(sheet.right, (row + 1) * PITCH, words, "end") for row, words in enumerate(far)]
    return Piece((), (*left, *right), max(len(near), len(far)) * PITCH + 0.4 * SIZE)


def _names(case: _Case) -> list[Name]:
    """What is shown, from the cabin outwards."""
    return sorted(_named(case), key=lambda name: name.x)


def _named(case: _Case) -> Iterator[Name]:
    section, axis, view = case.section, case.axis, case.view
    _, outer = profile.rim(section, view)
    if axis.room is not None:
        yield Name(section.front, view.x(axis.room) - 1.3, 0)
    if axis.skin != 0:
        yield Name(section.datum_name, view.x(0), 0)
    if axis.skin is not None:
        yield Name(section.datum_name if axis.skin == 0 else "mounting face", view.x(axis.skin) + 1.5, 0)
    for ring in axis.rings:
        yield Name(ring.name, view.x((ring.bottom + ring.top) / 2), view.y(outer) - view.top)
    if section.speaker and axis.seat is not None:
        yield from _speaker_name(case, section.speaker, axis.seat)
    if axis.clear is not None:
        lean = f", leans {section.lean_text}" if section.lean else ""
        place = axis.behind(view.half)
        high = view.y(profile.seen(axis, view)) - view.top
        yield Name(f"{section.behind}{lean}", view.x(axis.clear if place is None else place), high)


def _speaker_name(case: _Case, speaker: Speaker, seat: float) -> Iterator[Name]:
    back, flange, magnet = case.axis.back, speaker.flange.mm, speaker.magnet.mm
    if back is not None and magnet is not None:
        yield Name(speaker.name, case.view.x(seat + 0.85 * (back - seat)), case.view.y(magnet / 2) - case.view.top)
    elif flange is not None:
        yield Name(speaker.name, case.view.x(seat) - 1.5, case.view.y(flange / 2) - case.view.top)


def _empty(section: Section, axis: Axis) -> bool:
    """Whether the hole is seen with nothing in it."""
    return axis.seat is None and section.hole.mm is not None and axis.skin is not None


def _hole_words(section: Section) -> str:
    return f"hole {section.hole.text}, half drawn"


def _across(case: _Case) -> Iterator[Span]:
    hole, skin = case.section.hole.mm, case.axis.skin
    if _empty(case.section, case.axis) and hole is not None and skin is not None:
        x = case.view.x(skin) + 4
        yield Span("hole", _hole_words(case.section), case.view.y(hole / 2), case.view.bottom, x, x)


def _spans(case: _Case) -> Iterator[Span]:
    """The dimensions along the axis."""
    section, axis, view = case.section, case.axis, case.view
    inner = profile.rim(section, view)[0]
    datum = (0.0, inner if axis.skin == 0 else 0.0)
    if axis.room is not None:
        yield case.span("room", f"room to the {section.front} {section.room.text}", (axis.room, 0), datum)
    if axis.clear is not None:
        yield case.span("clear", f"clear depth {section.clear.text}", datum, (axis.clear, 0))
    for ring in axis.rings:
        yield case.span(ring.part, f"{ring.name}: {ring.text}", (ring.top, inner), (ring.bottom, inner))
    if section.speaker and axis.seat is not None:
        yield from _speaker_spans(case, section.speaker, axis.seat)


def _speaker_spans(case: _Case, speaker: Speaker, seat: float) -> Iterator[Span]:
    axis = case.axis
    if axis.back is not None:
        yield case.span("depth", f"mounting depth {speaker.depth.text}", (seat, 0), (axis.back, 0))
    if axis.cone is not None:
        yield case.span("protrusion", f"cone at full travel {speaker.protrusion.text}", (axis.cone, 0), (seat, 0))
    yield from _margins(case)


def _margins(case: _Case) -> Iterator[Span]:
    """The gaps behind and in front, where both of their sides are known."""
    section, axis = case.section, case.axis
    radius = profile.edge(section)
    place = None if radius is None else axis.behind(radius)
    if section.margin_behind and axis.back is not None and radius is not None and place is not None:
        at = radius if axis.slope else 0
        yield case.span("behind", _margin("behind", section.margin_behind), (axis.back, 0), (place, at))
    if section.margin_front and axis.cone is not None and axis.room is not None:
        yield case.span("front", _margin("in front", section.margin_front), (axis.room, 0), (axis.cone, 0))


def _margin(where: str, margin: Margin) -> str:
    return f"{where}, {margin.verdict}: {margin.text}"


def _keys(case: _Case) -> Iterator[Key]:
    speaker, axis = case.section.speaker, case.axis
    if speaker and axis.cone is not None:
        yield Key("hidden", "cone at full travel")
    if any(profile.strikes(case.section, axis, case.view)):
        yield Key("strike", "it strikes here")


def _notes(case: _Case) -> Iterator[str]:
    """What is not drawn, and what of the picture is only a sketch."""
    section, axis = case.section, case.axis
    shown = {span.part for span in _spans(case)}
    for part, where, margin in (
        ("behind", "behind", section.margin_behind),
        ("front", "in front", section.margin_front),
    ):
        if margin and part not in shown:
            yield _margin(where, margin)
    for name in _names(case):
        if lettering.width(name.words) > case.room:  # it was cut short above
            yield name.words
    yield from axis.lost
    if axis.slope and axis.clear is not None:
        yield "Drawn is the half towards which it leans."
    if axis.rings or axis.seat is not None:
        yield "One half is drawn. To scale: what has a number; the rest is a sketch."
    yield from section.more
