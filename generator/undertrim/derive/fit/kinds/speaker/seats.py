"""On what a speaker sits: the bare mounting face, the factory bracket, and how far that is from where the car was measured."""

from dataclasses import dataclass

from undertrim.derive.fit.margins import Number, known, typed
from undertrim.record.model import Blank
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.units import Quantity

_BRACKET = "factory bracket"
_ON = "on the factory bracket"
_KEPT = "the factory bracket stays under the new speaker: see that its hole and screws take it"
_UNSEEN = "the height of the factory bracket is not recorded"


@dataclass(frozen=True, slots=True)
class Seat:
    """A way to sit: `offset` is how much higher (towards the cabin) than the measuring face the speaker then stands.

    `name` says where that is, `note` what is done with the factory bracket (empty where there is none), `on_bracket` whether it stays.
    """

    offset: Number
    note: str = ""
    name: str = "on the mounting face"
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
    said = f"measured from the {datum}" if datum else "not recorded"
    return [Seat(Number("mounting face against the face that the depth is measured from", None, 0, said))]


def _from_skin(height: Quantity | Blank | None) -> list[Seat]:
    if isinstance(height, Quantity):
        kept = typed(f"{_BRACKET}, kept", height)
        return [
            Seat(known(f"{_BRACKET}, left off", 0), "the factory bracket stays off"),
            Seat(kept, _KEPT, _ON, on_bracket=True),
        ]
    return [Seat(known("mounting face", 0), "" if height is Blank.NONE else f"{_UNSEEN}: it is reckoned as left off")]


def _from_bracket(height: Quantity | Blank | None) -> list[Seat]:
    if isinstance(height, Quantity):
        off = Number(f"{_BRACKET}, taken away", -height.value, height.step, f"−{typed('', height).text}")
        return [
            Seat(off, "the factory bracket stays off"),
            Seat(known(f"{_BRACKET}, kept", 0), _KEPT, _ON, on_bracket=True),
        ]
    if height is Blank.NONE:
        return [Seat(known("mounting face", 0))]
    return [Seat(known("mounting face", 0), f"{_UNSEEN}: {_KEPT}", on_bracket=True)]


def unseen(opening: SpeakerOpening) -> str:
    """Why a yes would be too much where nobody said whether a bracket is there: hole and bolts may be those of either; empty if known."""
    return f"{_UNSEEN}: measure it, or write 'none'" if opening.factory_spacer in (None, Blank.UNKNOWN) else ""
