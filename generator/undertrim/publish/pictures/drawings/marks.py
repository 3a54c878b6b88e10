"""The fastener marks of a panel picture: one shape per kind, told apart without colour."""

import math
from collections.abc import Callable, Mapping

from undertrim.publish.pictures.drawings import svg

USUAL = 11.52
"""How wide a mark is on a panel that has room for all of them, in units of the panel."""


def symbols() -> tuple[str, ...]:
    """The kinds of mark that can be drawn, sorted."""
    return tuple(sorted(_SHAPES))


def mark(symbol: str, x: float, y: float, across: float) -> str:
    """One mark centred at `x`, `y`, `across` units wide, carrying `data-mark` with its kind.

    Raises ValueError for a kind that is not in `symbols()`.
    """
    if symbol not in _SHAPES:
        raise ValueError(f"no drawing of a '{symbol}' mark: known are {', '.join(symbols())}")
    return svg.element("g", *_SHAPES[symbol](), data_mark=symbol, transform=_place(x, y, across))


def _place(x: float, y: float, across: float) -> str:
    return f"translate({svg.number(x)} {svg.number(y)}) {_scale(across)}"


def _scale(across: float) -> str:
    return f"scale({across / 10:.3f})"


def named(symbol: str) -> str:
    """The id under which a page has a mark once."""
    return f"mark-{symbol}"


def shape(symbol: str) -> str:
    """A mark to be used by that id, as wide as nearly all of them are."""
    return svg.element("g", svg.element("g", *_SHAPES[symbol](), transform=_scale(USUAL)), id=named(symbol))


def used(symbol: str, x: float, y: float, across: float) -> str:
    """The same as `mark`, where the page has its shape."""
    if math.isclose(across, USUAL):
        return svg.element("use", href=f"#{named(symbol)}", x=x, y=y)
    place = f"translate({svg.number(x)} {svg.number(y)}) {_scale(10 * across / USUAL)}"
    return svg.element("use", href=f"#{named(symbol)}", transform=place)


def sample(symbol: str, title: str, size: str = "1em") -> str:
    """The mark alone in a 12 x 12 box, for a legend."""
    return svg.drawing(title, (12, 12), size, mark(symbol, 6, 6, 10))


def _screw() -> tuple[str, ...]:
    return (svg.lines(svg.circle(0, 0, 4.3), "M-2.2 0 H2.2", "M0 -2.2 V2.2", width=1.3),)


def _scrivet() -> tuple[str, ...]:
    return svg.lines(svg.circle(0, 0, 4.3), width=1.3), svg.solid(svg.circle(0, 0, 2))


def _bond() -> tuple[str, ...]:
    return (svg.lines("M-4.4 2.6 L-2.6 -2.6 L-0.9 2.6 L0.9 -2.6 L2.6 2.6 L4.4 -2.6", width=1.3),)


def _rivet() -> tuple[str, ...]:
    return svg.lines(svg.circle(0, 0, 4.3), width=1.3), svg.lines(svg.circle(0, 0, 1.7), width=1.3)


_SHAPES: Mapping[str, Callable[[], tuple[str, ...]]] = {
    "bolt": lambda: (svg.lines(svg.polygon(svg.ring(0, 0, 4.6, 6)), "M-2 0 H2", "M0 -2 V2", width=1.3),),
    "bond": _bond,
    "clip": lambda: (svg.solid(svg.polygon([(-4.6, -3.6), (4.6, -3.6), (0, 4.6)])),),
    "hook": lambda: (svg.lines("M-3.6 -4.2 V1 A3.6 3.6 0 0 0 3.6 1 V-1.2", width=1.9),),
    "nut": lambda: (svg.solid(svg.polygon(svg.ring(0, 0, 5, 6)), svg.circle(0, 0, 2.3)),),
    "other": lambda: (svg.lines(svg.rectangle(-3.8, -3.8, 7.6, 7.6), width=1.3),),
    "rivet": _rivet,
    "screw": _screw,
    "scrivet": _scrivet,
}
