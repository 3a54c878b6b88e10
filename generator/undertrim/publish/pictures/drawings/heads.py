"""Fastener heads seen from above: what is let into the head is filled, what stands proud is outlined."""

import math
from collections.abc import Callable, Mapping

from undertrim.publish.pictures.drawings import svg

_CENTRE = 12.0
_FLANGE = 10.8
# ISO 10664, size 30: A 5.60 mm over the points, B 4.05 mm between the hollows. Sizes 10 to 60 keep the ratio
# within 0.02.
_B_TO_A = 4.05 / 5.60
# Radius of the lobe tips over A. From memory; the radius between the lobes then follows from A and B.
_TIP_TO_A = 0.08


def families() -> tuple[str, ...]:
    """The drive families that can be drawn, sorted."""
    return tuple(sorted(_SHAPES))


def head(family: str, label: str, size: str = "2em") -> str:
    """The head of a fastener from above in a 24 x 24 box; `label` is its accessible name.

    Raises ValueError for a family that is not in `families()`.
    """
    if family not in _SHAPES:
        raise ValueError(f"no drawing of a '{family}' head: known are {', '.join(families())}")
    return svg.drawing(label, (24, 24), size, *_SHAPES[family]())


def symbol(name: str, family: str) -> str:
    """The same as a symbol. Raises KeyError for a family that is not in `families()`."""
    return svg.symbol(name, (24, 24), *_SHAPES[family]())


def lobes(across: float, x: float = _CENTRE, y: float = _CENTRE) -> str:
    """The path of a hexalobular outline (ISO 10664) `across` units over the lobe points.

    Six round tips joined by six hollows; each pair of arcs meets with a common tangent.
    """
    tip, hollow = _TIP_TO_A * across, _hollow_radius(across)
    tips = svg.ring(x, y, across / 2 - tip, 6, first=-90)
    hollows = svg.ring(x, y, _B_TO_A * across / 2 + hollow, 6, first=-60)
    path = ""
    for place in range(6):
        before, after = hollows[place - 1], hollows[place]
        start, end = (_towards(tips[place], other, tip) for other in (before, after))
        path += _to(start, hollow, sweep=0) if path else f"M{_at(start)}"
        path += _to(end, tip, sweep=1)
    return path + _to(_towards(tips[0], hollows[-1], tip), hollow, sweep=0) + " Z"


def _hollow_radius(across: float) -> float:
    """Radius of the hollow that touches two neighbouring tips and reaches in to B.

    Solves |tip centre - hollow centre| = tip + hollow, the condition for circles that touch from outside.
    """
    tip, half_b = _TIP_TO_A * across, _B_TO_A * across / 2
    out, cosine = across / 2 - tip, math.cos(math.radians(30))
    above = out**2 + half_b**2 - 2 * out * half_b * cosine - tip**2
    return above / (2 * (tip + out * cosine - half_b))


def _towards(start: svg.Point, end: svg.Point, length: float) -> svg.Point:
    scale = length / math.dist(start, end)
    return start[0] + scale * (end[0] - start[0]), start[1] + scale * (end[1] - start[1])


def _at(point: svg.Point) -> str:
    return f"{svg.number(point[0])} {svg.number(point[1])}"


def _to(point: svg.Point, radius: float, sweep: int) -> str:
    r = svg.number(radius)
    return f" A{r} {r} 0 0 {sweep} {_at(point)}"


def _flange() -> str:
    return svg.lines(svg.circle(_CENTRE, _CENTRE, _FLANGE), width=1.4)


def _hexagon(across_flats: float) -> str:
    """A regular hexagon with two flats upright."""
    return svg.polygon(svg.ring(_CENTRE, _CENTRE, across_flats / math.sqrt(3), 6, first=-90))


def _arms(arm: list[svg.Point]) -> list[svg.Point]:
    """The outline of the arm that points right, as (outward, sideways), at all four quarter turns."""
    turns = [(1, 0), (0, 1), (-1, 0), (0, -1)]
    return [(_CENTRE + u * c - v * s, _CENTRE + u * s + v * c) for c, s in turns for u, v in arm]


def _phillips() -> tuple[str, ...]:
    """Arms that taper outward and run into each other over slanted corners: type H of ISO 4757."""
    return _flange(), svg.solid(svg.polygon(_arms([(3.4, -1.7), (7.6, -1.15), (7.6, 1.15), (3.4, 1.7)])))


def _pozidriv() -> tuple[str, ...]:
    """Straight arms with square corners, and four thin lines between them: type Z of ISO 4757."""
    cross = svg.solid(svg.polygon(_arms([(1.5, -1.5), (7.6, -1.5), (7.6, 1.5), (1.5, 1.5)])))
    inner, outer = svg.ring(_CENTRE, _CENTRE, 3.6, 4, first=45), svg.ring(_CENTRE, _CENTRE, 7.4, 4, first=45)
    rays = [f"M{_at(a)} L{_at(b)}" for a, b in zip(inner, outer, strict=True)]
    return _flange(), cross, svg.lines(*rays, width=0.9)


def _pinned() -> tuple[str, ...]:
    pin = svg.circle(_CENTRE, _CENTRE, 2.3)
    return _flange(), svg.solid(lobes(14.5), pin)


def _wing_nut() -> tuple[str, ...]:
    """Turned by hand: a round boss with a wing to either side."""
    wings = (
        "M8.4 10.3 L3.2 7.6 Q0.6 12 3.2 16.4 L8.4 13.7 Z",
        "M15.6 10.3 L20.8 7.6 Q23.4 12 20.8 16.4 L15.6 13.7 Z",
    )
    boss = svg.circle(_CENTRE, _CENTRE, 4.6)
    return svg.solid(*wings), svg.lines(boss, width=1.4), svg.solid(svg.circle(_CENTRE, _CENTRE, 2))


_SHAPES: Mapping[str, Callable[[], tuple[str, ...]]] = {
    "external-hexalobular": lambda: (_flange(), svg.lines(lobes(16.5), width=1.4)),
    "hand": _wing_nut,
    "hex": lambda: (_flange(), svg.lines(_hexagon(14), width=1.4)),
    "hex-key": lambda: (_flange(), svg.solid(_hexagon(10.5))),
    "hexalobular": lambda: (_flange(), svg.solid(lobes(14.5))),
    "hexalobular-pin": _pinned,
    "phillips": _phillips,
    "pozidriv": _pozidriv,
    "slot": lambda: (_flange(), svg.solid(svg.rectangle(3.6, 10.6, 16.8, 2.8))),
}
