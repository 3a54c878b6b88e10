"""What an opening takes, as data: one entry for each group of cars in which that is the same, whatever gear there is."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.answers import Answer, Vehicle, answer
from undertrim.derive.procedure.closed import why_closed
from undertrim.publish.facts import duties, names
from undertrim.record.model import Opening
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class ShownLimits:
    """What an opening takes in one group of cars, by its measures, and what goes with the factory unit there."""

    there: bool
    closed: Value
    cars: Sequence[Mapping[str, str]]
    cars_words: Value
    takes: Sequence[Value]
    duties: Sequence[duties.ShownDuty]


def limits(vehicle: Vehicle, opening: Opening) -> list[ShownLimits]:
    """What an opening takes, in every kind of car."""
    return [of_answer(vehicle, item) for item in answer(vehicle, opening, [], {})]


def of_answer(vehicle: Vehicle, item: Answer) -> ShownLimits:
    """The same of one answer."""
    return ShownLimits(
        there=item.there,
        closed=why_closed(item.opening, item.closed) if item.closed else "",
        cars=[dict(car) for car in item.cars],
        cars_words=names.kinds_of_car(vehicle.record, item.cars),
        takes=item.takes,
        duties=duties.of_answer(vehicle, item),
    )
