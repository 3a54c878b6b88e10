"""An opening for a speaker in section: what is behind, what is in front, and the speaker between the two, to scale."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from undertrim.publish.pictures.drawings import callouts, dimensions, legends, lettering, profile, views
from undertrim.publish.pictures.drawings.axis import Axis, Datum, Margin, Section, Speaker, Verdict, axis
from undertrim.publish.pictures.drawings.callouts import Name
from undertrim.publish.pictures.drawings.dimensions import Measure, Span
from undertrim.publish.pictures.drawings.legends import Key
from undertrim.publish.pictures.drawings.lettering import PITCH, SIZE, Line
from undertrim.publish.pictures.drawings.pieces import EDGE, Piece, Sheet
from undertrim.publish.pictures.drawings.views import View
from undertrim.words import Items, Message, Value, message, say

__all__ = ["Datum", "Margin", "Measure", "Section", "Speaker", "Verdict", "door"]


@dataclass(frozen=True, slots=True)
class _Case:
    section: Section
    axis: Axis
    view: View
    room: float  # width for text, in units

    def span(self, part: str, words: Value, *ends: tuple[float, float]) -> Span:
        """A dimension along the axis between two points in mm (along, across), where its extension lines begin."""
        (start, start_from), (end, end_from) = ends
        view = self.view
        return Span(part, say(words), view.x(start), view.x(end), view.y(start_from), view.y(end_from))


def door(section: Section, width: int = 320, size: str = "20em") -> str:
    """The section as SVG, cabin at the left. `width` is in drawing units, in which lettering is 12 high; `size` is its width on the page.

    What is not known is left out and said in words. Basket and rings are sketched between their recorded faces.
    Raises ValueError for a width below 240 or another kind of size.
    """
    sheet, along = Sheet(say(section.title), width, size), axis(section)
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
    yield say(message("drawings/cut-along", near=section.near, far=section.far))
    yield say(message("drawings/left-to-right", names=Items(tuple(name.words for name in _names(case)), "comma")))
    yield from (span.words for span in (*_across(case), *_spans(case)))
    yield from _notes(case)


def _sides(section: Section, sheet: Sheet) -> Piece:
    """Which side is which, at the two upper corners."""
    room = sheet.room / 2 - 8
    near, far = lettering.wrapped(f"← {say(section.near)}", room), lettering.wrapped(f"{say(section.far)} →", room)
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
        yield Name(say(section.front), view.x(axis.room) - 1.3, 0)
    if axis.skin != 0:
        yield Name(say(section.datum_name), view.x(0), 0)
    if axis.skin is not None:
        face = section.datum_name if axis.skin == 0 else message("fit-speaker/mounting-face")
        yield Name(say(face), view.x(axis.skin) + 1.5, 0)
    for ring in axis.rings:
        yield Name(say(ring.name), view.x((ring.bottom + ring.top) / 2), view.y(outer) - view.top)
    if section.speaker and axis.seat is not None:
        yield from _speaker_name(case, section.speaker, axis.seat)
    if axis.clear is not None:
        place = axis.behind(view.half)
        high = view.y(profile.seen(axis, view)) - view.top
        yield Name(say(_behind(section)), view.x(axis.clear if place is None else place), high)


def _behind(section: Section) -> Value:
    if not section.lean:
        return section.behind
    return message("drawings/leans", behind=section.behind, lean=section.lean_text)


def _speaker_name(case: _Case, speaker: Speaker, seat: float) -> Iterator[Name]:
    back, flange, magnet = case.axis.back, speaker.flange.mm, speaker.magnet.mm
    if back is not None and magnet is not None:
        yield Name(say(speaker.name), case.view.x(seat + 0.85 * (back - seat)), case.view.y(magnet / 2) - case.view.top)
    elif flange is not None:
        yield Name(say(speaker.name), case.view.x(seat) - 1.5, case.view.y(flange / 2) - case.view.top)


def _empty(section: Section, axis: Axis) -> bool:
    """Whether the hole is seen with nothing in it."""
    return axis.seat is None and section.hole.mm is not None and axis.skin is not None


def _hole_words(section: Section) -> str:
    return say(message("drawings/hole-half", size=section.hole.text))


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
        yield case.span(
            "room", message("drawings/room-of", front=section.front, size=section.room.text), (axis.room, 0), datum
        )
    if axis.clear is not None:
        clear = message("drawings/clear-depth-of", size=section.clear.text)
        yield case.span("clear", clear, datum, (axis.clear, 0))
    for ring in axis.rings:
        words = message("drawings/is", what=ring.name, how=ring.text)
        yield case.span(ring.part, words, (ring.top, inner), (ring.bottom, inner))
    if section.speaker and axis.seat is not None:
        yield from _speaker_spans(case, section.speaker, axis.seat)


def _speaker_spans(case: _Case, speaker: Speaker, seat: float) -> Iterator[Span]:
    axis = case.axis
    if axis.back is not None:
        deep = message("drawings/mounting-depth-of", size=speaker.depth.text)
        yield case.span("depth", deep, (seat, 0), (axis.back, 0))
    if axis.cone is not None:
        out = message("drawings/cone-of", size=speaker.protrusion.text)
        yield case.span("protrusion", out, (axis.cone, 0), (seat, 0))
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
        yield case.span("front", _margin("front", section.margin_front), (axis.room, 0), (axis.cone, 0))


def _margin(where: str, margin: Margin) -> Message:
    verdict = message(f"drawings/verdict-{_VERDICTS.get(margin.verdict, margin.verdict)}")
    return message(f"drawings/margin-{where}", verdict=verdict, margin=margin.text)


_VERDICTS: Mapping[Verdict, str] = {"too close": "too-close"}
"""Verdicts that are called otherwise in the catalogue."""


def _keys(case: _Case) -> Iterator[Key]:
    speaker, axis = case.section.speaker, case.axis
    if speaker and axis.cone is not None:
        yield Key("hidden", say(message("drawings/cone")))
    if any(profile.strikes(case.section, axis, case.view)):
        yield Key("strike", say(message("drawings/strikes")))


def _notes(case: _Case) -> Iterator[str]:
    """What is not drawn, and what of the picture is only a sketch."""
    section, axis = case.section, case.axis
    shown = {span.part for span in _spans(case)}
    for part, margin in (("behind", section.margin_behind), ("front", section.margin_front)):
        if margin and part not in shown:
            yield say(_margin(part, margin))
    for name in _names(case):
        if lettering.width(name.words) > case.room:  # it was cut short above
            yield name.words
    yield from map(say, axis.lost)
    if axis.slope and axis.clear is not None:
        yield say(message("drawings/leaning-half")) + "."
    if axis.rings or axis.seat is not None:
        yield f"{say(message('drawings/one-half'))}. {say(message('drawings/to-scale'))}."
    yield from map(say, section.more)
