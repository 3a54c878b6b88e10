"""A speaker's opening, as typed data."""

from dataclasses import dataclass, replace
from typing import ClassVar, Self

from undertrim.record.model.basics import Impedance, Known, Length
from undertrim.record.model.gear import AnyGear
from undertrim.record.model.kinds.speaker.gear import SpacerGear, SpeakerGear
from undertrim.record.model.openings import AnyOpening, Bolts, Depth, Face, Hole


@dataclass(frozen=True, slots=True)
class SpeakerOpening(AnyOpening):
    """A place for a speaker; `impedance`, `channel` and `fed_through` are those of the factory's."""

    kind: ClassVar[str] = "speaker"
    takes: ClassVar[type[AnyGear]] = SpeakerGear
    between: ClassVar[type[AnyGear] | None] = SpacerGear
    sounds: ClassVar[bool] = True
    often_in_doors: ClassVar[bool] = True
    on_channel: ClassVar[bool] = True

    nominal: str = ""
    hole: Hole | None = None
    bolts: Bolts | None = None
    panel: Face | None = None
    depth: Depth | None = None
    channel: str = ""
    fed_through: str = ""
    room_to_grille: Length | None = None
    factory_spacer: Length | None = None
    impedance: Impedance | None = None
    crash_sensor: Known | None = None

    def with_sensor(self, answer: Known) -> Self:
        """This opening with what its door says of a pressure sensor."""
        return replace(self, crash_sensor=answer)

    @property
    def occupied(self) -> bool:
        """Whether the record knows of a factory speaker in it."""
        return self.impedance is not None
