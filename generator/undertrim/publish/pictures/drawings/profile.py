"""The picture of a section: surfaces, rings and the speaker, in drawing units."""

from collections.abc import Iterator, Sequence

from undertrim.publish.pictures.drawings import legends, pens, svg
from undertrim.publish.pictures.drawings.axis import Axis, Margin, Section, Speaker
from undertrim.publish.pictures.drawings.lettering import Box
from undertrim.publish.pictures.drawings.views import PAD, View

_SHEET = 3.0  # units; thicknesses of sheet and flange are not recorded, so they are the same at every scale
_SHAFT = 0.6  # share of the depth at which the sketched basket meets the magnet
_STUB = 16.0  # units; of what is behind where it is not known how it leans
_RIM = 9.0  # units; width of a ring where neither hole nor flange says


def drawn(section: Section, axis: Axis, view: View) -> Iterator[str]:
    """Everything that is known, from behind to the front, one half of it: the axis is the lower edge."""
    yield from _centre(view)
    yield from _behind(axis, view)
    yield from _mounting(section, axis, view)
    inner, outer = rim(section, view)
    for ring in axis.rings:
        yield from _ring(Box(view.x(ring.top), view.y(outer), view.x(ring.bottom), view.y(inner)), ring.part)
    if section.speaker and axis.seat is not None:
        yield from _speaker(section.speaker, axis, axis.seat, view)
    if axis.room is not None:
        x = view.x(axis.room)
        yield pens.stroke("grille", pens.line(x - 1.3, view.top, x - 1.3, view.bottom), part="grille")
    yield from (legends.strike(x, y) for x, y in strikes(section, axis, view))


def rim(section: Section, view: View) -> tuple[float, float]:
    """Inner and outer radius in mm at which rings are drawn: sketched between hole and flange, neither of which need be known."""
    speaker = section.speaker
    flange = speaker.flange.half if speaker else None
    inner = section.hole.half
    if inner is None:
        inner = max(flange - _RIM / view.unit, 0) if flange is not None else 0.7 * view.half
    least = inner + _RIM / view.unit
    return inner, min(max(least, flange or 0), max(view.half, least))


def edge(section: Section) -> float | None:
    """The radius of the magnet in mm, 0 where nothing leans so that it does not matter; None where it is not known."""
    magnet = section.speaker.magnet.half if section.speaker else None
    return 0.0 if magnet is None and section.slope == 0 else magnet


def seen(axis: Axis, view: View) -> float:
    """Up to how far from the axis the thing behind is drawn, in mm: to the edge of the picture, or a stub where its lean is not known."""
    return view.half if axis.slope is not None else _STUB / view.unit


def strikes(section: Section, axis: Axis, view: View) -> Iterator[tuple[float, float]]:
    """Where gear and car meet that should not, in drawing units."""
    behind, front, radius = section.margin_behind, section.margin_front, edge(section)
    if _strikes(behind) and axis.back is not None and axis.clear is not None and radius is not None:
        yield view.x(axis.back), view.y(radius)
    if _strikes(front) and axis.cone is not None and axis.room is not None:
        yield view.x(axis.cone), view.bottom


def _strikes(margin: Margin | None) -> bool:
    return margin is not None and margin.verdict == "strikes"


def _centre(view: View) -> Iterator[str]:
    """The axis, with the two short strokes at its ends that stand for the half not drawn (from memory of ISO 128-3)."""
    y, ends = view.bottom, (view.x(view.low) - PAD / 2, view.right - PAD / 2)
    yield pens.stroke("centre", pens.line(ends[0], y, ends[1], y), part="axis")
    yield pens.stroke("thin", *(pens.line(x + by, y - 4, x + by, y + 4) for x in ends for by in (-1.5, 1.5)))


def _behind(axis: Axis, view: View) -> Iterator[str]:
    """The surface of what is behind, hatched on its far side."""
    if axis.clear is None:
        return
    high = view.y(seen(axis, view))
    near = axis.behind(view.half)
    top, bottom = view.x(axis.clear if near is None else near), view.x(axis.clear)
    yield pens.stroke("outline", pens.line(top, high, bottom, view.bottom), part="behind")
    count = max(2, int((view.bottom - high) / 7))
    shares = [(place + 0.5) / count for place in range(count)]
    feet = [(top + share * (bottom - top), high + share * (view.bottom - high)) for share in shares]
    yield pens.stroke("thin", *(pens.line(x, y, x + 6, y - 6) for x, y in feet if y - 6 >= high))


def _mounting(section: Section, axis: Axis, view: View) -> Iterator[str]:
    """The skin beside its hole, and the face that depths count from where that is another one."""
    inner, outer = rim(section, view)
    start = inner if section.hole.mm is not None else outer
    if axis.skin is not None:
        box = svg.rectangle(view.x(axis.skin), view.top, _SHEET, view.y(start) - view.top)
        yield svg.element("path", d=box, fill="currentColor", data_part="skin")
    if axis.skin != 0:
        yield pens.stroke("adjacent", pens.line(view.x(0), view.top, view.x(0), view.bottom), part="datum")


def _ring(box: Box, part: str) -> Iterator[str]:
    path = svg.rectangle(box.left, box.top, box.right - box.left, box.bottom - box.top)
    yield pens.hatch(box)
    yield pens.stroke("outline", path, part=part)


def _speaker(speaker: Speaker, axis: Axis, seat: float, view: View) -> Iterator[str]:
    flange, basket, magnet = speaker.flange.half, speaker.basket.half, speaker.magnet.half
    if flange is not None:
        box = svg.rectangle(view.x(seat) - _SHEET, view.y(flange), _SHEET, flange * view.unit)
        yield svg.element("path", d=box, fill="currentColor", data_part="flange")
    if axis.back is not None:
        yield from _body(view, (seat, axis.back), basket, magnet)
    radius = basket if basket is not None else flange
    if axis.cone is not None and radius is not None:
        yield pens.stroke("hidden", _cone(view, (seat, radius), axis.cone), part="cone")


def _cone(view: View, rim: svg.Point, tip: float) -> str:
    """From the rim to the tip at the axis, where it is upright."""
    seat, radius = rim
    start, bend, end = (
        (view.x(along), view.y(across)) for along, across in ((seat, radius), (tip, radius / 2), (tip, 0))
    )
    return f"M{_at(start)} Q{_at(bend)} {_at(end)}"


def _at(point: svg.Point) -> str:
    return f"{svg.number(point[0])} {svg.number(point[1])}"


def _body(view: View, ends: tuple[float, float], basket: float | None, magnet: float | None) -> Iterator[str]:
    """Basket and magnet; only a dashed box as wide as the one of them that is known; nothing where neither is."""
    seat, back = ends
    if basket is not None and magnet is not None:
        shaft = seat + _SHAFT * (back - seat)
        points = [(seat, basket), (shaft, magnet), (back, magnet), (back, 0)]
        yield pens.stroke("outline", _open(view, points), part="body")
    elif (radius := basket if magnet is None else magnet) is not None:
        yield pens.stroke(
            "hidden", _open(view, [(seat, 0), (seat, radius), (back, radius), (back, 0)]), part="envelope"
        )


def _open(view: View, points: Sequence[svg.Point]) -> str:
    return "M" + " L".join(_at((view.x(along), view.y(across))) for along, across in points)
