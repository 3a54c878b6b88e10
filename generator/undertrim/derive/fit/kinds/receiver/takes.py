"""What an opening in the dash takes: the limits that a receiver has to keep, in words."""

from collections.abc import Iterator

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.margins import both, typed
from undertrim.derive.fit.outline import rectangle
from undertrim.record.model.kinds.receiver import ReceiverOpening
from undertrim.resources import table


def limits(opening: ReceiverOpening, usual: Clearances) -> Iterator[str]:
    """The limits without anything between; what is not recorded is left out."""
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
