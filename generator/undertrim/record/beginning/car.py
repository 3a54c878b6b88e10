"""A new car as somebody describes it who stands before it, and where its record belongs."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import PurePosixPath

from undertrim.record import build, identity
from undertrim.record.model import VehicleFacts
from undertrim.record.source import Data

_OF_VEHICLE = (
    "make",
    "model",
    "phase",
    "tell",
    "also_called",
    "built",
    "model_years",
    "bodies",
    "gearboxes",
    "drive_side",
    "high_voltage",
    "forty_eight_volt",
)
"""What is said of the car as its record says it, in the record's order."""


@dataclass(frozen=True, slots=True)
class NewCar:
    """What is `said` of a car (`newVehicle` of schema/claim.schema.json), by whom, on which day and how (as evidence says it).

    `car` is the one that was looked at, as typed. `only_years` tells that nobody knew the months of build.
    """

    said: Mapping[str, Data]
    by: str
    on: str
    how: str = "told"
    car: Data = None
    only_years: bool = False

    @property
    def vehicle(self) -> dict[str, Data]:
        """The block `vehicle` of its record, without its source."""
        return {name: self.said[name] for name in _OF_VEHICLE if name in self.said}

    @property
    def facts(self) -> VehicleFacts:
        """The same as typed data."""
        facts = build.section("vehicle", self.vehicle)
        assert isinstance(facts, VehicleFacts)
        return facts

    @property
    def path(self) -> PurePosixPath:
        """Where its record belongs below `records/vehicles`."""
        return identity.vehicle_path(self.facts)

    @property
    def doors(self) -> tuple[str, ...]:
        """The rows of doors that it has: `front`, `rear`."""
        return tuple(self.said["doors"])
