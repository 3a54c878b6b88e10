"""Answers for openings of a vehicle: which gear fits, in which kinds of the car."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from undertrim.derive import cars
from undertrim.derive.cutting import may_go
from undertrim.derive.evidence.disputed import reckoned as reckoned_record
from undertrim.derive.fit import measured, receiver, speaker
from undertrim.derive.fit.between import between
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.duties import Fate, Outcome, outcomes
from undertrim.derive.fit.load import load
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.fit.takes import limits, nearest
from undertrim.derive.fit.verdict import Fit, decide, stopped
from undertrim.derive.procedure.closed import any_inside, closed
from undertrim.record.model import Opening, VehicleRecord, When


@dataclass(frozen=True, slots=True)
class Answer:
    """What fits into one opening, the best first. `cars` are the kinds of the car that it holds for; empty: for every one asked for.

    `there` is false in cars that do not have the opening. `takes` are the limits of the opening, in words, `duties` what becomes of
    what the factory unit also does, whichever receiver of the stock it is. `closed` names what is inside the high-voltage system on
    the way to it: nothing is offered then.
    """

    opening: Opening
    there: bool
    cars: tuple[Mapping[str, str], ...]
    fits: tuple[Fit, ...]
    takes: tuple[str, ...] = ()
    duties: tuple[Outcome, ...] = ()
    closed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Vehicle:
    """A vehicle record with its address (`make/id`), the stock, and the usual room around gear.

    `visit` is what is fitted in the same visit, by opening: it drives and loads what it is joined with.
    """

    record: VehicleRecord
    address: str
    stock: Stock
    usual: Clearances
    visit: Mapping[str, Gear] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Place:
    """An opening as it is reckoned (see `measured`), in one kind of car. `sizes` keeps what does not differ between kinds."""

    vehicle: Vehicle
    opening: Opening
    notes: tuple[str, ...]
    car: Mapping[str, str]
    sizes: dict[tuple[str, ...], Fit]

    def sized(self, gear: Gear, between: Sequence[Gear], work_out: Callable[[], Fit]) -> Fit:
        """The verdict by size alone, which depends on the gear and what can go between, and on no more of the car."""
        key = (gear.id, *(item.id for item in between))
        if key not in self.sizes:
            self.sizes[key] = work_out()
        return self.sizes[key]


def answer(vehicle: Vehicle, opening: Opening, gear: Sequence[Gear] | None, chosen: Mapping[str, str]) -> list[Answer]:
    """The answers for one opening: one for each group of cars, among those `chosen` leaves open, in which they are the same.

    `gear` is what to try; None for the whole stock.
    """
    vehicle = replace(vehicle, record=reckoned_record(vehicle.record))
    reckoned, notes = measured.reckoned(vehicle.record, opening)
    groups: dict[tuple[bool, tuple[str, ...], tuple[Fit, ...], tuple[Outcome, ...]], list[Mapping[str, str]]] = {}
    sizes: dict[tuple[str, ...], Fit] = {}
    for car in kinds(vehicle, opening, chosen):
        there = opening.when.holds(car)
        barred = closed(vehicle.record, opening, car) if there else ()
        open_there = there and not barred
        fits = _ranked(_Place(vehicle, reckoned, notes, car, sizes), gear) if open_there else ()
        kept = outcomes(vehicle.record, opening, car, _suiting(vehicle, opening, car)) if open_there else ()
        groups.setdefault((there, tuple(thing.name for thing in barred), fits, kept), []).append(car)
    takes = limits(reckoned, vehicle.usual)
    return [
        Answer(opening, there, tuple(kinds) if len(groups) > 1 else (), fits, () if barred else takes, kept, barred)
        for (there, barred, fits, kept), kinds in groups.items()
    ]


def _ranked(place: _Place, gear: Sequence[Gear] | None) -> tuple[Fit, ...]:
    """The fits of some gear, or of the whole stock; those that fail name what would fit in their place."""
    shelf = place.vehicle.stock.of(place.opening.kind)
    asked = shelf if gear is None else gear
    fits = {item.id: _fit(place, item) for item in asked}
    failing = [item for item in asked if fits[item.id].kind == "does-not-fit"]
    if failing:
        every = {**{item.id: _fit(place, item) for item in shelf if item.id not in fits}, **fits}
        for item in failing:
            near = nearest(item, tuple(every.values()), shelf)
            fits[item.id] = replace(fits[item.id], nearest=near, nearest_name=every[near].name if near else "")
    return tuple(sorted(fits.values(), key=lambda fit: fit.rank))


def kinds(vehicle: Vehicle, opening: Opening, chosen: Mapping[str, str]) -> Iterator[dict[str, str]]:
    """The kinds of car that may have different answers: every choice of the variants on which one depends."""
    used = {name for when in _conditions(vehicle, opening) for name in when.variants}
    return iter(cars.told_apart(vehicle.record, used, chosen))


def _conditions(vehicle: Vehicle, opening: Opening) -> Iterator[When]:
    record = vehicle.record
    yield opening.when
    if any_inside(record):
        yield from (when for _, when in cars.conditions(record))
    yield from (system.when for system in record.sound.values())
    for item in vehicle.stock.items:
        yield from item.conditions(vehicle.address, opening.id)
    if opening.kind == "speaker":
        yield from (other.when for other in record.openings.values())
        return
    for plug in record.connectors.values():
        yield plug.when
        yield from (pin.when for pin in plug.pins.values())
    yield from (fact.when for fact in record.functions.values())
    yield from (duty.when for duty in record.duties.values())
    yield from (part.when for part in record.parts.values() if part.goes_to or part.replaced == "yes")


def _fit(place: _Place, gear: Gear) -> Fit:
    found = _receiver(place, gear) if place.opening.kind == "receiver" else _speaker(place, gear)
    return replace(found, notes=(*found.notes, *place.notes, *_altering(place, found)))


def _may_go(place: _Place, item: Gear) -> bool:
    return may_go(place.vehicle.record, place.opening, item.facts.alters)


def _altering(place: _Place, found: Fit) -> Iterator[str]:
    """That what goes between alters the car."""
    for item in place.vehicle.stock.items:
        if item.name in found.parts and item.facts.alters:
            yield f"{item.name} alters the car: {', '.join(item.facts.alters).replace('-', ' ')}"


def _receiver(place: _Place, gear: Gear) -> Fit:
    suiting = _suiting(place.vehicle, place.opening, place.car)
    kits = [item for item in suiting if item.facts.kind == "kit" and _may_go(place, item)]
    found = place.sized(gear, kits, lambda: receiver.fit(gear, place.opening, kits, place.vehicle.usual))
    kept = outcomes(place.vehicle.record, place.opening, place.car, suiting, gear)
    more = between(place.vehicle.record, place.car, gear.facts, suiting, kept)
    usual = outcomes(place.vehicle.record, place.opening, place.car, suiting)
    own = (item.words for item in kept if item not in usual and item.fate is not Fate.KEPT and not item.stops)
    notes = (*found.notes, *more.notes, *own)
    if found.kind == "does-not-fit":  # what would join it is of no use then
        return replace(found, notes=notes, needs=more.needs)
    parts, to_get = (*found.parts, *more.parts), (*found.to_get, *more.to_get)
    whole = decide(found.gear, found.name, (*found.checks, *more.checks), parts, to_get, notes)
    return stopped(replace(whole, needs=more.needs, way=found.way), tuple(item.words for item in kept if item.stops))


def _suiting(vehicle: Vehicle, opening: Opening, car: Mapping[str, str]) -> list[Gear]:
    return vehicle.stock.suiting(vehicle.address, opening.id, car)


def _speaker(place: _Place, gear: Gear) -> Fit:
    """Spacers that are made for other openings are left on the shelf; those that suit this one are held against it all the same."""
    vehicle, opening, car = place.vehicle, place.opening, place.car
    suiting = vehicle.stock.suiting(vehicle.address, opening.id, car)
    rings = [item for item in suiting if item.facts.kind == "spacer" and _may_go(place, item)]
    found = place.sized(gear, rings, lambda: speaker.fit(gear, opening, rings, vehicle.usual))
    more = load(vehicle.record, opening, car, gear.facts, vehicle.visit)
    checks, notes = (*found.checks, *more.checks), (*found.notes, *more.notes)
    return replace(decide(found.gear, found.name, checks, found.parts, found.to_get, notes), way=found.way)
