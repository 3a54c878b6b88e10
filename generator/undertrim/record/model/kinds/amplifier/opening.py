"""A place for an amplifier, as typed data."""

from dataclasses import dataclass
from typing import ClassVar

from undertrim.record.model.basics import Charge, Current, Known, Length
from undertrim.record.model.gear import AnyGear
from undertrim.record.model.kinds.amplifier.gear import AmplifierGear, Box
from undertrim.record.model.openings import AnyOpening, Face


@dataclass(frozen=True, slots=True)
class GroundPoint:
    """A place on the body for the ground; `nut` is what turns what holds the terminal, `length` the cable from the amplifier."""

    at: str
    paint: Known | None = None
    nut: str = ""
    length: Length | None = None


@dataclass(frozen=True, slots=True)
class FusePlace:
    """Where the main fuse goes, and how far along the cable that is from the battery."""

    at: str
    from_battery: Length | None = None


@dataclass(frozen=True, slots=True)
class Supply:
    """What the car can give: the current on the plate of its alternator, and the capacity of its battery."""

    alternator: Current | None = None
    battery: Charge | None = None


@dataclass(frozen=True, slots=True)
class AmplifierOpening(AnyOpening):
    """A place for an amplifier; `run` is the id of the cable run to it, `finds` the signal there where it is not what the radio sends.

    `powers` are the channels that an amplifier here is joined to.
    """

    kind: ClassVar[str] = "amplifier"
    takes: ClassVar[type[AnyGear]] = AmplifierGear
    sounds: ClassVar[bool] = True
    drives: ClassVar[bool] = True

    space: Box | None = None
    way_in: Face | None = None
    surface: str = ""
    fixings: str = ""
    underneath: tuple[str, ...] = ()
    restraint_near: Known = "unknown"
    air: str = ""
    run: str = ""
    ground_point: GroundPoint | None = None
    fuse_place: FusePlace | None = None
    finds: str = ""
    switched_on_by: str = ""
    powers: tuple[str, ...] = ()
    supply: Supply | None = None

    @property
    def shares(self) -> str:
        """The run of cable that feeds it."""
        return self.run

    @property
    def along(self) -> str:
        """The run of its own feed."""
        return self.run

    @property
    def asks(self) -> tuple[str, ...]:
        """Whether paint must come off, or may have to, where the ground goes."""
        paint = self.ground_point.paint if self.ground_point else "unknown"
        return () if paint == "no" else ("paint",)
