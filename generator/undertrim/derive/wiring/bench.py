"""Everything that lies ready for one joint: the car's points, the leads, and the gear that goes between."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.stock import Gear
from undertrim.derive.wiring.contacts import Contact
from undertrim.derive.wiring.leads import is_sound, level
from undertrim.derive.wiring.needs import Point, sources
from undertrim.derive.wiring.signals import by_data
from undertrim.derive.wiring.traps import Wire
from undertrim.record.gear import Lead
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.receiver import HarnessGear, InterfaceGear
from undertrim.words import message


@dataclass(frozen=True, slots=True)
class Path:
    """The way of a lead: where the car has its function, the contacts it goes through, and the gear that carries it."""

    sources: tuple[Point, ...]
    contacts: tuple[Contact, ...] = ()
    carrier: Gear | None = None

    @property
    def interface(self) -> bool:
        """Whether an interface makes the function, so that it need not be on a wire of the car."""
        return self.carrier is not None and isinstance(self.carrier.facts, InterfaceGear)


@dataclass(frozen=True, slots=True)
class Bench:
    """One car with leads and adapters; `output` is what the car wants on its sound wires.

    `visible` are all ends that lie open once the adapters are plugged in: their leads, and the wires of the car that none of them takes.
    """

    record: VehicleRecord
    car: Mapping[str, str]
    points: tuple[Point, ...]
    leads: tuple[Lead, ...]
    held: tuple[Contact, ...]
    interfaces: tuple[Gear, ...]
    output: str
    visible: tuple[Wire, ...]

    def path(self, lead: Lead) -> Path:
        """The way of a lead: through the harness, else through an interface, else by hand. Where one end is data, the interface comes first."""
        found = sources(lead.function, self.record, self.car, self.points)
        own = tuple(contact for contact in self.held if contact.lead.function == lead.function)
        by_harness = tuple(contact for contact in own if isinstance(contact.gear.facts, HarnessGear))
        maker = self.maker(lead.function)
        if maker and (not by_harness or any(by_data(lead, point) for point in found)):
            return Path(found, tuple(contact for contact in own if contact.gear is maker), maker)
        return Path(found, by_harness, by_harness[0].gear if by_harness else None)

    def maker(self, function: str) -> Gear | None:
        """The first interface that brings a function."""
        found = (
            item for item in self.interfaces if isinstance(item.facts, InterfaceGear) and function in item.facts.brings
        )
        return next(found, None)

    def at(self, address: str) -> Point | None:
        """The contact of the car at an address."""
        return next((point for point in self.points if point.address == address), None)

    def bridge(self, lead: Lead) -> Gear | None:
        """The gear that turns the level of a sound lead into the one that the car wants; None where none is there or needed."""
        if not is_sound(lead.function) or self.output in ("unknown", level(lead)):
            return None
        fitting = (item for item in self.interfaces if item.facts.gives == self.output)
        return next((item for item in fitting if item.facts.takes in ("", level(lead))), None)

    @property
    def levels(self) -> tuple[str, ...]:
        """The levels of a sound lead that may reach the car: its own first, then what the gear between takes."""
        if self.output == "unknown":
            return ()
        giving = [item.facts.takes for item in self.interfaces if item.facts.gives == self.output]
        taken = [name for takes in giving for name in ((takes,) if takes else ("speaker", "line"))]
        return tuple(dict.fromkeys((self.output, *taken)))

    def facing(self, path: Path) -> tuple[Wire, ...]:
        """The ends that a lead is joined to: leads of the adapter, or wires of the car by hand."""
        if path.contacts:
            return tuple(map(_end, path.contacts))
        return tuple(_wire(point) for point in path.sources if point.address and path.carrier is None)


def visible(points: Sequence[Point], held: Sequence[Contact]) -> tuple[Wire, ...]:
    """The ends that lie open with these contacts plugged in."""
    reached = {contact.address for contact in held}
    return (*map(_end, held), *(_wire(point) for point in points if point.address not in reached))


def _wire(point: Point) -> Wire:
    return Wire(point.address, point.function, point.colour, point.scheme)


def _end(contact: Contact) -> Wire:
    where = message("joint/gear-at", gear=contact.gear.name, at=contact.address)
    return Wire(where, contact.lead.function, contact.lead.colour)
