"""On what a speaker sits: the bare mounting face, the factory bracket, and how far that is from where the car was measured."""

from dataclasses import dataclass

from undertrim.derive.fit.margins import NOT_RECORDED, Number, known, typed
from undertrim.record.model import Blank
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.units import Quantity
from undertrim.words import Message, message

_LEFT_OFF = message("fit-speaker/bracket-left-off")
_STAYS_OFF = message("fit-speaker/bracket-stays-off")
_BRACKET_KEPT = message("fit-speaker/bracket-kept")
_KEPT = message("fit-speaker/bracket-stays-under")
_FACE = message("fit-speaker/mounting-face")
_ON_FACE = message("fit-speaker/on-face")


@dataclass(frozen=True, slots=True)
class Seat:
    """A way to sit: `offset` is how much higher (towards the cabin) than the measuring face the speaker then stands.

    `name` says where that is, `note` what is done with the factory bracket (None where there is none), `on_bracket` whether it stays.
    """

    offset: Number
    note: Message | None = None
    name: Message = _ON_FACE
    on_bracket: bool = False


def seats(opening: SpeakerOpening) -> list[Seat]:
    """The ways to sit that can be reckoned, without the factory bracket first. At least one.

    A depth from the skin counts from the bare face; one from the bracket's face includes the bracket. From anything else, or from
    an unsaid face, no way can be reckoned, and the offset is missing.
    """
    datum = opening.depth.datum if opening.depth else ""
    height = opening.factory_spacer
    if datum == "skin":
        return _from_skin(height)
    if datum == "bracket":
        return _from_bracket(height)
    said = message(f"fit/measured-from-{datum}") if datum else NOT_RECORDED
    return [Seat(Number(message("fit-speaker/face-against-datum"), None, 0, said))]


def _from_skin(height: Quantity | Blank | None) -> list[Seat]:
    if isinstance(height, Quantity):
        kept = typed(_BRACKET_KEPT, height)
        return [Seat(known(_LEFT_OFF, 0), _STAYS_OFF), _on_bracket(kept)]
    return [Seat(known(_FACE, 0), None if height is Blank.NONE else message("fit-speaker/bracket-unseen-off"))]


def _from_bracket(height: Quantity | Blank | None) -> list[Seat]:
    if isinstance(height, Quantity):
        said = message("fit-speaker/minus", length=typed("", height).text)
        off = Number(message("fit-speaker/bracket-taken-away"), -height.value, height.step, said)
        return [Seat(off, _STAYS_OFF), _on_bracket(known(_BRACKET_KEPT, 0))]
    if height is Blank.NONE:
        return [Seat(known(_FACE, 0))]
    return [Seat(known(_FACE, 0), message("fit-speaker/bracket-unseen-under"), on_bracket=True)]


def _on_bracket(offset: Number) -> Seat:
    return Seat(offset, _KEPT, message("fit-speaker/on-bracket"), on_bracket=True)


def unseen(opening: SpeakerOpening) -> Message | None:
    """Why a yes would be too much where nobody said whether a bracket is there: hole and bolts may be those of either; None if known."""
    return message("fit-speaker/bracket-unseen") if opening.factory_spacer in (None, Blank.UNKNOWN) else None
