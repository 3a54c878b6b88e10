"""Pictograms of clips and tethers, seen from the side; clips with the panel above and the body below."""

from collections.abc import Mapping

from undertrim.publish.pictures.drawings import svg


def kinds() -> tuple[str, ...]:
    """The kinds that can be drawn, sorted."""
    return tuple(sorted(_DRAWN))


def clip(kind: str, title: str, size: str = "2em") -> str:
    """A clip or tether in a 24 x 24 box; `title` is its accessible name.

    Raises ValueError for a kind that is not in `kinds()`.
    """
    if kind not in _DRAWN:
        raise ValueError(f"no drawing of a '{kind}' clip: known are {', '.join(kinds())}")
    return svg.drawing(title, (24, 24), size, *_DRAWN[kind])


def symbol(name: str, kind: str) -> str:
    """The same as a symbol. Raises KeyError for a kind that is not in `kinds()`."""
    return svg.symbol(name, (24, 24), *_DRAWN[kind])


# A two-part rivet: collar, split legs and the pin between them.
_COLLAR = svg.rectangle(4.5, 11, 5, 2.4), svg.rectangle(14.5, 11, 5, 2.4)
_SPLIT_LEGS = svg.lines("M9 13.4 L8 18 L9.8 22", "M15 13.4 L16 18 L14.2 22")


def _scrivet(head_at: float, tip_at: float, *action: str) -> tuple[str, ...]:
    """A rivet whose pin has its head and tip at these heights, and an arrow for what is done to it."""
    head = svg.rectangle(8.5, head_at, 7, 2)
    shaft = svg.rectangle(11, head_at + 2, 2, tip_at - head_at - 2)
    return svg.solid(*_COLLAR), svg.solid(head, shaft), _SPLIT_LEGS, svg.lines(*action)


