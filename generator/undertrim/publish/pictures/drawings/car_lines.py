"""A car from above with its roof off, the front at the top: a sketch in lines. Its shape says where things are (`car`)."""

from collections.abc import Iterator
from functools import lru_cache

from undertrim.publish.pictures.drawings import svg
from undertrim.publish.pictures.drawings.car import SKIN, Shape, point, rounded
from undertrim.publish.pictures.drawings.car_bodies import Stations

_BENCH = 28.0
"""How far a row of seats reaches from front to rear."""


@lru_cache(maxsize=32)
def outline(shape: Shape) -> str:
    """The path text of the body and its mirrors."""
    at = shape.stations
    half, long, end = at.half, at.length, at.end
    tail = half * 0.72
    ways: list[tuple[svg.Point, ...]] = [
        ((half * 0.55, 0), (half * 0.9, at.nose * 0.2), (half * 0.96, at.nose)),
        ((half, at.nose + 14), (half, at.cowl), (half, at.cowl + 12)),
        ((half, long * 0.6), (half, long * 0.7), (half, long - 2 * end)),
        ((half, long - end * 0.9), (half * 0.97, long - end * 0.15), (tail, long)),
    ]
    there = "".join(_curve(*points) for points in ways)
    back = "".join(_curve(*((-x, y) for x, y in points)) for points in _backwards(ways))
    spare = f" {svg.rectangle(-20, long, 40, 9)}" if at.spare else ""
    return f"M0 0{there} L{point(-tail, long)}{back} Z {_mirrors(at)}{spare}"


def _mirrors(at: Stations) -> str:
    y = at.cowl + 16
    return " ".join(f"M{point(side * at.half, y)} l{side * 9} 2 v7 l{-side * 9} 2" for side in (-1, 1))


@lru_cache(maxsize=32)
def lines(shape: Shape) -> str:
    """The path text of all that is seen with the roof off: glass, dash, seats, doors, load."""
    return " ".join(_lines(shape))


def wheel(shape: Shape, side: str) -> str:
    """The path text of the steering wheel at a side, with its column."""
    at, x = shape.stations, -26 if side == "left" else 26
    rim, face = point(x - 14, at.dash + 6), svg.number(at.dash - 8)
    return f"M{rim} a14 7 0 1 0 28 0 a14 7 0 1 0 -28 0 Z M{rim} h28 M{point(x, at.dash + 6)} V{face}"


def _lines(shape: Shape) -> Iterator[str]:
    at = shape.stations
    inner = at.half - SKIN
    yield f"M{point(3 - at.half, at.cowl + 6)} Q{point(0, at.cowl - 14)} {point(at.half - 3, at.cowl + 6)}"
    yield f"M{point(-inner, at.dash)} Q{point(0, at.dash - 8)} {point(inner, at.dash)}"
    yield from _ends(at)
    yield from _sides(shape, inner)
    yield from _seats(at.seat, inner - 3)
    for row in at.rows:
        if at.tail != "bed" or row + _BENCH <= shape.cab_end + 4:
            yield from _bench(row, inner - 3)
    yield from _load(shape, inner)


def _ends(at: Stations) -> Iterator[str]:
    """The creases of the bonnet, and the lamps."""
    half = at.half
    for side in (-1, 1):
        foot, tip = point(side * (half - 16), at.cowl - 4), point(side * (half - 24), min(12, at.cowl / 3))
        yield f"M{foot} Q{point(side * (half - 16), at.cowl / 2)} {tip}"
        lamp = point(side * half * 0.8, 6), point(side * half * 0.88, at.nose * 0.55)
        yield f"M{point(side * half * 0.62, 3)} Q{lamp[0]} {lamp[1]}"
        yield f"M{point(side * half * 0.6, at.length - 4)} H{svg.number(side * half * 0.86)}"


def _sides(shape: Shape, inner: float) -> Iterator[str]:
    """The inner skin of the sides, and the gaps between doors."""
    at, end = shape.stations, _cabin_end(shape)
    gaps = (at.cowl + 14, shape.b_pillar, *((at.rear,) if shape.four_doors else ()))
    for side in (-1, 1):
        yield f"M{point(side * inner, at.cowl + 12)} V{svg.number(end)}"
        for gap in gaps:
            yield f"M{point(side * inner, gap)} H{svg.number(side * at.half)}"
    if at.tail != "hatch":
        yield f"M{point(-inner, end)} H{svg.number(inner)}"


def _cabin_end(shape: Shape) -> float:
    """Where the cabin ends, by what is behind it."""
    front, back = shape.stations.load
    return {"hatch": back, "deck": front - 6, "box": back, "bed": shape.cab_end + 4}[shape.stations.tail]


def _seats(y: float, half: float) -> Iterator[str]:
    """The two front seats: cushions with a backrest behind."""
    for side in (-1, 1):
        left, right = sorted((side * 12, side * (half - 1)))
        yield rounded((left, y, right, y + 26), 6)
        yield rounded((left + 1, y + 26, right - 1, y + 36), 4)


def _bench(y: float, half: float) -> Iterator[str]:
    """A row of seats across the car."""
    yield rounded((-half, y, half, y + 20), 5)
    yield rounded((-half, y + 20, half, y + _BENCH), 3)
    yield f"M{point(-half / 3, y + 20)} v8 M{point(half / 3, y + 20)} v8"


def _load(shape: Shape, inner: float) -> Iterator[str]:
    at = shape.stations
    left, top, right, bottom = shape.load
    yield rounded(shape.load, 4)
    if at.tail == "bed":
        ribs = (left + (right - left) * part / 6 for part in range(1, 6))
        yield from (f"M{point(x, top + 4)} V{svg.number(bottom - 4)}" for x in ribs)
    if at.tail == "deck":
        yield f"M{point(-inner, top - 6)} Q{point(0, top + 4)} {point(inner, top - 6)}"
    if at.tail == "hatch":
        yield f"M{point(-inner, bottom + 2)} Q{point(0, bottom + 8)} {point(inner, bottom + 2)}"
    if at.open_roof:
        yield rounded((left, top - 26, right, top - 10), 5)  # the roof, folded


def _curve(*points: svg.Point) -> str:
    return " C" + " ".join(point(x, y) for x, y in points)


def _backwards(ways: list[tuple[svg.Point, ...]]) -> list[tuple[svg.Point, ...]]:
    """The same curves gone back along, to the start at 0, 0."""
    starts = [(0.0, 0.0), *(points[-1] for points in ways)]
    return [(points[1], points[0], start) for points, start in zip(ways[::-1], starts[-2::-1], strict=True)]
