"""Marks in columns beside and on a picture, each as high as a finger, as near as can be to what it means."""

from collections.abc import Sequence


def spread(wanted: Sequence[float], apart: float, top: float, bottom: float) -> list[float]:
    """The middles of marks in one column, `apart` from each other at least, between `top` and `bottom` where there is room for all.

    They keep their order and move as little as pushing neighbours apart takes; where there is no room they go on below.
    """
    order = sorted(range(len(wanted)), key=lambda place: (wanted[place], place))
    low = top
    placed: list[float] = []
    for place in order:
        placed.append(max(wanted[place], low))
        low = placed[-1] + apart
    high = bottom
    for place in range(len(placed) - 1, -1, -1):
        least = top + place * apart
        placed[place] = max(min(placed[place], high), least)
        high = placed[place] - apart
    found = [0.0] * len(wanted)
    for place, at in zip(order, placed, strict=True):
        found[place] = at
    return found
