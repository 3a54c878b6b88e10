"""Which vehicles a record covers, and what differs from car to car."""

from dataclasses import dataclass

from undertrim.record.model.basics import ALWAYS, Known, Month, Side, Sources, When
from undertrim.record.model.photos import Photo


@dataclass(frozen=True, slots=True)
class Built:
    """Months of build, half open: `to` is the first month not covered."""

    from_: Month
    to: Month


@dataclass(frozen=True, slots=True)
class ModelYears:
    """First and last model year, both covered."""

    first: int
    last: int


@dataclass(frozen=True, slots=True)
class VinPattern:
    """How numbers of these cars begin, a full stop for any character, and in which cars they are."""

    pattern: str
    when: When = ALWAYS
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class VehicleFacts:
    """Which vehicles a record covers."""

    make: str
    model: str
    built: Built
    drive_side: tuple[Side, ...]
    high_voltage: Known
    phase: str = ""
    tell: str = ""
    model_years: ModelYears | None = None
    bodies: tuple[str, ...] = ()
    gearboxes: tuple[str, ...] = ()
    engines: tuple[str, ...] = ()
    trim_levels: tuple[str, ...] = ()
    also_called: tuple[str, ...] = ()
    vin: tuple[VinPattern, ...] = ()
    follows: str = ""
    forty_eight_volt: Known | None = None
    boundaries: tuple[Month, ...] = ()
    confirmed_across: tuple[Month, ...] = ()
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Choice:
    """One answer to a variant's question."""

    id: str
    label: str
    tell: str = ""
    photos: tuple[Photo, ...] = ()
    built: Built | None = None


@dataclass(frozen=True, slots=True)
class Variant:
    """One question about the car with its possible answers."""

    id: str
    ask: str
    choices: dict[str, Choice]
    source: Sources = ()
