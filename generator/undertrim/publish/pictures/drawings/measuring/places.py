"""A tweeter's cup, a place for an amplifier, and from where the face of a plug is seen."""

from collections.abc import Iterator

from undertrim.publish.pictures.drawings import pens, svg
from undertrim.publish.pictures.drawings.measuring import tools
from undertrim.publish.pictures.drawings.measuring.scenes import Length, Meant, Scene


def tweeter_cup() -> Scene:
    """A cup in section: jaws across it, the rod down to its floor, and the flat face round it."""
    marks = (
        pens.stroke("outline", "M8 78 L70 78 L70 136 L170 136 L170 78 L280 78"),
        tools.bar(52, 60, 172),
        tools.jaw(70, 65, 34, -1),
        tools.jaw(170, 65, 34, 1),
        tools.rod(120, 65, 120, 134),
        tools.hand(204, 60, 10),
    )
    names = (Meant("tweeter-shown/flat", 30, 78), Meant("jaws", 168, 76), Meant("rod", 120, 110))
    level = (Length("cup-across", 70, 170, 136, 136),)
    return Scene("tweeter-cup", 140, marks, names, level, (Length("cup-deep", 78, 136, 172, 172),))


def amplifier_place() -> Scene:
    """A free box, seen from above one corner, and a stick laid along each of its three ways."""
    near, far, right = "M60 64 L200 64 L200 150 L60 150 Z", "M110 24 L250 24 L250 110", "M60 64 L110 24"
    marks = (
        pens.stroke("hidden", near, far, right, pens.line(200, 64, 250, 24), pens.line(200, 150, 250, 110)),
        pens.stroke("hidden", pens.line(60, 150, 110, 110), pens.line(110, 24, 110, 110), pens.line(110, 110, 250, 110)),
        pens.stroke("bold", pens.line(60, 140, 200, 140), pens.line(190, 64, 190, 150), pens.line(203, 148, 252, 109)),
        tools.hand(196, 140, 18),
    )  # fmt: skip
    names = (Meant("stick", 130, 140), Meant("front-to-rear", 247, 113))
    return Scene(
        "amplifier-place",
        156,
        marks,
        names,
        (Length("left-to-right", 60, 200, 150, 150),),
        (Length("up", 64, 150, 252, 252),),
    )


def plug_faces() -> Scene:
    """One plug held between two looks: its wires towards one, its contacts towards the other; what is left for one is right for the other."""
    marks = (
        *_face(14, wires=True),
        *_face(190, wires=False),
        pens.stroke("outline", svg.rectangle(122, 38, 44, 34)),
        pens.stroke("thin", *(f"M122 {y} C112 {y} 108 {y + 4} 102 {y + 10}" for y in (44, 55, 66))),
        pens.stroke("outline", *(pens.line(166, y, 172, y) for y in (44, 55, 66))),
        tools.hand(144, 83, 76),
    )
    names = (Meant("from-wires", 54, 4), Meant("from-contacts", 230, 4))
    return Scene("plug-faces", 162, marks, names, letters=(*_numbers(14, "123456"), *_numbers(190, "321654")))


_WIDE, _TALL = 27.0, 40.0
"""Of a position, of which a face has three in each of two rows."""


def _places(left: float) -> list[svg.Point]:
    return [(left + _WIDE * (place % 3), 18 + _TALL * (place // 3)) for place in range(6)]


def _numbers(left: float, numbers: str) -> Iterator[tuple[str, float, float]]:
    for number, (x, y) in zip(numbers, _places(left), strict=True):
        yield number, x + _WIDE / 2, y + 16


def _face(left: float, *, wires: bool) -> Iterator[str]:
    """A face with its latch above, a strand or a slot in each position."""
    yield svg.solid(svg.rectangle(left + 27, 12, 27, 6))
    for x, y in _places(left):
        yield pens.stroke("outline", svg.rectangle(x, y, _WIDE, _TALL))
        middle = x + _WIDE / 2
        if wires:
            yield pens.stroke("outline", svg.circle(middle, y + 29, 5)) + svg.solid(svg.circle(middle, y + 29, 2))
        else:
            yield svg.solid(svg.rectangle(middle - 4, y + 25, 8, 8))
