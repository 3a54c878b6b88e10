"""What an answer is worked out for: a vehicle with the stock, and an opening in one kind of its cars."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from undertrim.derive.cutting import may_go
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.duties import Outcome, outcomes
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.fit.verdict import Fit
from undertrim.record.model import Opening, VehicleRecord
from undertrim.words import Items, Message, message


@dataclass(frozen=True, slots=True)
class Vehicle:
    """A vehicle record with its address (`make/id`), the stock, and the usual room around gear.

    `visit` is what is fitted in the same visit, by opening: it drives and loads what it is joined with. `shelves` are the openings for
    which somebody chose what stands between, each with the stock that this leaves.
    """

    record: VehicleRecord
    address: str
    stock: Stock
    usual: Clearances
    visit: Mapping[str, Gear] = field(default_factory=dict)
    shelves: Mapping[str, Stock] = field(default_factory=dict)

    def shelf(self, opening: str) -> Stock:
        """The stock that is offered for an opening, by its id."""
        return self.shelves.get(opening, self.stock)


@dataclass(frozen=True)  # without slots: what is the same for all gear of the stock is worked out once
class Place:
    """An opening as it is reckoned (see `measured`), in one kind of car. `sizes` keeps what does not differ between kinds."""

    vehicle: Vehicle
    opening: Opening
    notes: tuple[Message, ...]
    car: Mapping[str, str]
    sizes: dict[tuple[str, ...], Fit]

    def sized(self, gear: Gear, between: Sequence[Gear], work_out: Callable[[], Fit]) -> Fit:
        """The verdict by size alone, which depends on the gear and what can go between, and on no more of the car."""
        key = (gear.id, *(item.id for item in between))
        if key not in self.sizes:
            self.sizes[key] = work_out()
        return self.sizes[key]

    @cached_property
    def suiting(self) -> list[Gear]:
        """The gear that suits the opening of this car, and what suits every car."""
        return self.vehicle.shelf(self.opening.id).suiting(self.vehicle.address, self.opening.written, self.car)

    @cached_property
    def between(self) -> list[Gear]:
        """What of it may go between: what fitting it does to the car is forbidden by nothing."""
        kind, record = self.opening.between, self.vehicle.record
        able = (item for item in self.suiting if kind and isinstance(item.facts, kind))
        return [item for item in able if may_go(record, self.opening, item.facts.alters)]

    @cached_property
    def duties(self) -> tuple[Outcome, ...]:
        """What becomes of what the factory unit also does, whichever receiver of the stock it is."""
        asked = self.vehicle.shelf(self.opening.id).asked
        return outcomes(self.vehicle.record, self.opening, self.car, self.suiting if asked else None)

    def altering(self, found: Fit) -> Iterator[Message]:
        """That what goes between alters the car."""
        for item in self.vehicle.stock.items:
            if item.piece in found.parts and item.facts.alters:
                yield message("fit/altering", name=item.name, how=altered(item.facts.alters))


def altered(how: Sequence[str]) -> Items:
    """What is done to a car that is altered."""
    return Items(tuple(message(f"altering/{one}") for one in how), "comma")
