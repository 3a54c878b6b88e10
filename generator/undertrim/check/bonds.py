"""What gear and vehicles have to do with each other: what gear may name of a vehicle, as plain data that a cache can hold."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from undertrim.check.findings import Card
from undertrim.check.gear import GearCard, gear
from undertrim.derive import cars
from undertrim.record.gear import Place
from undertrim.record.model import VehicleFacts, VehicleRecord, When

Bonds = dict[str, Any]


def bonds(record: VehicleRecord) -> Bonds:
    """Openings with their kind, parts, plugs pin by pin, functions that come as data, and duties that an interface must keep."""
    return {
        "openings": {opening.id: opening.kind for opening in record.openings.values()},
        "parts": list(record.parts),
        "plugs": {
            plug.id: {
                "when": _typed(plug.when),
                "pins": [[pin.id, pin.function, _typed(pin.when)] for pin in plug.pins.values()],
            }
            for plug in record.connectors.values()
        },
        "data": {fact.id: _typed(fact.when) for fact in record.functions.values() if fact.by == "data"},
        "duties": {duty.id: _typed(duty.when) for duty in record.duties.values() if duty.kept_by == "interface"},
    }


def _typed(when: When) -> dict[str, list[str]]:
    return {name: list(choices) for name, choices in when.clauses}


def read(when: Mapping[str, Sequence[str]]) -> When:
    """A condition out of the plain data."""
    return When(tuple((name, tuple(choices)) for name, choices in when.items()))


def vehicles(cards: Sequence[Card]) -> dict[str, Card]:
    """The cards of vehicles by their address."""
    return {card.address: card for card in cards if isinstance(card.facts, VehicleFacts)}


@dataclass(frozen=True, slots=True)
class Met:
    """A contact of gear and a pin of a car that it suits, on which the two disagree: which entry of `suits` it is, and both functions."""

    plug: str
    pin: str
    place: Place
    on_gear: str
    on_car: str


def disagreements(item: GearCard, known: Mapping[str, Card]) -> Iterator[Met]:
    """Every contact that does something else than the pin it meets, once for each vehicle."""
    for place in item.facts.suits:
        plugs: Mapping[str, Any] = known[place.vehicle].bonds["plugs"] if place.vehicle in known else {}
        for plug, contacts in item.facts.plugs.items():
            there: Mapping[str, Any] = plugs.get(plug, {"when": {}, "pins": []})
            for pin, function, when in there["pins"]:
                lead = contacts.get(pin)
                if lead and lead.function != function and cars.together(place.when, read(there["when"]), read(when)):
                    yield Met(plug, pin, place, lead.function, function)


def suiting(cards: Sequence[Card], vehicle: str, opening: str, *kinds: str) -> list[GearCard]:
    """The gear of some kinds that is made for an opening of a vehicle, in whatever cars."""
    return [
        item
        for item in gear(cards)
        if item.facts.kind in kinds and any((at.vehicle, at.opening) == (vehicle, opening) for at in item.facts.suits)
    ]
