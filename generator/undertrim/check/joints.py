"""What gear meets in a vehicle: its openings, plugs, parts by name, functions and duties, and which cars have which.

This much of each vehicle, as typed, is among the details of its card. A record is made of it only where gear meets one that was not met
before, since making one takes far longer than seeing that both are what they were.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from undertrim.check.findings import Card
from undertrim.derive import cars
from undertrim.derive.fit.stock import Gear, Stocked
from undertrim.record.gear import GearFacts
from undertrim.record.model import VehicleFacts, VehicleRecord, When
from undertrim.record.source import Data
from undertrim.record.store import Entry

PLACED = ("functions", "duties")
"""Sections whose places in the file the cards carry too."""

_WHOLE = ("format", "vehicle", "variants", "connectors", "functions", "duties")
_PARTLY = {
    "parts": ("name", "release", "when", "tethers", "form_of"),
    "openings": ("name", "kind", "behind", "when", "form_of"),
}


def cut(entry: Entry) -> Data:
    """What a card carries of a vehicle; None for gear, and where the schema refused some of it."""
    origin = entry.source.origin
    data = origin.marked(entry.source.data) if origin else entry.source.data
    if entry.kind != "vehicle" or not isinstance(data, dict):
        return None
    if any(not place or place[0] in (*_WHOLE, *_PARTLY) for place in entry.dropped):
        return None
    whole = {name: data[name] for name in _WHOLE if name in data}
    return whole | {name: _some(data.get(name), kept) for name, kept in _PARTLY.items()}


def _some(things: Data, kept: Sequence[str]) -> Data:
    """The kept fields of everything that stands under an id."""
    if not isinstance(things, dict):
        return {}
    return {
        name: {key: value for key, value in thing.items() if key in kept}
        for name, thing in things.items()
        if isinstance(thing, dict)
    }


def states(card: Card, name: str, value: str) -> bool:
    """Whether a vehicle says of a function or duty (`by`, `kept_by`) that it is of this value, without making the record."""
    sections = card.details.joints if isinstance(card.details.joints, dict) else {}
    return any(
        isinstance(thing, dict) and thing.get(name) == value
        for section in PLACED
        for thing in dict(sections.get(section) or {}).values()
    )


def kinds(record: VehicleRecord, conditions: Iterable[When]) -> list[dict[str, str]]:
    """Every kind of car that the record or some conditions of gear tell apart."""
    used = {*cars.asked(record), *(name for when in conditions for name in when.variants)}
    return cars.told_apart(record, used)


def vehicles(cards: Sequence[Card]) -> Mapping[str, Card]:
    """The vehicles of the collection by address (`make/id`)."""
    return {card.address: card for card in cards if isinstance(card.facts, VehicleFacts)}


def shelf(cards: Sequence[Card]) -> Iterator[tuple[Card, Gear]]:
    """The gear of the collection with its cards, in the order given."""
    for card in cards:
        if isinstance(card.facts, GearFacts):
            yield card, Stocked(card.path.stem, card.facts)
