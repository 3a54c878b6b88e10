"""Amplifiers, as typed data."""

from dataclasses import dataclass
from typing import ClassVar

from undertrim.record.model.basics import Current, Impedance, Length, Power, Share
from undertrim.record.model.gear import AnyGear
from undertrim.record.model.openings import Bolts


@dataclass(frozen=True, slots=True)
class Box:
    """A box by its three sides, as it lies."""

    width: Length
    height: Length
    depth: Length


@dataclass(frozen=True, slots=True)
class Rated:
    """What an amplifier gives and takes at full power."""

    power: Power
    efficiency: Share | None = None
    current: Current | None = None


@dataclass(frozen=True, slots=True)
class AmplifierGear(AnyGear):
    """An amplifier; `bolts` are its fixing holes, `turn_on_draws` what its turn-on terminal takes."""

    kind: ClassVar[str] = "amplifier"

    size: Box | None = None
    bolts: Bolts | None = None
    cooling: Length | None = None
    channels: int = 1
    least_load: Impedance | None = None
    bridged_load: Impedance | None = None
    rated: Rated | None = None
    own_fuse: Current | None = None
    inputs: tuple[str, ...] = ()
    wakes_by: tuple[str, ...] = ()
    turn_on_draws: Current | None = None
