"""What an opening takes, as data: one entry for each group of cars in which that is the same, whatever gear there is and whatever becomes of the factory unit's duties."""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.answers import Answer, Vehicle, answer
from undertrim.derive.procedure.closed import why_closed
from undertrim.publish.facts import names
from undertrim.record.model import Opening
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class ShownLimits:
    """What an opening takes in one group of cars, by its measures."""

    there: bool
    closed: Value
    cars: Sequence[Mapping[str, str]]
    cars_words: Value
    takes: Sequence[Value]


def limits(vehicle: Vehicle, opening: Opening) -> list[ShownLimits]:
    """What an opening takes, in every kind of car."""
    alike: dict[Hashable, list[Answer]] = {}
    for item in answer(vehicle, opening, [], {}):
        alike.setdefault((item.there, item.takes, item.closed), []).append(item)
    every = [replace(same[0], cars=tuple(car for one in same for car in one.cars)) for same in alike.values()]
    return [of_answer(vehicle, item if len(every) > 1 else replace(item, cars=())) for item in every]


def of_answer(vehicle: Vehicle, item: Answer) -> ShownLimits:
    """The same of one answer."""
    return ShownLimits(
        there=item.there,
        closed=why_closed(item.opening, item.closed) if item.closed else "",
        cars=[dict(car) for car in item.cars],
        cars_words=names.kinds_of_car(vehicle.record, item.cars),
        takes=item.takes,
    )
