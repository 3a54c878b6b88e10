"""The boundaries that the records of a collection declare: months from which a model is no longer what it was."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from undertrim.check.vehicles import VehicleCard
from undertrim.record.model import Built, Month


@dataclass(frozen=True, slots=True)
class Boundary:
    """A boundary and the record that declares it."""

    month: Month
    declared: VehicleCard


class Boundaries:
    """Declared boundaries by model; the first record that declares one stands for all that do."""

    def __init__(self, vehicles: Iterable[VehicleCard]) -> None:
        self._by_model: dict[tuple[str, str], dict[Month, Boundary]] = defaultdict(dict)
        for vehicle in vehicles:
            for month in vehicle.facts.boundaries:
                self._by_model[vehicle.make, vehicle.model].setdefault(month, Boundary(month, vehicle))

    def of(self, vehicle: VehicleCard) -> tuple[Boundary, ...]:
        """Every boundary of a vehicle's make and model, in order of time."""
        found = self._by_model.get((vehicle.make, vehicle.model), {}).values()
        return tuple(sorted(found, key=lambda boundary: boundary.month.index))


def crosses(built: Built, month: Month) -> bool:
    """Whether a half-open span holds cars from both sides of a boundary."""
    return built.from_.index < month.index < built.to.index
