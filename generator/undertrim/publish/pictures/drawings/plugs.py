"""A plug from one side: every position with its number, short mark and wire, the latch, and from where one looks.

Empty positions are crossed, those nobody recorded bear a question mark, those of some cars only are dashed.
One drawing unit is one pixel: a position is as wide as a fingertip, 44. Its texts are text.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal, TypeAlias

from undertrim.publish.pictures.drawings import svg, wires
from undertrim.words import Items, message, say

Side: TypeAlias = Literal["wires", "contacts"]
Edge: TypeAlias = Literal["top", "bottom", "left", "right", "none", "unknown"]
State: TypeAlias = Literal["pin", "blank", "unknown"]

CELL = 44
_TALL = 60
_FRAME = 1
_HEAD = 38
_TAB, _SIDE_TAB = 12, 6
_WEIGHT = 700
_LEAST_WIDTH = 192  # of the words above the plug
_FONTS = "Source Sans Pro, sans-serif"  # the sheet has no other face, and takes none that is not named


@dataclass(frozen=True, slots=True)
class Position:
    """One position: row and column from the top left, counted from 1; `name` is what a screen reader says.

    `base` and `tracers` are `#rrggbb`, `base` empty where the colour is not known. `link` is where a tap leads,
    such as `#pin-radio-main-4`. `some_cars` marks a contact that not every car has.
    """

    row: int
    column: int
    state: State
    number: str
    name: str
    mark: str = ""
    base: str = ""
    tracers: tuple[str, ...] = ()
    link: str = ""
    some_cars: bool = False


def least_width(columns: int, latch: Edge) -> int:
    """The width in px below which a position would be narrower than 44 px: scroll rather than shrink."""
    return max(columns * CELL + 2 * _FRAME + (_SIDE_TAB if latch in ("left", "right") else 0), _LEAST_WIDTH)


Wire: TypeAlias = Callable[[Position], str]
"""Draws the wire of a position whose colour is known."""


def drawn(item: Position) -> str:
    """The wire as `wires.swatch` draws it."""
    made = wires.swatch(item.base, item.tracers, item.name, size="36px")
    return svg.element("g", made, transform="translate(4 42)")


def used(item: Position) -> str:
    """The same where the page has its symbol."""
    return svg.element("use", href=f"#{wires.named(item.base, item.tracers)}", x=4, y=42, width=36, height=12)


def face(
    title: str, side: Side, latch: Edge, size: tuple[int, int], positions: Iterable[Position], wire: Wire = drawn
) -> str:
    """A plug of `size` (rows, columns) seen from `side`; `title` is its accessible name, positions may be links. `wire` draws the wires.

    Raises ValueError for a position outside, two at one place, a text that cannot be printed or a wire that
    cannot be drawn.
    """
    # Long because the attributes of the picture, a line each, stand beside the sums they come from.
    rows, columns = size
    placed = list(positions)
    _refuse(placed, rows, columns)
    width, top = least_width(columns, latch), _HEAD + (_TAB if latch == "top" else 0)
    height = top + rows * _TALL + _FRAME + (_TAB if latch == "bottom" else 0)
    side_tab = _SIDE_TAB if latch in ("left", "right") else 0
    left = (width - columns * CELL - side_tab) / 2 + (side_tab if latch == "left" else 0)
    each = [_position(item, side, left, top, wire) for item in placed]
    return svg.element(
        "svg",
        _words(side, latch, width),
        _latch(latch, left, top, columns * CELL, rows * _TALL),
        svg.lines(svg.rectangle(left, top, columns * CELL, rows * _TALL), width=2),
        *each,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {width} {height}",
        width=f"{width}px",
        height=f"{height}px",
        font_family=_FONTS,
        font_weight=_WEIGHT,
        fill="currentColor",
        role="group",
        aria_label=title,
    )


def _refuse(positions: list[Position], rows: int, columns: int) -> None:
    for item in positions:
        if not (1 <= item.row <= rows and 1 <= item.column <= columns):
            raise ValueError(f"row {item.row}, column {item.column} is not in a plug of {rows} by {columns}")
        if not (item.number + item.mark).isprintable():
            raise ValueError(f"{item.number!r} {item.mark!r} cannot be printed")
    if len({(item.row, item.column) for item in positions}) < len(positions):
        raise ValueError("two positions at one place")


def _words(side: Side, latch: Edge, width: int) -> str:
    head = _text(say(message(f"drawings/looking-{side}")), width / 2, 15, 14, anchor="middle", aria_hidden="true")
    latched = say(message(f"drawings/latch-{latch}"))
    return head + _text(latched, width / 2, 31, 12, anchor="middle", weight=400, aria_hidden="true")


def _latch(latch: Edge, x: float, y: float, width: float, height: float) -> str:
    """A solid tongue on its edge, a third of it long."""
    if latch in ("none", "unknown"):
        return ""
    along, thick = (width, _TAB - 2) if latch in ("top", "bottom") else (height, _SIDE_TAB - 1)
    part, start = along / 3, along / 3
    tongues = {
        "top": (x + start, y - thick, part, thick),
        "bottom": (x + start, y + height, part, thick),
        "left": (x - thick, y + start, thick, part),
        "right": (x + width, y + start, thick, part),
    }
    return svg.solid(svg.rectangle(*tongues[latch]))


def _position(item: Position, side: Side, left: float, top: float, wire: Wire) -> str:
    """One position, moved to its place; a link where it leads somewhere."""
    place = f"translate({svg.number(left + (item.column - 1) * CELL)} {svg.number(top + (item.row - 1) * _TALL)})"
    body = _inside(replace(item, row=1, column=1), side, wire)
    if item.link:
        return svg.element("a", body, href=item.link, aria_label=_spoken(item), transform=place)
    return svg.element("g", body, role="img", aria_label=item.name, transform=place)


def _spoken(item: Position) -> str:
    """What a link is called: first what can be read in it, so that who says what is seen hits it (WCAG 2.2, 2.5.3)."""
    seen = item.number + {"pin": item.mark + ("" if item.base else "?"), "blank": "", "unknown": "?"}[item.state]
    return say(Items((seen, item.name), "comma"))


@lru_cache(maxsize=4096)
def _inside(item: Position, side: Side, wire: Wire) -> str:
    """What is in a position, wherever that is: cars have many contacts in common. It is said by the name of the position, not by itself."""
    inside = _pin(item, wire) if item.state == "pin" else _blank() if item.state == "blank" else _unknown()
    outline = svg.element(
        "rect", width=CELL, height=_TALL, fill="none", stroke="currentColor", stroke_width=1, pointer_events="all"
    )
    number = _text(item.number, 4, 14, 12.5)
    end = _end(side) if wire is drawn else svg.element("use", href=f"#{_END[side]}", width=CELL, height=_TALL)
    return svg.element("g", outline, number, end if item.state == "pin" else "", inside, aria_hidden="true")


def _pin(item: Position, wire: Wire) -> str:
    return (
        _mark(item.mark)
        + (wire(item) if item.base else _no_colour())
        + (_dashed(2, 2, CELL - 4, _TALL - 4) if item.some_cars else "")
    )


def _mark(mark: str) -> str:
    """The short mark; a long one is fitted to the position, since the font of the page may be a wide one."""
    long: dict[str, str | float] = {}
    if len(mark) > 3:
        long = {"textLength": 34 if len(mark) == 4 else 38, "lengthAdjust": "spacingAndGlyphs"}
    return _text(mark, CELL / 2, 35, 13, anchor="middle", weight=_WEIGHT, **long)


def _no_colour() -> str:
    """A dashed gap with a question mark."""
    return _dashed(6, 42, 32, 13) + _text("?", CELL / 2, 53, 12, anchor="middle", weight=400)


def _blank() -> str:
    return svg.lines("M6 20 L38 54", "M38 20 L6 54", width=1.6)


def _unknown() -> str:
    return _text("?", CELL / 2, 46, 26, anchor="middle", weight=400)


def ends() -> list[str]:
    """The symbols of both ends, for a page that draws its wires with `used`."""
    sides: tuple[Side, Side] = ("wires", "contacts")
    return [svg.symbol(_END[side], (CELL, _TALL), _end(side)) for side in sides]


_END: dict[Side, str] = {"wires": "plug-wires", "contacts": "plug-contacts"}


def _end(side: Side) -> str:
    """In the corner: a strand coming out at the wires, a slot at the contacts."""
    if side == "wires":
        ring = svg.element("path", d=svg.circle(36, 9, 4.5), fill="none", stroke="currentColor", stroke_width=1.2)
        return ring + svg.solid(svg.circle(36, 9, 1.8))
    return svg.lines(svg.rectangle(31, 5, 9, 8), width=1.2) + svg.solid(svg.rectangle(33, 8, 5, 2))


def _dashed(x: float, y: float, width: float, height: float) -> str:
    return svg.element(
        "rect", x=x, y=y, width=width, height=height, fill="none", stroke="currentColor", stroke_dasharray="3 2"
    )


def _text(
    words: str, x: float, y: float, size: float, anchor: str = "start", weight: int = _WEIGHT, **more: str | float
) -> str:
    if not words:
        return ""
    own: dict[str, str | float] = {"font_weight": weight} if weight != _WEIGHT else {}
    if anchor != "start":
        own["text_anchor"] = anchor
    return svg.element("text", svg.escaped(words), x=x, y=y, font_size=size, **own, **more)
