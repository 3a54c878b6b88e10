"""A short length of wire in its real colours, outlined so that black and white show on any page."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import product

from undertrim.publish.pictures.drawings import svg

_HEX = re.compile(r"#[0-9a-fA-F]{6}")
_LEFT, _RIGHT, _TOP, _BOTTOM = 8.0, 47.0, 3.0, 13.0
_SLANT = 4.0
_GAP = 6.5
_BAND = 2.6
_BOX = (48, 16)
_INK = "currentColor"


@dataclass(frozen=True, slots=True)
class Shape:
    """One path of a wire: what it is filled with and the line around it, `none` for either that it has not; `width` is that of the line."""

    d: str
    fill: str
    stroke: str
    width: float


def swatch(base_hex: str, tracer_hexes: Sequence[str], title: str, size: str = "3em") -> str:
    """Insulation in the base colour, slanted bands for the tracers in their order, a bare end at the left.

    Colours are `#rrggbb`. The order is read from the bare end; it repeats as often as the length allows.
    Raises ValueError for another way of writing a colour, or for more tracers than can be drawn (8).
    """
    return svg.drawing(title, _BOX, size, *_drawn(base_hex, tracer_hexes))


def named(base_hex: str, tracer_hexes: Sequence[str]) -> str:
    """The id under which a page has a wire once."""
    return "-".join(["wire", *(colour.lstrip("#") for colour in (base_hex, *tracer_hexes))])


@lru_cache(maxsize=1024)
def symbol(base_hex: str, tracer_hexes: tuple[str, ...]) -> str:
    """A wire as a symbol, to be used any number of times by that id. Raises ValueError as `swatch` does."""
    return svg.symbol(named(base_hex, tracer_hexes), _BOX, *_drawn(base_hex, tracer_hexes))


def _drawn(base: str, tracers: Sequence[str]) -> list[str]:
    return [svg.element("path", d=one.d, fill=one.fill, **_stroke(one)) for one in shapes(base, tuple(tracers))]


def _stroke(one: Shape) -> dict[str, str | float]:
    """What has no line needs nothing said of it."""
    line: dict[str, str | float] = {"stroke": one.stroke, "stroke_width": one.width, "stroke_linecap": "round"}
    return line if one.stroke != "none" else {}


@lru_cache(maxsize=1024)  # of each wire at every contact it meets
def shapes(base: str, tracers: tuple[str, ...]) -> tuple[Shape, ...]:
    """What a wire is drawn of, in a box of 48 by 16, the lowest first. Raises ValueError as `swatch` does."""
    for colour in (base, *tracers):
        if _HEX.fullmatch(colour) is None:
            raise ValueError(f"'{colour}' is no colour: write #rrggbb")
    body = svg.rectangle(_LEFT, _TOP, _RIGHT - _LEFT, _BOTTOM - _TOP)
    bare, outline = Shape("M1.5 8 H8", "none", _INK, 3), Shape(body, "none", _INK, 1.4)
    return (bare, Shape(body, base, "none", 0), *_bands(base, tracers), outline)


def _bands(base: str, tracers: Sequence[str]) -> list[Shape]:
    """Slanted bands inside the wire, one run of tracers after the other."""
    if not tracers:
        return []
    if len(tracers) > 8:
        raise ValueError(f"{len(tracers)} tracers cannot be drawn: 8 at most")
    start, room = _LEFT + _SLANT + 1, _RIGHT - _LEFT - _SLANT - 2
    runs = max(1, int((room + _GAP) // (_BAND * len(tracers) + _GAP)))
    width = min(_BAND, room / len(tracers))
    step = width * len(tracers) + _GAP
    start += (room + _GAP - runs * step) / 2
    edge = _edge(base)
    bands: dict[str, list[str]] = {colour: [] for colour in tracers}
    for run, (place, colour) in product(range(runs), enumerate(tracers)):
        bands[colour].append(_band(start + run * step + place * width, width))
    return [Shape(" ".join(each), colour, edge, 0.4) for colour, each in bands.items()]


def _band(x: float, width: float) -> str:
    return svg.polygon([(x, _TOP), (x + width, _TOP), (x + width - _SLANT, _BOTTOM), (x - _SLANT, _BOTTOM)])


def _edge(base: str) -> str:
    """White on a dark base, black on a light one: parts the bands from the base where print has no colour.

    Dark is below 0.18 in relative luminance (sRGB, IEC 61966-2-1, its power curve taken as 2.2).
    """
    red, green, blue = (int(base[at : at + 2], 16) / 255 for at in (1, 3, 5))
    luminance = 0.2126 * red**2.2 + 0.7152 * green**2.2 + 0.0722 * blue**2.2
    return "#ffffff" if luminance < 0.18 else "#000000"
