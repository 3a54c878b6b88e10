"""On what a speaker sits: the bare mounting face, the factory bracket, and how far that is from where the car was measured."""

from dataclasses import dataclass

from undertrim.derive.fit.margins import Number, known, typed
from undertrim.record.model import Blank, Opening
from undertrim.record.units import Quantity

_BRACKET = "factory bracket"
_ON = "on the factory bracket"


@dataclass(frozen=True, slots=True)
class Seat:
    """A way to sit: `offset` is how much higher (towards the cabin) than the measuring face the speaker then stands.

    `name` says where that is, `note` what is done with the factory bracket; empty where there is none.
    """

    offset: Number
    note: str = ""
    name: str = "on the mounting face"

    @property
    def on_bracket(self) -> bool:
        """Whether the factory bracket stays under the speaker."""
        return self.note == _kept()


def seats(opening: Opening) -> list[Seat]:
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
        return [Seat(known(f"{_BRACKET}, left off", 0), "the factory bracket stays off"), Seat(kept, _kept(), _ON)]
    note = (
        "" if height is Blank.NONE else "the height of the factory bracket is not recorded: it is reckoned as left off"
    )
    return [Seat(known("mounting face", 0), note)]


def _from_bracket(height: Quantity | Blank | None) -> list[Seat]:
    if isinstance(height, Quantity):
        off = Number(f"{_BRACKET}, taken away", -height.value, height.step, f"−{typed('', height).text}")
        return [Seat(off, "the factory bracket stays off"), Seat(known(f"{_BRACKET}, kept", 0), _kept(), _ON)]
    return [Seat(known("mounting face", 0), "" if height is Blank.NONE else _kept())]


def _kept() -> str:
    return "the factory bracket stays under the new speaker: see that its hole and screws take it"
