"""A hand, and the tools that it holds, as marks of a sketch. Lengths are drawing units; `x`, `y` is where the fingers meet."""

from undertrim.publish.pictures.drawings import pens, svg

BAR = 10.0
"""How thick a tool is where it is held."""

# Thumb and forefinger from the side, meeting round a bar at 0, 0, with the cuff of a sleeve at the right: lines drawn by us.
_HAND = (
    "M60 -25 C46 -30 32 -28 22 -21 C14 -16 4 -12 -4 -10 C-9 -8 -8 -4 -3 -4 C6 -4 14 -7 20 -6 "
    "C15 0 8 4 -1 5 C-8 6 -8 12 -1 13 C14 15 28 13 36 7 C44 11 52 13 60 13"
)
_FOLDS = ("M30 -17 C24 -13 24 -7 30 -5 C36 -3 42 -7 41 -12", "M42 -18 C37 -15 37 -9 42 -7 C47 -6 51 -9 50 -13")
_CUFF = svg.rectangle(60, -28, 9, 44)


def hand(x: float, y: float, turn: float = 0, *, left: bool = False) -> str:
    """A hand that pinches a bar at a point; it comes from the right, or from the left, turned clockwise by `turn` degrees.

    The page's style fills what has `data-hand` with its ground, so that it hides what is behind.
    """
    mirrored = " scale(-1 1)" if left else ""
    place = f"translate({svg.number(x)} {svg.number(y)}) rotate({svg.number(turn)}){mirrored}"
    solid = svg.element("g", pens.stroke("outline", f"{_HAND} {_CUFF}"), data_hand="")
    return svg.element("g", solid, pens.stroke("thin", *_FOLDS), transform=place)


def bar(x: float, y: float, long: float, *, upright: bool = False) -> str:
    """A straight edge or the beam of a calliper, with its scale; it begins at a point and is centred on it across."""
    half, ticks = BAR / 2, [4 + 5 * place for place in range(int((long - 6) / 5))]
    if upright:
        outline = svg.rectangle(x - half, y, BAR, long)
        scale = [pens.line(x - half, y + at, x - half + 3, y + at) for at in ticks]
    else:
        outline = svg.rectangle(x, y - half, long, BAR)
        scale = [pens.line(x + at, y - half, x + at, y - half + 3) for at in ticks]
    return pens.stroke("outline", outline) + pens.stroke("thin", *scale)


def edge(x: float, y: float, long: float, *, upright: bool = False) -> str:
    """A straight edge without a scale."""
    half = 3.0
    box = svg.rectangle(x - half, y, 2 * half, long) if upright else svg.rectangle(x, y - half, long, 2 * half)
    return pens.stroke("outline", box)


def rod(x: float, y: float, to_x: float, to_y: float) -> str:
    """The depth rod of a calliper, from its foot to its tip."""
    return pens.stroke("outline", pens.line(x, y, to_x, to_y)) + svg.solid(svg.circle(to_x, to_y, 2))


def jaw(x: float, y: float, long: float, way: int) -> str:
    """A pointed jaw that hangs from a beam at a point, `long` down (up where negative); its straight side is the one that touches, towards `way`."""
    points = [(x, y), (x, y + long), (x - way * 9, y + long * 0.35), (x - way * 9, y)]
    return pens.stroke("outline", svg.polygon(points))
