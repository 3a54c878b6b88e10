"""Builds SVG text: every attribute and every piece of text is escaped here and nowhere else."""

import html
import math
import re
from collections.abc import Iterable
from functools import lru_cache
from typing import TypeAlias

Point: TypeAlias = tuple[float, float]

NAMESPACE = "http://www.w3.org/2000/svg"
_SIZE = re.compile(r"(\d+(?:\.\d+)?)(em|rem|px|mm)")
_PLAIN = re.compile(r"[\w .,:;/#()%+-]*", re.ASCII)  # as nearly every path, number and name is
_NOT_XML = re.compile(r"[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_SPACES = {ord(space): f"&#{ord(space)};" for space in "\t\n\r"}


@lru_cache(maxsize=8192)  # thousands on every page, of a few hundred that come again and again
def number(value: float) -> str:
    """At most two decimals, no trailing zeros, never `-0`."""
    return f"{round(value, 2) + 0.0:.2f}".rstrip("0").rstrip(".")


def element(name: str, /, *children: str, **attributes: str | float) -> str:
    """One element around ready markup; `stroke_width=2` becomes `stroke-width="2"`."""
    pairs = [f' {key.replace("_", "-")}="{_value(value)}"' for key, value in attributes.items()]
    inside = "".join(children)
    return f"<{name}{''.join(pairs)}>{inside}</{name}>" if inside else f"<{name}{''.join(pairs)}/>"


def drawing(title: str, box: tuple[int, int], size: str, *children: str) -> str:
    """A whole picture with `title` as its accessible name.

    `box` is width and height in drawing units; `size` is the width on the page in em, rem, px or mm,
    the height follows. Raises ValueError for another size.
    """
    match = _SIZE.fullmatch(size)
    if match is None:
        raise ValueError(f"'{size}' is no size: write a number with em, rem, px or mm")
    width, height = box
    named = element("title", escaped(title))
    return element(
        "svg",
        named,
        *children,
        xmlns=NAMESPACE,
        viewBox=f"0 0 {width} {height}",
        width=size,
        height=number(float(match[1]) * height / width) + match[2],
        role="img",
    )


def symbol(name: str, box: tuple[int, int], *children: str) -> str:
    """A picture that is drawn once and used by its name wherever it is shown (`used`)."""
    return element("symbol", *children, id=name, viewBox=f"0 0 {box[0]} {box[1]}")


def used(name: str) -> str:
    """A picture of a symbol beside the words that say what it is; the page's style gives it its size."""
    return element("svg", element("use", href=f"#{name}"), aria_hidden="true")


def inline(drawn: str) -> str:
    """A picture as it stands in a page, which knows by itself what SVG is."""
    return drawn.replace(f' xmlns="{NAMESPACE}"', "", 1)


def description(words: str) -> str:
    """What a picture shows, in words, for those who do not see it; stands first in a drawing."""
    return element("desc", escaped(words))


def text(x: float, y: float, words: str, anchor: str = "start", *, upright: bool = False) -> str:
    """One line of text on its baseline; `upright` turns it so that it is read from the right."""
    turn = {"transform": f"rotate(-90 {number(x)} {number(y)})"} if upright else {}
    return element("text", escaped(words), x=x, y=y, text_anchor=anchor, **turn)


def lines(*paths: str, width: float = 1.6) -> str:
    """Stroked, unfilled paths in the colour of the text; one `<path>` each."""
    drawn = [element("path", d=path) for path in paths]
    return element(
        "g",
        *drawn,
        fill="none",
        stroke="currentColor",
        stroke_width=width,
        stroke_linecap="round",
        stroke_linejoin="round",
    )


def solid(*paths: str) -> str:
    """Filled paths in the colour of the text; a path inside a path is a hole."""
    return element("path", d=" ".join(paths), fill="currentColor", fill_rule="evenodd")


def polygon(points: Iterable[Point]) -> str:
    """The path text of a closed polygon."""
    return "M" + " L".join(f"{number(x)} {number(y)}" for x, y in points) + " Z"


def circle(x: float, y: float, radius: float) -> str:
    """The path text of a full circle."""
    r = number(radius)
    left, right = f"{number(x - radius)} {number(y)}", f"{number(x + radius)} {number(y)}"
    return f"M{left} A{r} {r} 0 1 0 {right} A{r} {r} 0 1 0 {left} Z"


def rectangle(x: float, y: float, width: float, height: float) -> str:
    """The path text of an upright rectangle; `x`, `y` is its upper left corner."""
    return f"M{number(x)} {number(y)} h{number(width)} v{number(height)} h{number(-width)} Z"


def ring(x: float, y: float, radius: float, count: int, first: float = 0) -> list[Point]:
    """`count` points evenly round a centre; `first` is its first angle, degrees clockwise from right."""
    angles = [math.radians(first + 360 * place / count) for place in range(count)]
    return [(x + radius * math.cos(angle), y + radius * math.sin(angle)) for angle in angles]


def escaped(words: str) -> str:
    """Words as text of an element, without the letters that no XML may hold."""
    return html.escape(_NOT_XML.sub("", words), quote=False)


def _value(value: str | float) -> str:
    """A value between double quotes; a line's end would become a space, were it not named."""
    if not isinstance(value, str):
        return number(value)
    return value if _PLAIN.fullmatch(value) else html.escape(_NOT_XML.sub("", value)).translate(_SPACES)