_DRAWN: Mapping[str, tuple[str, ...]] = {
    "push": (
        svg.solid(svg.rectangle(3.5, 2.5, 17, 3)),
        svg.solid("M10 5.5 V8.6 L6.2 13 L11.2 22 V10.5 H12.8 V22 L17.8 13 L14 8.6 V5.5 Z"),
    ),
    "two-leg": (
        svg.solid(svg.rectangle(3.5, 2.5, 17, 3)),
        svg.lines("M9.4 5.5 V19.5 L6.2 16.4", "M14.6 5.5 V19.5 L17.8 16.4", width=2),
    ),
    "snap-in": (
        svg.solid(svg.rectangle(3.5, 2.5, 17, 3), svg.rectangle(10.8, 5.5, 2.4, 8)),
        svg.solid(svg.circle(12, 16.4, 4.6)),
        svg.lines("M5 13 C5 20.5 8 22.4 12 22.4 C16 22.4 19 20.5 19 13", width=1.6),
    ),
    "spring": (
        svg.solid(svg.rectangle(3.5, 2.5, 17, 3)),
        svg.lines("M12 5.5 L6.4 8.4 L17.6 11.4 L6.4 14.4 L17.6 17.4 L12 20.4 V22.5", width=1.6),
    ),
    "fir-tree": (
        svg.solid(svg.rectangle(3.5, 2.5, 17, 3)),
        svg.lines("M12 6 V21.5", width=2.4),
        svg.lines("M6 7.8 L12 11 L18 7.8", "M7 11.8 L12 14.8 L17 11.8", "M8 15.8 L12 18.6 L16 15.8"),
    ),
    "metal": (
        svg.solid(svg.rectangle(10.9, 1.5, 2.2, 13)),
        svg.lines("M3 6.2 H8.2 V9 L4.8 13.6 L10.8 21.6 H13.2 L19.2 13.6 L15.8 9 V6.2 H21", width=1.4),
    ),
    "scrivet-push": _scrivet(9, 19, "M12 1.5 V6.5 M9.6 4.4 L12 6.8 L14.4 4.4"),
    "scrivet-pull": _scrivet(7.6, 16, "M12 5.4 V1 M9.6 3.2 L12 0.9 L14.4 3.2"),
    "scrivet-turn": _scrivet(8.4, 18, "M6.4 6 C6.4 0.6 17.2 0.4 17.4 5.4 M14.7 3.9 L17.5 6.4 L20.2 3.8"),
    "hook-tab": (
        svg.lines("M2.5 6 H12", width=3),
        svg.lines("M12 6 V14 H21", width=2.2),
        svg.lines("M16 17.5 H22 M16 20.5 H22 M16 17.5 V10.5", width=1.5),
    ),
    "hook-slot": (
        svg.lines("M3 4 H21 V20 H3 Z", width=1.5),
        svg.solid(svg.circle(12, 9, 3)),
        svg.lines("M10.2 11 V17.6 H13.8 V11", width=1.5),
    ),
    "hook": (
        svg.lines("M4.5 2.5 V21.5", width=3),
        svg.lines("M5 7.5 H17.5 V14.5", width=2.4),
        svg.lines("M12 11.5 V21.5 M12 21.5 H21", width=1.6),
    ),
    "rivet": (
        svg.solid("M6 8.5 C6 4.5 18 4.5 18 8.5 Z", svg.rectangle(9.4, 8.5, 5.2, 9)),
        svg.lines("M3 11 H9.4 M14.6 11 H21 M3 14.5 H9.4 M14.6 14.5 H21", "M12 5.5 V1.5"),
        svg.solid("M7.4 17.5 H16.6 C16.6 21 7.4 21 7.4 17.5 Z"),
    ),
    "rivet-sealed": (
        svg.solid("M6 8.5 C6 4.5 18 4.5 18 8.5 Z", "M9.4 8.5 H14.6 V19 A2.6 2.6 0 0 1 9.4 19 Z"),
        svg.lines("M3 11 H9.4 M14.6 11 H21 M3 14.5 H9.4 M14.6 14.5 H21", "M12 5.5 V1.5"),
    ),
    "rivet-solid": (
        svg.solid("M5.6 8.5 C5.6 3.6 18.4 3.6 18.4 8.5 Z", svg.rectangle(9.2, 8.5, 5.6, 8)),
        svg.lines("M3 11 H9.2 M14.8 11 H21 M3 14.5 H9.2 M14.8 14.5 H21"),
        svg.solid(svg.rectangle(6, 16.5, 12, 3.4)),
    ),
    "other": (svg.lines(svg.rectangle(5, 5, 14, 14), "M12 8 V16", "M8 12 H16", width=1.6),),
    "bond": (
        svg.lines("M2.5 20.5 H21.5", "M2.5 14.5 H11 C16 14.5 19.5 11 20 4"),
        svg.lines("M3.5 19.5 L6 15.5", "M7 19.5 L9.5 15.5", "M10.5 19.5 L13 15.5", "M14 19.5 L15.8 16.6", width=1.3),
    ),
    "bond-butyl": (
        svg.lines("M2.5 21 H21.5", "M2.5 13 H10 C16 13 19.5 10 20 3.5"),
        svg.solid("M3 14.4 H12 C14 14.4 14.6 17 13 18.6 L14.6 20.2 H3 Z"),
        svg.lines("M15.6 13.2 V19.6", "M18 11.6 V19.6", width=1.1),
    ),
    "bond-tape": (
        svg.lines("M2.5 21 H21.5", "M2.5 12 H13 C17.6 12 20 9 20.4 3.5"),
        svg.lines("M3 14.6 H15.4 V18.4 H3 Z", width=1.2),
        svg.lines("M4.6 18 L7.6 15", "M8 18 L11 15", "M11.4 18 L14.4 15", width=1),
    ),
    "bond-foam": (
        svg.lines("M2.5 21 H21.5", "M2.5 10 H21.5"),
        svg.lines("M4 12.6 H20 V18.6 H4 Z", width=1.2),
        svg.solid(*(svg.circle(x, y, 0.9) for x, y in ((6.6, 14.6), (10, 16.8), (13.4, 14.4), (17, 16.6)))),
    ),
    "tether-plug": (
        svg.solid(svg.rectangle(5, 7.5, 6, 9), svg.rectangle(8.6, 9.5, 2.4, 5)),
        svg.lines("M1.5 9.5 H5 M1.5 12 H5 M1.5 14.5 H5", "M22.5 9.5 H19 M22.5 12 H19 M22.5 14.5 H19", width=1.2),
        svg.lines("M15 7.5 H19 V16.5 H15 Z", "M15 10.6 H12.6 M15 13.4 H12.6"),
    ),
    "tether-coax": (
        svg.solid(svg.rectangle(1, 10.2, 4.5, 3.6)),
        svg.lines("M5.5 7 H12 V17 H5.5 Z", "M12 8.6 H16.5 V15.4 H12"),
        svg.lines("M7.7 7 V17 M9.8 7 V17", width=0.9),
        svg.lines("M16.5 12 H22", width=1.8),
    ),
    "tether-fibre": (
        svg.lines("M1.5 12 H7", "M17 12 H22.5", width=1.2),
        svg.lines("M7 8 H17 V16 H7 Z"),
        svg.solid(svg.circle(12, 12, 2)),
        svg.lines("M9 5.6 L11 3.4 M12 5.2 V2 M15 5.6 L13 3.4", width=1.1),
    ),
    "tether-strap": (
        svg.lines("M2 8 C8 4.6 16 11.4 22 8", "M2 15 C8 11.6 16 18.4 22 15", width=1.5),
        svg.lines("M2 8 V15", "M22 8 V15", width=2.4),
        svg.solid(svg.circle(5.2, 10.6, 1.2), svg.circle(18.8, 12.2, 1.2)),
    ),
    "tether-cable": (
        svg.lines("M2.5 21.5 C2.5 12 6 9 11 9", width=4.4),
        svg.lines("M11 9 H17", width=1.5),
        svg.solid(svg.circle(19.2, 9, 3.2), svg.circle(19.2, 9, 1.2)),
    ),
    "tether-rod": (
        svg.lines("M2.5 20.5 H8.5 L14 12.2", width=2.6),
        svg.lines("M20.4 4.2 A4.8 4.8 0 1 1 14 3.6", width=1.8),
        svg.solid(svg.circle(17, 7.6, 2.1)),
    ),
    "tether-lamp": (
        svg.lines("M8.6 14.6 C5 11.5 6.5 5.5 12 5.5 C17.5 5.5 19 11.5 15.4 14.6 Z"),
        svg.solid(svg.rectangle(9, 15.6, 6, 3)),
        svg.lines("M12 18.6 V22.5", "M12 1 V2.6 M3.6 4.2 L4.8 5.4 M20.4 4.2 L19.2 5.4 M1.6 11 H3.4 M22.4 11 H20.6"),
    ),
    "tether-hose": (
        svg.lines("M2 2.5 H8.5 C14.5 2.5 17.2 5.5 17.2 10", "M2 8 H8 C10.6 8 11.7 8.6 11.7 10"),
        svg.solid(svg.rectangle(9.9, 9.5, 9.1, 2.8)),
        svg.lines("M12.7 12.5 V16.4 M16.3 12.5 V16.4", width=1.4),
        svg.solid("M14.5 17.6 C12 20.8 12.2 23 14.5 23 C16.8 23 17 20.8 14.5 17.6 Z"),
    ),
}
