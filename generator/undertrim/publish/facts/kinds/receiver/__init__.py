"""An opening in the dash on the page."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Never

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.stock import Gear, only
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts import gear_lines, words
from undertrim.publish.facts.dimensions import face
from undertrim.publish.facts.kinds.receiver.drawn import dash
from undertrim.publish.facts.kinds.receiver.joining import Joining, joining
from undertrim.publish.facts.rows import Row
from undertrim.publish.pictures.drawings.dash import Dash
from undertrim.record.model import Face
from undertrim.record.model.kinds.receiver import (
    ConverterGear,
    HarnessGear,
    InterfaceGear,
    KitGear,
    LeadsGear,
    ReceiverGear,
    ReceiverOpening,
)
from undertrim.words import Value, message

SIZES: dict[type, tuple[str, ...]] = {
    ReceiverGear: ("body", "trim", "chassis_depth", "plug_room", "least_load", "lead_set", "outputs", "needs", "keeps"),
    KitGear: ("opening", "contains"),
    HarnessGear: ("brings", "keeps"),
    InterfaceGear: ("brings", "keeps", "gives"),
    ConverterGear: ("takes", "gives", "makes_turn_on"),
    LeadsGear: ("functions", "limits"),
}
"""The fields that the scripts reckon with, by kind of gear."""


def said(facts: ReceiverGear) -> Iterator[Value]:
    """What a card of a receiver says."""
    yield from gear_lines.known_as(facts.nominal)
    yield from gear_lines.least_load(facts.least_load)


def _converter(facts: ConverterGear) -> Iterator[Value]:
    """Whether it makes a turn-on, where that is known."""
    if facts.makes_turn_on != "unknown":
        yield message(f"receiver-shown/turn-on-{facts.makes_turn_on}")


CARDS: dict[type, Callable[[Any], Iterator[Value]]] = {ReceiverGear: said, ConverterGear: _converter}
"""What a card says, by kind of gear."""


@dataclass(frozen=True, slots=True)
class Room:
    """An opening in the dash."""

    opening: ReceiverOpening

    @property
    def outline(self) -> Face | None:
        """The opening itself."""
        return self.opening.face

    @property
    def form(self) -> tuple[str, ...]:
        """The fields of the opening that its form reckons with."""
        return ("face", "clear_front", "kit", "depth")

    def outlines(self) -> Iterator[Row]:
        """The opening, whether it takes a kit, and the room before it."""
        if self.opening.face:
            yield "face/width", message("receiver-shown/width"), words.quantity(self.opening.face.width)
            yield "face/height", message("receiver-shown/height"), words.quantity(self.opening.face.height)
        if self.opening.kit:
            yield "kit", message("receiver-shown/kit"), message(f"openings/kit-{self.opening.kit}")
        if self.opening.clear_front:
            yield "clear_front", message("receiver-shown/clear-front"), face(self.opening.clear_front)

    def more(self) -> Iterator[Row]:
        """Nothing."""
        return iter(())

    def loads(self, vehicle: Vehicle) -> Iterator[Never]:
        """Nothing: a receiver drives and is not driven."""
        return iter(())

    def joining(self, vehicle: Vehicle) -> Joining:
        """Functions, sound and duties of each kind of car."""
        return joining(vehicle, self.opening)

    def feeding(self, vehicle: Vehicle) -> None:
        """Nothing: no cable of its own feeds it."""

    def drawn(self, usual: Clearances, fit: Fit | None, gear: Gear | None, between: Gear | None) -> Mapping[str, Dash]:
        """The dash, from the front and from the side."""
        if not self.opening.face:
            return {}
        receiver = only(gear, ReceiverGear) if gear else None
        kit = only(between, KitGear) if between else None
        return {"dash": dash(usual, self.opening, fit, receiver, kit)}
