"""Speakers and what goes under one, as typed data."""

from dataclasses import dataclass
from typing import ClassVar

from undertrim.record.model.basics import Impedance, Length
from undertrim.record.model.gear import AnyGear, Place
from undertrim.record.model.openings import Bolts, Hole


@dataclass(frozen=True, slots=True)
class SpeakerGear(AnyGear):
    """A speaker."""

    kind: ClassVar[str] = "speaker"

    nominal: str = ""
    basket: Hole | None = None
    flange: Hole | None = None
    bolts: Bolts | None = None
    depth: Length | None = None
    magnet: Length | None = None
    protrusion: Length | None = None
    gasket: Length | None = None
    impedance: Impedance | None = None
    terminals: str = ""


@dataclass(frozen=True, slots=True)
class SpacerGear(AnyGear):
    """A spacer or plate; `hole` and `bolts` take the speaker, `car_bolts` are those towards the car where they differ."""

    kind: ClassVar[str] = "spacer"

    nominal: str = ""
    thickness: Length | None = None
    hole: Hole | None = None
    bolts: Bolts | None = None
    car_bolts: Bolts | None = None
    flange: Hole | None = None
    alters: tuple[str, ...] = ()
    suits: tuple[Place, ...] = ()
