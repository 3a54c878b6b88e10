"""Fasteners in true size, to lay a screw on: one unit is one mm."""

import math
from collections.abc import Iterator

from undertrim.publish.pictures.drawings import heads, svg

_LEAST, _GAP, _HEAD = 6.0, 2.5, 1.6
RULER = 50
"""How long the ruler is, in mm."""


def fastener(
    title: str, family: str, across: float | None, thread: float | None, length: float | None
) -> tuple[str, float]:
    """What is known of it: its drive from above and beside it its shank, as long as it is under the head; and how wide that is in mm."""
    tall = max(_LEAST, 2 * (across or 0) / math.sqrt(3) + 1, (thread or 0) + 1)
    wide = tall if across else 0.0
    parts = [*(_drive(family, across, wide / 2, tall / 2) if across else ()), *_shank(wide, tall, thread, length)]
    wide += (_GAP + _HEAD + length + 1) if length else 0
    return _whole(title, wide, tall, parts), wide


def ruler(title: str) -> tuple[str, float]:
    """Ten millimetres five times, the first of them in single ones."""
    ticks = [
        f"M{svg.number(0.5 + at)} 6 V{svg.number(2 if at % 10 == 0 else 4)}"
        for at in (*range(10), *range(10, RULER + 1, 10))
    ]
    line = svg.element(
        "path", d=f"M0.5 6 H{RULER + 0.5} {' '.join(ticks)}", fill="none", stroke="#000", stroke_width=0.2
    )
    return _whole(title, RULER + 1.0, 7, [line]), RULER + 1.0


def _drive(family: str, across: float, x: float, y: float) -> Iterator[str]:
    if family.startswith("hexalobular"):
        yield svg.element("path", d=heads.lobes(across, x, y), fill="#000")
    elif family == "slot":
        yield svg.element("path", d=svg.rectangle(x - across / 2, y - 0.4, across, 0.8), fill="#000")
    else:
        outline = svg.polygon(svg.ring(x, y, across / math.sqrt(3), 6, first=-90))
        inside = {"fill": "#000"} if family == "hex-key" else {"fill": "none", "stroke": "#000", "stroke_width": "0.25"}
        yield svg.element("path", d=outline, **inside)


def _shank(left: float, tall: float, thread: float | None, length: float | None) -> Iterator[str]:
    """A line where the head begins, and the shank from there: as thick as its thread, or a bar where that is not known."""
    if not length:
        return
    x, y = left + _GAP + _HEAD, tall / 2
    half = (thread or 0) / 2
    sides = (
        f"M{svg.number(x)} {svg.number(y - half)} h{svg.number(length)} v{svg.number(thread)} h{svg.number(-length)}"
        if thread
        else f"M{svg.number(x)} {svg.number(y)} h{svg.number(length)}"
    )
    ends = f"M{svg.number(x)} 0.4 V{svg.number(tall - 0.4)} M{svg.number(x + length)} {svg.number(y - 2)} v4"
    yield svg.element("path", d=f"{sides} {ends}", fill="none", stroke="#000", stroke_width=0.25)
    head = svg.rectangle(x - _HEAD, 0.8, _HEAD, tall - 1.6)
    yield svg.element("path", d=head, fill="none", stroke="#000", stroke_width=0.2, stroke_dasharray="0.6 0.4")


def _whole(title: str, wide: float, tall: float, parts: list[str]) -> str:
    named = svg.element("title", svg.escaped(title))
    box = f"0 0 {svg.number(wide)} {svg.number(tall)}"
    return svg.element(
        "svg",
        named,
        *parts,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=box,
        width=f"{svg.number(wide)}mm",
        height=f"{svg.number(tall)}mm",
    )
