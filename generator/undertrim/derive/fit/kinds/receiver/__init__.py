"""How a receiver goes into an opening in the dash."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.duties import Fate, outcomes
from undertrim.derive.fit.kinds.receiver import fit, takes
from undertrim.derive.fit.kinds.receiver.between import between
from undertrim.derive.fit.margins import typed
from undertrim.derive.fit.nearest import Size
from undertrim.derive.fit.outline import rectangle
from undertrim.derive.fit.place import Place
from undertrim.derive.fit.stock import Gear, of_kind, only
from undertrim.derive.fit.verdict import Fit, decide, stopped
from undertrim.record.model import VehicleRecord, When
from undertrim.record.model.kinds.receiver import KitGear, ReceiverGear, ReceiverOpening
from undertrim.words import Value, message


@dataclass(frozen=True, slots=True)
class Room:
    """An opening in the dash."""

    opening: ReceiverOpening

    def conditions(self, record: VehicleRecord) -> Iterator[When]:
        """Where the wires and functions are, what the factory unit also does, and which parts go."""
        for plug in record.connectors.values():
            yield plug.when
            yield from (pin.when for pin in plug.pins.values())
        yield from (fact.when for fact in record.functions.values())
        yield from (duty.when for duty in record.duties.values())
        yield from (part.when for part in record.parts.values() if part.goes_to or part.replaced == "yes")

    def fit(self, place: Place, gear: Gear) -> Fit:
        """By size, straight in or through a kit, and by what joins it to the car and keeps the duties of the factory unit."""
        receiver, suiting, record = only(gear, ReceiverGear), place.suiting, place.vehicle.record
        found = place.sized(gear, place.between, lambda: self.by_size(gear, place.between, place.vehicle.usual))
        kept = outcomes(record, self.opening, place.car, suiting, receiver)
        more = between(record, place.car, receiver.facts, suiting, kept)
        own = (
            item.words for item in kept if item not in place.duties and item.fate is not Fate.KEPT and not item.stops
        )
        notes = (*found.notes, *more.notes, *own)
        if found.kind == "does-not-fit":  # what would join it is of no use then
            return replace(found, notes=notes, needs=more.needs)
        parts, to_get = (*found.parts, *more.parts), (*found.to_get, *more.to_get)
        whole = decide(found.gear, found.name, (*found.checks, *more.checks), parts, to_get, notes)
        return stopped(
            replace(whole, needs=more.needs, way=found.way), tuple(item.words for item in kept if item.stops)
        )

    def by_size(self, gear: Gear, between: Sequence[Gear], usual: Clearances) -> Fit:
        """Straight in, or through a kit."""
        return fit.fit(only(gear, ReceiverGear), self.opening, of_kind(between, KitGear), usual)

    def limits(self, usual: Clearances) -> Iterator[Value]:
        """The largest body and chassis."""
        return takes.limits(self.opening, usual)

    def needs(self) -> Iterator[tuple[Value, Value]]:
        """A kit."""
        if self.opening.kit == "needed":
            yield message("receiver-shown/kit"), message("receiver-shown/kit-needs")

    def size(self, gear: Gear) -> Size:
        """Body and chassis."""
        facts = only(gear, ReceiverGear).facts
        body = rectangle(message("fit-receiver/body"), facts.body)
        return body.width, body.height, typed(message("fit-receiver/chassis-depth"), facts.chassis_depth)
