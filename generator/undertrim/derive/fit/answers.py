"""Answers for openings of a vehicle: which gear fits, in which kinds of the car."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import product

from undertrim.derive import cars
from undertrim.derive.evidence.conflicts import disputes
from undertrim.derive.fit import functions, receiver, speaker
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.speaker import Spacer
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.fit.verdict import Fit
from undertrim.record.model import Opening, VehicleRecord, When


@dataclass(frozen=True, slots=True)
class Answer:
    """What fits into one opening, the best first. `cars` are the kinds of the car that it holds for; empty: for every one asked for.

    `there` is false in cars that do not have the opening.
    """

    opening: Opening
    there: bool
    cars: tuple[Mapping[str, str], ...]
    fits: tuple[Fit, ...]


@dataclass(frozen=True, slots=True)
class Vehicle:
    """A vehicle record with its address (`make/id`), the stock, and the usual room around gear."""

    record: VehicleRecord
    address: str
    stock: Stock
    usual: Clearances


def answer(vehicle: Vehicle, opening: Opening, gear: Sequence[Gear], chosen: Mapping[str, str]) -> list[Answer]:
    """The answers for one opening: one for each group of cars, among those `chosen` leaves open, in which they are the same."""
    groups: dict[tuple[bool, tuple[Fit, ...]], list[Mapping[str, str]]] = {}
    for car in _kinds(vehicle, opening, chosen):
        there = opening.when.holds(car)
        fits = sorted((_fit(vehicle, opening, item, car) for item in gear if there), key=lambda fit: fit.rank)
        groups.setdefault((there, tuple(fits)), []).append(car)
    return [
        Answer(opening, there, tuple(kinds) if len(groups) > 1 else (), fits) for (there, fits), kinds in groups.items()
    ]


def _kinds(vehicle: Vehicle, opening: Opening, chosen: Mapping[str, str]) -> Iterator[dict[str, str]]:
    """The kinds of car that may have different answers: every choice of the variants on which one depends."""
    used = {name for when in _conditions(vehicle, opening) for name in when.variants}
    known = {name: variant for name, variant in cars.variants(vehicle.record).items() if name in used}
    open_choices = [
        [(name, choice) for choice in variant.choices if chosen.get(name, choice) == choice]
        for name, variant in known.items()
    ]
    return map(dict, product(*open_choices))


def _conditions(vehicle: Vehicle, opening: Opening) -> Iterator[When]:
    yield opening.when
    for item in vehicle.stock.items:
        yield from item.conditions(vehicle.address, opening.id)
    if opening.kind == "receiver":
        for plug in vehicle.record.connectors.values():
            yield plug.when
            yield from (pin.when for pin in plug.pins.values())
        yield from (fact.when for fact in vehicle.record.functions.values())


def _fit(vehicle: Vehicle, opening: Opening, gear: Gear, car: Mapping[str, str]) -> Fit:
    found = (
        _receiver(vehicle, opening, gear, car) if opening.kind == "receiver" else _speaker(vehicle, opening, gear, car)
    )
    return replace(found, notes=(*found.notes, *_disputed(vehicle.record, opening)))


def _receiver(vehicle: Vehicle, opening: Opening, gear: Gear, car: Mapping[str, str]) -> Fit:
    suiting = [item for item in vehicle.stock.items if item.place(vehicle.address, opening.id, car)]
    kits = [item for item in suiting if item.facts.kind == "kit"]
    adapters = [item for item in suiting if item.facts.kind in ("harness", "interface")]
    found = receiver.fit(gear, opening, kits, vehicle.usual)
    return replace(found, needs=functions.needs(gear.facts.needs, vehicle.record, car, adapters))


def _speaker(vehicle: Vehicle, opening: Opening, gear: Gear, car: Mapping[str, str]) -> Fit:
    """Spacers that are made for other openings are left on the shelf: their bolts are not those of this car."""
    rings = [
        Spacer(item, made_for_it=place is not None)
        for item in vehicle.stock.of("spacer")
        for place in (item.place(vehicle.address, opening.id, car),)
        if place or not item.facts.suits
    ]
    return speaker.fit(gear, opening, rings, vehicle.usual)


def _disputed(record: VehicleRecord, opening: Opening) -> Iterator[str]:
    """Facts of the opening on which the evidence disagrees."""
    for dispute in disputes(record):
        about = dispute.conflict.about
        if about.startswith(f"openings/{opening.id}/") and not dispute.settled:
            yield f"the evidence disagrees on {about.split('/', 2)[2].replace('/', ' ').replace('_', ' ')}: measure again"
