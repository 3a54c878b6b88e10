"""The contacts of harnesses and interfaces, pin by pin against those of the car."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.stock import Gear
from undertrim.derive.wiring.needs import Point, conditions_of, natural
from undertrim.record.gear import Lead
from undertrim.record.model import Connector, VehicleRecord
from undertrim.words import Message, message


@dataclass(frozen=True, slots=True)
class Contact:
    """One contact of an adapter towards the car; `lead` is what it leads to, on the side of the receiver.

    `made_for` is the plug that the adapter's record names. It differs from `plug` where this car has another map of the same plug.
    """

    gear: Gear
    plug: str
    pin: str
    lead: Lead
    made_for: str

    @property
    def address(self) -> str:
        """`plug/pin` of the car's plug that it goes into."""
        return f"{self.plug}/{self.pin}"


@dataclass(frozen=True, slots=True)
class Extra:
    """A contact that meets no contact of this car, and what is known of the position."""

    contact: Contact
    words: Message


@dataclass(frozen=True, slots=True)
class Comparison:
    """Contacts that the car lacks, contacts that the adapter lacks, and pairs that do different things."""

    extra: tuple[Extra, ...] = ()
    missing: tuple[Point, ...] = ()
    differing: tuple[tuple[Contact, Point], ...] = ()


def contacts(record: VehicleRecord, car: Mapping[str, str], gear: Sequence[Gear]) -> tuple[Contact, ...]:
    """Every contact that leads somewhere, gear by gear, by plug and pin.

    Two maps of one plug stand at the same tether, and what is made for one goes into the other as well. Then the contacts are those of the
    map that this car has, unless the gear has that one too.
    """
    found = [
        Contact(item, plug, pin, lead, made_for)
        for item in gear
        for made_for, held in item.facts.plugs.items()
        if (plug := _met(record, car, made_for)) == made_for or plug not in item.facts.plugs
        for pin, lead in held.items()
        if lead.function != "spare"
    ]
    order = [item.id for item in gear]
    return tuple(sorted(found, key=lambda contact: (order.index(contact.gear.id), natural(contact.address))))


def _met(record: VehicleRecord, car: Mapping[str, str], name: str) -> str:
    """The plug of this car that what is made for the named one goes into; the name itself where there is none."""
    named = [plug for plug in record.connectors.values() if plug.is_named(name)]
    tethers = {plug.at for plug in named if plug.at}
    same = [plug for plug in record.connectors.values() if plug.at in tethers]
    return next((plug.id for plug in (*named, *same) if _holds(record, car, plug)), name)


def _holds(record: VehicleRecord, car: Mapping[str, str], plug: Connector) -> bool:
    return all(when.holds(car) for when in conditions_of(record, plug))


def compare(
    record: VehicleRecord, car: Mapping[str, str], held: Sequence[Contact], points: Sequence[Point]
) -> Comparison:
    """The contacts of all adapters together against those of one car. Without any contact nothing is called missing."""
    there = {point.address: point for point in points}
    reached = {contact.address for contact in held}
    return Comparison(
        tuple(Extra(contact, _empty(record, car, contact)) for contact in held if contact.address not in there),
        tuple(point for point in points if held and point.address not in reached),
        tuple(
            (contact, there[contact.address])
            for contact in held
            if contact.address in there and there[contact.address].function != contact.lead.function
        ),
    )


def _empty(record: VehicleRecord, car: Mapping[str, str], contact: Contact) -> Message:
    """What is known of a position at which this car has no contact that does something."""
    plug = record.connectors.get(contact.plug)
    if plug is None or not _holds(record, car, plug):
        return message("joint/no-such-plug")
    pin = plug.pins.get(contact.pin)
    if pin is not None and pin.function == "spare":
        return message("joint/spare-there")
    if contact.pin in plug.blanks:
        return message("joint/empty-there")
    if pin is not None:
        return message("joint/others-only")
    return message("joint/nothing-recorded")
