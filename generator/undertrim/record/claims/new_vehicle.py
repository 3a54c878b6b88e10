"""A car without a record, as somebody describes it who stands before it."""

from dataclasses import dataclass

from undertrim.record.source import Data


@dataclass(frozen=True, slots=True)
class NewVehicle:
    """What is said of the car, by the names of the schema (`newVehicle` of schema/claim.schema.json); and who says so, on which day.

    `car` is the one that was looked at, as typed; None where it is not said. Whole numbers are text, as in every source.
    """

    said: dict[str, Data]
    by: str
    on: str
    car: Data = None
