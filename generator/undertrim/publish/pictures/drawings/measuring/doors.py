"""Behind and before a speaker: from which face a depth counts, over which travel of the glass, and how far the grille is."""

from collections.abc import Iterator

from undertrim.publish.pictures.drawings import pens, svg
from undertrim.publish.pictures.drawings.lettering import Box
from undertrim.publish.pictures.drawings.measuring import tools
from undertrim.publish.pictures.drawings.measuring.scenes import Length, Meant, Scene


def depth() -> Scene:
    """A straight edge across the face that counts, the depth rod through it to the first thing behind."""
    bracket = [svg.rectangle(134, 28, 22, 20), svg.rectangle(134, 112, 22, 20)]
    marks = (
        pens.stroke("bold", pens.line(157, 0, 157, 40), pens.line(157, 120, 157, 160)),
        pens.stroke("outline", *bracket),
        pens.hatch(Box(134, 28, 156, 48)),
        pens.hatch(Box(134, 112, 156, 132)),
        tools.edge(130, 20, 120, upright=True),
        tools.bar(66, 80, 60),
        tools.rod(126, 80, 252, 80),
        tools.hand(72, 80, left=True),
        pens.stroke("bold", pens.line(258, 0, 252, 160)),
    )
    names = (
        Meant("straight-edge", 130, 24),
        Meant("bracket", 145, 34),
        Meant("skin", 157, 8),
        Meant("glass", 257, 20),
    )
    level = (Length("spacer", 134, 157, 132, 160), Length("clear", 134, 254, 132, 100))
    return Scene("depth", 160, marks, names, level)


def radio_depth() -> Scene:
    """The same behind the front of a dash."""
    marks = (
        pens.stroke("bold", pens.line(134, 0, 134, 32), pens.line(134, 120, 134, 152)),
        pens.stroke("hidden", pens.line(134, 32, 250, 32), pens.line(134, 120, 250, 120)),
        tools.edge(130, 12, 128, upright=True),
        tools.bar(66, 76, 60),
        tools.rod(126, 76, 252, 76),
        tools.hand(72, 76, left=True),
        pens.stroke("outline", svg.circle(268, 84, 14)),
        pens.stroke("bold", pens.line(254, 40, 254, 112)),
    )
    names = (Meant("straight-edge", 130, 16), Meant("dash-front", 134, 4), Meant("first-behind", 254, 50))
    return Scene("radio-depth", 152, marks, names, (Length("clear", 134, 254, 152, 112),))


def travel() -> Scene:
    """The same measure with the window up, on its way and down: three readings, of which the smallest counts."""
    marks = tuple(mark for place, reach in enumerate((80, 48, 66)) for mark in _window(place, reach))
    named = (("window-up", 59, 30), ("window-between", 157.5, 30), ("window-down", 273, 72))
    names = tuple(Meant(code, x, y) for code, x, y in named)
    level = tuple(
        Length(code, 12 + 96 * place, 12 + 96 * place + reach, 110, 76)
        for place, (code, reach) in enumerate((("first-reading", 80), ("second-reading", 48), ("third-reading", 66)))
    )
    return Scene("travel", 140, marks, names, level)


def _window(place: int, reach: float) -> Iterator[str]:
    """One of three doors side by side: skin, rod, and the glass that is met `reach` behind it. A window that is up leaves the beam."""
    left = 12.0 + 96 * place
    glass = (pens.line(left + 46, 0, left + 49, 62), pens.line(left + 50, 8, left + 47, 130), pens.line(left + 70, 58, left + 64, 140))  # fmt: skip
    yield pens.stroke("bold", pens.line(left, 0, left, 50), pens.line(left, 96, left, 140))
    yield tools.rod(left, 74, left + reach, 74)
    yield pens.stroke("outline", glass[place])
    if place == 0:
        yield pens.stroke("outline", svg.rectangle(left + reach, 60, 4, 30))
    if place < 2:
        yield pens.stroke("centre", pens.line(left + 70, 58, left + 64, 140))


def grille() -> Scene:
    """The panel on its face, a straight edge across the ring that meets the door, the rod down to the grille."""
    marks = (
        pens.stroke("outline", "M10 158 L84 158 L84 116 L96 116 L96 152 L192 152 L192 116 L204 116 L204 158 L278 158"),
        pens.stroke("grille", pens.line(98, 158, 190, 158)),
        pens.stroke("thin", pens.line(0, 164, 288, 164)),
        tools.edge(70, 113, 148),
        tools.bar(144, 44, 66, upright=True),
        tools.rod(144, 110, 144, 156),
        tools.hand(144, 66, -62),
    )
    names = (Meant("ring", 90, 124), Meant("straight-edge", 112, 112), Meant("grille-inside", 186, 157))
    return Scene("grille", 166, marks, names, (), (Length("room", 116, 157, 206, 206),))
