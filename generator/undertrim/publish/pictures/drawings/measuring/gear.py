"""The sizes of new gear, from the side."""

from undertrim.publish.pictures.drawings import pens, svg
from undertrim.publish.pictures.drawings.measuring.scenes import Length, Scene


def speaker() -> Scene:
    """Flange, basket and magnet; the depth below the flange and what comes out above it."""
    marks = (
        pens.stroke("outline", svg.rectangle(112, 8, 8, 152)),
        pens.stroke("outline", "M120 28 L136 28 L184 62 L184 106 L136 140 L120 140"),
        pens.stroke("outline", svg.rectangle(184, 50, 34, 68)),
        pens.stroke("thin", "M112 28 C96 40 90 70 90 84 C90 98 96 128 112 140"),
    )
    upright = (
        Length("magnet", 50, 118, 218, 218),
        Length("basket", 28, 140, 136, 136),
        Length("flange", 8, 160, 120, 120),
    )
    level = (Length("protrusion", 90, 112, 84, 160), Length("mounting-depth", 120, 218, 160, 118))
    return Scene("speaker-gear", 164, marks, (), level, upright)


def receiver() -> Scene:
    """The body that goes into the opening, its trim in front, and the room for plugs behind."""
    marks = (
        pens.stroke("bold", "M40 6 L50 6 L50 134 L40 134 C34 100 34 40 40 6 Z"),
        pens.stroke("outline", svg.rectangle(50, 18, 140, 104)),
        pens.stroke("hidden", svg.rectangle(190, 52, 44, 36)),
        pens.stroke("thin", "M234 62 C250 62 256 74 262 92", "M234 76 C246 78 250 86 254 98"),
    )
    level = (Length("chassis-depth", 50, 190, 134, 122), Length("plug-room", 190, 234, 122, 88))
    upright = (Length("body", 18, 122, 190, 190), Length("trim", 6, 134, 50, 50))
    return Scene("receiver-gear", 138, marks, (), level, upright)
