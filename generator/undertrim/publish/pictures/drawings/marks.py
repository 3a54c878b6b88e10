"""The fastener marks of a panel picture: one shape per kind, told apart without colour; as path texts, so that a picture has two paths for all of its marks."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from undertrim.publish.pictures.drawings import svg

USUAL = 11.5
"""How wide a mark is on a panel that has room for all of them, in units of the panel."""


@dataclass(frozen=True, slots=True)
class Mark:
    """The path texts of one mark: what of it is stroked, and what is filled."""

    stroked: str = ""
    filled: str = ""


def symbols() -> tuple[str, ...]:
    """The kinds of mark that can be drawn, sorted."""
    return tuple(sorted(_SHAPES))


def mark(symbol: str, x: float, y: float, across: float) -> Mark:
    """One mark centred at `x`, `y`, `across` units wide. Raises ValueError for a kind that is not in `symbols()`."""
    if symbol not in _SHAPES:
        raise ValueError(f"no drawing of a '{symbol}' mark: known are {', '.join(symbols())}")
    return _SHAPES[symbol](_Pen(x, y, across / 10))


def sample(symbol: str, title: str, size: str = "1em") -> str:
    """The mark alone in a 12 x 12 box, for a key; `title` is its accessible name."""
    one = mark(symbol, 6, 6, 10)
    stroked = svg.lines(one.stroked, width=1.3) if one.stroked else ""
    return svg.drawing(title, (12, 12), size, stroked, svg.solid(one.filled) if one.filled else "")


def together(marks: list[Mark], *outlines: str) -> tuple[str, str]:
    """All of some marks as one stroked and one filled path text, `outlines` being stroked with them."""
    stroked = " ".join([*outlines, *(one.stroked for one in marks if one.stroked)])
    return stroked, " ".join(one.filled for one in marks if one.filled)


@dataclass(frozen=True, slots=True)
class _Pen:
    """Draws about a middle, in tenths of a mark's width."""

    x: float
    y: float
    unit: float

    def at(self, x: float, y: float) -> svg.Point:
        return self.x + x * self.unit, self.y + y * self.unit

    def circle(self, radius: float) -> str:
        return svg.circle(self.x, self.y, radius * self.unit)

    def polygon(self, *points: svg.Point) -> str:
        return svg.polygon([self.at(*point) for point in points])

    def hexagon(self, radius: float) -> str:
        return svg.polygon(svg.ring(self.x, self.y, radius * self.unit, 6))

    def line(self, *points: svg.Point) -> str:
        return self.polygon(*points).removesuffix(" Z")

    def cross(self, half: float) -> str:
        return f"{self.line((-half, 0), (half, 0))} {self.line((0, -half), (0, half))}"

    def hook(self) -> str:
        r = svg.number(3.6 * self.unit)
        start, foot, end, tip = (self.at(*point) for point in ((-3.6, -4.2), (-3.6, 1), (3.6, 1), (3.6, -1.2)))
        turn = f"A{r} {r} 0 0 0 {svg.number(end[0])} {svg.number(end[1])}"
        return f"M{svg.number(start[0])} {svg.number(start[1])} V{svg.number(foot[1])} {turn} V{svg.number(tip[1])}"


_ZIGZAG = ((-4.4, 2.6), (-2.6, -2.6), (-0.9, 2.6), (0.9, -2.6), (2.6, 2.6), (4.4, -2.6))
_SQUARE = ((-3.8, -3.8), (3.8, -3.8), (3.8, 3.8), (-3.8, 3.8))
_SHAPES: Mapping[str, Callable[[_Pen], Mark]] = {
    "bolt": lambda pen: Mark(f"{pen.hexagon(4.6)} {pen.cross(2)}"),
    "bond": lambda pen: Mark(pen.line(*_ZIGZAG)),
    "clip": lambda pen: Mark(filled=pen.polygon((-4.6, -3.6), (4.6, -3.6), (0, 4.6))),
    "hook": lambda pen: Mark(pen.hook()),
    "nut": lambda pen: Mark(filled=f"{pen.hexagon(5)} {pen.circle(2.3)}"),
    "other": lambda pen: Mark(pen.polygon(*_SQUARE)),
    "rivet": lambda pen: Mark(f"{pen.circle(4.3)} {pen.circle(1.7)}"),
    "screw": lambda pen: Mark(f"{pen.circle(4.3)} {pen.cross(2.2)}"),
    "scrivet": lambda pen: Mark(pen.circle(4.3), pen.circle(2)),
}
