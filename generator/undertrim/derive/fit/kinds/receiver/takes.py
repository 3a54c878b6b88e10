"""What an opening in the dash takes: the limits that a receiver has to keep, in words."""

from collections.abc import Iterator

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.receiver.names import CLEAR_DEPTH, OPENING
from undertrim.derive.fit.lengths import both
from undertrim.derive.fit.margins import limit, typed
from undertrim.derive.fit.outline import rectangle
from undertrim.record.model.kinds.receiver import ReceiverOpening
from undertrim.resources import table
from undertrim.words import Items, Message, Value, message, word


def limits(opening: ReceiverOpening, usual: Clearances) -> Iterator[Value]:
    """The limits without anything between; what is not recorded is left out."""
    face = rectangle(OPENING, opening.face)
    if face.width.value is not None and face.height.value is not None:
        code = "takes-through-kit" if opening.kit == "needed" else "takes"
        yield message(f"fit-receiver/{code}", width=both(face.width.value), height=both(face.height.value))
        yield Items(tuple(_heights(face.width.value, face.height.value)), "semicolon")
    depth = typed(CLEAR_DEPTH, opening.depth.clear if opening.depth else None)
    if depth.value is not None:
        rest = depth.value - (usual["plug_room"].value or 0)
        yield message("fit-receiver/takes-deep", depth=limit(depth.value, depth), chassis=limit(max(0.0, rest), depth))


def _heights(width: float, height: float) -> Iterator[Message]:
    """Which of the heights of ISO 7736 the opening is large enough for."""
    for name, row in table("fit")["iso7736"]["body"].items():
        goes = width >= row["width"] and height >= row["height"]
        body = word("fit", "iso7736", "body", name, "name")
        code = "goes-in" if goes else "does-not-go-in"
        yield message(f"fit-receiver/{code}", body=body, width=row["width"], height=row["height"])
