"""What a speaker's opening takes: the limits that a speaker has to keep, in words."""

from collections.abc import Iterator

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.speaker.room import room
from undertrim.derive.fit.kinds.speaker.seats import seats
from undertrim.derive.fit.margins import both
from undertrim.derive.fit.outline import Outline, outline
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity


def limits(opening: SpeakerOpening, usual: Clearances) -> Iterator[str]:
    """The limits without anything between; what is not recorded is left out."""
    hole = outline("hole", opening.hole)
    yield from _sized("basket up to", hole, 0)
    yield from _sized("flange from", hole, 2 * (usual.overlap.value or 0))
    space, seat = room(SpeakerGear("", ""), opening, usual), seats(opening)[0]
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
