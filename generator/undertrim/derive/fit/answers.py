"""Answers for openings of a vehicle: which gear fits, in which kinds of the car."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive import cars
from undertrim.derive.evidence.disputed import reckoned as reckoned_record
from undertrim.derive.fit import measured
from undertrim.derive.fit.duties import Outcome
from undertrim.derive.fit.kinds import Room, room
from undertrim.derive.fit.nearest import nearest
from undertrim.derive.fit.place import Place, Vehicle
from undertrim.derive.fit.stock import Gear
from undertrim.derive.fit.verdict import Fit
from undertrim.derive.procedure.closed import any_inside, closed
from undertrim.record.model import Opening, When
from undertrim.words import Value

__all__ = ["Answer", "Vehicle", "answer", "kinds"]


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
    takes: tuple[Value, ...] = ()
    duties: tuple[Outcome, ...] = ()
    closed: tuple[str, ...] = ()


def answer(vehicle: Vehicle, opening: Opening, gear: Sequence[Gear] | None, chosen: Mapping[str, str]) -> list[Answer]:
    """The answers for one opening: one for each group of cars, among those `chosen` leaves open, in which they are the same.

    `gear` is what to try; None for the whole stock.
    """
    vehicle = replace(vehicle, record=reckoned_record(vehicle.record))
    reckoned, notes = measured.reckoned(vehicle.record, opening)
    groups: dict[tuple[bool, tuple[str, ...], tuple[Fit, ...], tuple[Outcome, ...]], list[Mapping[str, str]]] = {}
    sizes: dict[tuple[str, ...], Fit] = {}
    at = room(reckoned)
    for car in kinds(vehicle, opening, chosen):
        there = opening.when.holds(car)
        barred = closed(vehicle.record, opening, car) if there else ()
        open_there = there and not barred
        place = Place(vehicle, reckoned, notes, car, sizes)
        fits, kept = (_ranked(at, place, gear), place.duties) if open_there else ((), ())
        groups.setdefault((there, tuple(thing.name for thing in barred), fits, kept), []).append(car)
    takes = tuple(at.limits(vehicle.usual))
    return [
        Answer(opening, there, tuple(kinds) if len(groups) > 1 else (), fits, () if barred else takes, kept, barred)
        for (there, barred, fits, kept), kinds in groups.items()
    ]


def _ranked(at: Room, place: Place, gear: Sequence[Gear] | None) -> tuple[Fit, ...]:
    """The fits of some gear, or of the whole stock; those that fail name what would fit in their place."""
    shelf = place.vehicle.stock.taken(place.opening)
    asked = shelf if gear is None else gear
    fits = {item.id: _fit(at, place, item) for item in asked}
    failing = [item for item in asked if fits[item.id].kind == "does-not-fit"]
    if failing:
        every = {**{item.id: _fit(at, place, item) for item in shelf if item.id not in fits}, **fits}
        sizes = {item.id: at.size(item) for item in {one.id: one for one in (*shelf, *failing)}.values()}
        for item in failing:
            near = nearest(item, tuple(every.values()), shelf, lambda one: sizes[one.id])
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
    yield from vehicle.stock.conditions(vehicle.address, opening.written)
    yield from room(opening).conditions(record)


def _fit(at: Room, place: Place, gear: Gear) -> Fit:
    found = at.fit(place, gear)
    seen = gear.seen_in(place.vehicle.address, place.opening.written)
    return replace(found, notes=(*found.notes, *place.notes, *place.altering(found), *gear.doubts), seen=seen)
