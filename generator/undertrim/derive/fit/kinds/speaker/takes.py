"""What a speaker's opening takes: the limits that a speaker has to keep, in words."""

from collections.abc import Iterator

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.speaker.room import room
from undertrim.derive.fit.kinds.speaker.seats import seats
from undertrim.derive.fit.lengths import both
from undertrim.derive.fit.margins import limit
from undertrim.derive.fit.outline import Outline, outline
from undertrim.record.model import Blank
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity
from undertrim.words import Message, message


def limits(opening: SpeakerOpening, usual: Clearances) -> Iterator[Message]:
    """The limits without anything between; what is not recorded is left out."""
    hole = outline(message("fit-speaker/hole"), opening.hole)
    yield from _sized("takes-basket", hole, 0)
    yield from _sized("takes-flange", hole, 2 * (usual["overlap"].value or 0))
    space, seat = room(SpeakerGear("", ""), opening, usual), seats(opening)[0]
    rear, grille = space.behind[-1].value or 0, usual["grille"].value or 0
    clear, front, offset = space.clear.value, space.front.value, seat.offset.value
    lean = opening.depth.leans if opening.depth else None
    if clear is not None and offset is not None:
        yield _leaning(
            message("fit-speaker/takes-depth", most=limit(max(0.0, clear + offset - rear), space.clear)), lean
        )
    if front is not None and offset is not None:
        yield message("fit-speaker/takes-cone", most=limit(max(0.0, front - offset - grille), space.front))
    if clear is not None and front is not None and offset is not None:
        together = clear + front - rear - grille
        yield _leaning(
            message("fit-speaker/takes-together", most=limit(max(0.0, together), space.clear, space.front)), lean
        )


def _leaning(said: Message, lean: Quantity | Blank | None) -> Message:
    """A limit of the depth, and that a lean takes something off it."""
    if not isinstance(lean, Quantity) or not lean.value:
        return said
    return message("fit-speaker/less-the-lean", said=said, lean=lean.text)


def _sized(code: str, shape: Outline, more: float) -> Iterator[Message]:
    if shape.width.value is None or shape.height.value is None:
        return
    across, up = shape.width.value + more, shape.height.value + more
    size = both(across) if shape.shape == "round" else message("fit/across-by-up", across=both(across), up=both(up))
    yield message(f"fit-speaker/{code}", size=size)
