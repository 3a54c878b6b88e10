"""What is measured from the front: the hole, its bolt holes, and the opening in a dash."""

from undertrim.publish.pictures.drawings import pens, svg
from undertrim.publish.pictures.drawings.measuring import tools
from undertrim.publish.pictures.drawings.measuring.scenes import Length, Meant, Scene


def hole() -> Scene:
    """The inside jaws of a calliper in the hole, and the second direction."""
    x, y, radius = 110.0, 92.0, 62.0
    marks = (
        pens.stroke("bold", svg.circle(x, y, radius)),
        pens.stroke("centre", pens.line(x, y - radius - 8, x, y + radius + 8)),
        tools.bar(34, 60, 190),
        tools.jaw(x - radius, 65, 32, -1),
        tools.jaw(x + radius, 65, 32, 1),
        tools.hand(204, 60, 12),
    )
    names = (Meant("jaws", x + radius - 4, 78), Meant("metal", x - 44, y - 44))
    level = (Length("fit-form/width", x - radius, x + radius, y, y),)
    return Scene("hole", 164, marks, names, level, (Length("fit-form/height", y - radius, y + radius, x, x),))


def bolts() -> Scene:
    """Holes on a circle: from the left edge of one to the left edge of the one opposite; where the first stands."""
    x, y, radius, small = 110.0, 88.0, 70.0, 7.0
    holes = [(x, y - radius), (x + radius, y), (x, y + radius), (x - radius, y)]
    marks = (
        pens.stroke("bold", svg.circle(x, y, 48)),
        pens.stroke("centre", svg.circle(x, y, radius), pens.line(x, y - radius - 16, x, y + radius + 10)),
        pens.stroke("outline", *(svg.circle(*place, small) for place in holes)),
        pens.stroke("thin", pens.line(x, y, x + radius, y), f"M{x} {y - 34} A34 34 0 0 1 {x + 34} {y}"),
        tools.bar(x - radius - small - 20, y + 92, 216),
        tools.jaw(x - radius - small, y + 87, 3 - 87, 1),
        tools.jaw(x + radius - small, y + 87, 3 - 87, 1),
        tools.hand(214, y + 92, -8),
    )
    names = (Meant("angle", x + 24, y - 24), Meant("circle", x + 0.71 * radius, y - 0.71 * radius))
    edge = y + 4
    return Scene(
        "bolts", 196, marks, names, (Length("edge-to-edge", x - radius - small, x + radius - small, edge, edge),)
    )


def radio_opening() -> Scene:
    """The opening in a dash without kit or trim: jaws across at its narrowest, and the second direction."""
    marks = (
        pens.stroke("outline", "M6 20 C60 8 220 8 252 20 L252 150 C220 160 60 160 6 150 Z"),
        pens.stroke("bold", "M44 40 L200 40 L200 72 L194 76 L194 108 L200 112 L200 134 L44 134 Z"),
        tools.bar(24, 66, 208),
        tools.jaw(44, 71, 28, -1),
        tools.jaw(194, 71, 28, 1),
        tools.hand(212, 66, 12),
    )
    names = (Meant("dash-front", 24, 30), Meant("narrowest", 194, 92))
    return Scene(
        "radio-opening",
        162,
        marks,
        names,
        (Length("fit-form/width", 44, 194, 134, 108),),
        (Length("fit-form/height", 40, 134, 200, 200),),
    )
