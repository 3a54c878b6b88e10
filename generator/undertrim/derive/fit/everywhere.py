"""One piece of gear in every opening of a vehicle that takes its kind."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.stock import Gear
from undertrim.derive.fit.verdict import Fit
from undertrim.record.model import Opening
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class Found:
    """The verdict on the gear in an opening, and the kinds of the car that it holds for; empty: for every one."""

    opening: Opening
    cars: tuple[Mapping[str, str], ...]
    fit: Fit


def openings(vehicle: Vehicle, gear: Gear) -> Sequence[Found]:
    """The verdicts in a vehicle's openings, in the order of its record: one for all cars in which what decides it is the same. Openings that
    such a car does not have, and those inside a high-voltage system, have none."""
    fitting = (one for one in vehicle.record.openings.values() if isinstance(gear.facts, one.takes))
    return tuple(found for opening in fitting for found in _found(vehicle, opening, gear))


def _found(vehicle: Vehicle, opening: Opening, gear: Gear) -> Iterator[Found]:
    answers = answer(vehicle, opening, [gear], {})
    alike: dict[tuple[str, Value], list[tuple[tuple[Mapping[str, str], ...], Fit]]] = {}
    for one in answers:
        for fit in one.fits:
            alike.setdefault((fit.kind, fit.headline), []).append((one.cars, fit))
    for group in alike.values():
        cars = tuple(car for cars, _ in group for car in cars)
        yield Found(opening, () if len(group) == len(answers) else cars, group[0][1])
