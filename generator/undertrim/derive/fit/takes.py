"""What an opening takes: the limits that a speaker or receiver has to keep, in words, and the gear that comes nearest to keeping them."""

import math
from collections.abc import Iterator, Sequence

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.margins import Number, both, typed
from undertrim.derive.fit.outline import Outline, outline, rectangle
from undertrim.derive.fit.room import room
from undertrim.derive.fit.seats import seats
from undertrim.derive.fit.stock import Gear
from undertrim.derive.fit.verdict import Fit
from undertrim.record.gear import GearFacts
from undertrim.record.model import Opening
from undertrim.record.units import Quantity
from undertrim.resources import table


def limits(opening: Opening, usual: Clearances) -> tuple[str, ...]:
    """The limits of an opening without anything between, in words; what is not recorded is left out."""
    return tuple(_receiver(opening, usual) if opening.kind == "receiver" else _speaker(opening, usual))


def _speaker(opening: Opening, usual: Clearances) -> Iterator[str]:
    hole = outline("hole", opening.hole)
    yield from _sized("basket up to", hole, 0)
    yield from _sized("flange from", hole, 2 * (usual.overlap.value or 0))
    space, seat = room(GearFacts("speaker", "", ""), opening, usual), seats(opening)[0]
    rear, grille = space.behind[-1].value or 0, usual.grille.value or 0
    clear, front, offset = space.clear.value, space.front.value, seat.offset.value
    lean = opening.depth.leans if opening.depth else None
    leaning = f", less what the lean of {lean.text} takes at the edge of the magnet" if isinstance(lean, Quantity) and lean.value else ""  # fmt: skip
    if clear is not None and offset is not None:
        yield f"mounting depth up to {both(max(0.0, clear + offset - rear))}{leaning}"
    if front is not None and offset is not None:
        yield f"cone out to {both(max(0.0, front - offset - grille))}"
    if clear is not None and front is not None and offset is not None:
        together = clear + front - rear - grille
        yield f"on a spacer, mounting depth and cone together up to {both(max(0.0, together))}{leaning}"


def _sized(what: str, shape: Outline, more: float) -> Iterator[str]:
    if shape.width.value is None or shape.height.value is None:
        return
    across, up = shape.width.value + more, shape.height.value + more
    yield f"{what} {both(across)}" if shape.shape == "round" else f"{what} {both(across)} × {both(up)}"


def _receiver(opening: Opening, usual: Clearances) -> Iterator[str]:
    face = rectangle("opening", opening.face)
    if face.width.value is not None and face.height.value is not None:
        yield f"body up to {both(face.width.value)} × {both(face.height.value)}{' through a kit' if opening.kit == 'needed' else ''}"
        yield "; ".join(_heights(face.width.value, face.height.value))
    depth = typed("clear depth", opening.depth.clear if opening.depth else None)
    if depth.value is not None:
        rest = depth.value - (usual.plug_room.value or 0)
        yield f"chassis and plugs up to {both(depth.value)} deep: a chassis of {both(max(0.0, rest))} with the usual room for plugs"


def _heights(width: float, height: float) -> Iterator[str]:
    """Which of the heights of ISO 7736 the opening is large enough for."""
    for row in table("fit")["iso7736"]["body"]:
        goes = width >= row["width"] and height >= row["height"]
        size = f"{row['width']} × {row['height']} mm"
        yield f"{row['name']} ({size}, ISO 7736) {'goes in' if goes else 'does not go in'}"


def nearest(gear: Gear, fits: Sequence[Fit], shelf: Sequence[Gear]) -> str:
    """The id of the piece of gear that fits and is least unlike `gear` in its sizes; empty where none fits."""
    good = {fit.gear for fit in fits if fit.kind in ("fits", "fits-with") and not fit.to_get}
    near = [(distance(gear.facts, item.facts), item.id) for item in shelf if item.id in good and item.id != gear.id]
    return min(near, default=(0.0, ""))[1]


def distance(one: GearFacts, other: GearFacts) -> float:
    """How unlike two pieces are in mm: the differences of width, height and depth, as a length in space."""
    pairs = zip(_sizes(one), _sizes(other), strict=True)
    return math.hypot(*((a.value or 0) - (b.value or 0) for a, b in pairs))


def _sizes(facts: GearFacts) -> tuple[Number, Number, Number]:
    if facts.kind == "receiver":
        body = rectangle("body", facts.body)
        return body.width, body.height, typed("depth", facts.chassis_depth)
    basket = outline("basket", facts.basket)
    return basket.width, basket.height, typed("depth", facts.depth)
