"""An opening in the dash from the side: chassis and plugs against what is behind, with the front of the dash at the left."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.publish.pictures.drawings import legends, pens, svg
from undertrim.publish.pictures.drawings.dimensions import Span
from undertrim.publish.pictures.drawings.frames import Dash
from undertrim.words import message, say

_STUB = 12.0  # units of dash drawn above and below the opening
_FLAT = 60.0  # mm; height of the opening where neither it nor the body is known
_PLUGS = 0.5  # share of the height of the chassis at which the plug room is sketched


@dataclass(frozen=True, slots=True)
class Side:
    """The side view from `left` and `top` on, at `unit` units a mm."""

    dash: Dash
    unit: float
    left: float
    top: float

    @property
    def bottom(self) -> float:
        """Its lower edge."""
        return self.top + _high(self.dash) * self.unit + 2 * _STUB

    @property
    def sill(self) -> float:
        """The lower edge of the opening."""
        return self.bottom - _STUB

    def x(self, deep: float) -> float:
        """Where a depth in mm is."""
        return round(self.left + deep * self.unit, 3)

    def y(self, up: float) -> float:
        """Where a height in mm above the lower edge of the opening is."""
        return round(self.sill - up * self.unit, 3)


def _high(dash: Dash) -> float:
    known = [frame.height.mm for frame in (dash.holder, dash.body) if frame and frame.height.mm is not None]
    return max(known, default=_FLAT)


def deepest(dash: Dash) -> float | None:
    """How deep the view goes, in mm; None where no depth is known."""
    known = [mm for mm in (dash.clear.mm, dash.chassis.mm, _needed(dash)) if mm is not None]
    return max(known) if known and max(known) > 0 else None


def _needed(dash: Dash) -> float | None:
    """Chassis and plugs together in mm."""
    if dash.chassis.mm is None or dash.plug_room.mm is None:
        return None
    return dash.chassis.mm + dash.plug_room.mm


def sketched(dash: Dash) -> bool:
    """Whether a height of the view has no number."""
    return dash.holder.height.mm is None or bool(dash.body is None or dash.body.height.mm is None)


def drawn(side: Side) -> Iterator[str]:
    """The view itself."""
    dash, high = side.dash, _high(side.dash)
    stubs = ((side.top, side.y(high)), (side.sill, side.bottom))
    yield pens.stroke("bold", *(pens.line(side.left, start, side.left, end) for start, end in stubs), part="front")
    if dash.clear.mm is not None:
        yield from _behind(side, side.x(dash.clear.mm))
    if dash.chassis.mm is None:
        return
    up = dash.body.height.mm if dash.body and dash.body.height.mm is not None else 0.8 * high
    path = svg.rectangle(side.left, side.y(up), side.x(dash.chassis.mm) - side.left, side.sill - side.y(up))
    yield pens.stroke("outline", path, part="chassis")
    if dash.plug_room.mm is not None:
        start, end, part = side.x(dash.chassis.mm), side.x(dash.chassis.mm + dash.plug_room.mm), _PLUGS * up
        path = svg.rectangle(start, side.y((up + part) / 2), end - start, part * side.unit)
        yield pens.stroke("hidden", path, part="plugs")
    if dash.strikes and dash.clear.mm is not None:
        yield legends.strike(side.x(dash.clear.mm), side.y(up / 2))


def _behind(side: Side, x: float) -> Iterator[str]:
    yield pens.stroke("outline", pens.line(x, side.top, x, side.bottom), part="behind")
    feet = [side.top + 8 + 7 * place for place in range(int((side.bottom - side.top - 8) / 7) + 1)]
    yield pens.stroke("thin", *(pens.line(x, y, x + 6, y - 6) for y in feet))


def spans(side: Side) -> Iterator[Span]:
    """The dimensions below it."""
    dash, low = side.dash, side.sill
    needed = _needed(dash)
    if dash.chassis.mm is not None:
        words = say(message("drawings/chassis-of", size=dash.chassis.text))
        yield Span("chassis", words, side.left, side.x(dash.chassis.mm), low, low)
        if needed is not None:
            ends = side.x(dash.chassis.mm), side.x(needed)
            yield Span("plugs", say(message("drawings/plugs-of", size=dash.plug_room.text)), *ends, low, low)
    if dash.clear.mm is not None:
        words = say(message("drawings/clear-depth-to", size=dash.clear.text, behind=dash.behind))
        yield Span("clear", words, side.left, side.x(dash.clear.mm), side.bottom, side.bottom)
    if dash.margin and needed is not None and dash.clear.mm is not None:
        words = say(message("drawings/behind", margin=dash.margin))
        yield Span("margin", words, side.x(needed), side.x(dash.clear.mm), low, side.bottom)
