"""How a tweeter goes into its place."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.channel_load import load
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.tweeter import fit
from undertrim.derive.fit.kinds.tweeter.mounted import BODY, limits
from undertrim.derive.fit.margins import typed
from undertrim.derive.fit.nearest import Size
from undertrim.derive.fit.place import Place
from undertrim.derive.fit.stock import Gear, of_kind, only
from undertrim.derive.fit.verdict import Fit, decide
from undertrim.record.model import VehicleRecord, When
from undertrim.record.model.kinds.tweeter import CrossoverGear, TweeterGear, TweeterOpening
from undertrim.words import Message, Value, message


@dataclass(frozen=True, slots=True)
class Room:
    """A place for a tweeter."""

    opening: TweeterOpening

    def conditions(self, record: VehicleRecord) -> Iterator[When]:
        """Which others are on its channel."""
        return (other.when for other in record.openings.values())

    def fit(self, place: Place, gear: Gear) -> Fit:
        """By size and high-pass, and by the load it makes of its channel in its own range."""
        tweeter, vehicle = only(gear, TweeterGear), place.vehicle
        found = place.sized(gear, place.between, lambda: self.by_size(gear, place.between, vehicle.usual))
        more = load(vehicle.record, self.opening, place.car, tweeter.facts.impedance, vehicle.visit)
        checks, notes = (*found.checks, *more.checks), (*found.notes, *more.notes)
        return decide(found.gear, found.name, checks, found.parts, found.to_get, notes, found.way)

    def by_size(self, gear: Gear, between: Sequence[Gear], usual: Clearances) -> Fit:
        """By the mount that is there, with what keeps the low tones away."""
        return fit.fit(only(gear, TweeterGear), self.opening, of_kind(between, CrossoverGear), usual)

    def limits(self, usual: Clearances) -> Iterator[Message]:
        """The largest body, depth and height over the front."""
        return limits(self.opening, usual)

    def needs(self) -> Iterator[tuple[Value, Value]]:
        """A high-pass, where the car leaves none."""
        if self.opening.feed != "crossover":
            yield message("fit-tweeter/high-pass"), message("tweeter-shown/high-pass-needs")

    def size(self, gear: Gear) -> Size:
        """Diameter and depth of its first mount."""
        first = next(iter(only(gear, TweeterGear).facts.mounts), None)
        across = typed(BODY, first.diameter if first else None)
        return across, across, typed(message("fit-tweeter/depth-of-body"), first.depth if first else None, none=0)
