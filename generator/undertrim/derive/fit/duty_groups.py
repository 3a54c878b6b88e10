"""What becomes of the duties over all cars of a record: each outcome once, with the cars that it holds for."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import prod

from undertrim.derive import cars
from undertrim.derive.fit.duties import Outcome, outcomes
from undertrim.derive.fit.stock import Stock, Stocked
from undertrim.record.model import Duty, Opening, VehicleRecord, When
from undertrim.record.model.kinds.receiver import ReceiverGear


@dataclass(frozen=True, slots=True)
class Becomes:
    """One outcome of one duty: in which cars, and at which openings for a receiver."""

    duty: Duty
    outcome: Outcome
    when: When
    openings: tuple[str, ...]


def becomes(
    record: VehicleRecord,
    address: str,
    stock: Stock,
    receivers: Mapping[str, Stocked[ReceiverGear]] | None = None,
    shelves: Mapping[str, Stock] | None = None,
) -> tuple[Becomes, ...]:
    """Every outcome of every duty, in the order of the record; where two openings take a receiver and have the same one, once.

    `receivers` are those that somebody chose, `shelves` the stock where less is left than `stock`, both by opening.
    """
    found: dict[tuple[str, Outcome, When], list[str]] = {}
    chosen, left = receivers or {}, shelves or {}
    for opening in record.openings.values():
        shelf, receiver = left.get(opening.id, stock), chosen.get(opening.id)
        for outcome, when in outcomes_at(record, address, shelf, opening, receiver):
            found.setdefault((outcome.duty, outcome, when), []).append(opening.id)
    order = list(record.duties)
    made = [Becomes(record.duties[name], one, when, tuple(places)) for (name, one, when), places in found.items()]
    return tuple(sorted(made, key=lambda item: order.index(item.duty.id)))


def outcomes_at(
    record: VehicleRecord, address: str, stock: Stock, opening: Opening, receiver: Stocked[ReceiverGear] | None = None
) -> Iterator[tuple[Outcome, When]]:
    """The outcomes at one opening with their cars; without a `receiver` any of the stock may be the one that keeps a duty."""
    if not opening.takes_over or not record.duties:
        return
    kinds = list(_kinds(record, address, stock, opening))
    groups: dict[Outcome, list[Mapping[str, str]]] = {}
    for car in kinds:
        if opening.when.holds(car):
            shelf = stock.suiting(address, opening.written, car) if stock.asked else None
            for outcome in outcomes(record, opening, car, shelf, receiver):
                groups.setdefault(outcome, []).append(car)
    for outcome, having in groups.items():
        yield from ((outcome, when) for when in conditions(having, kinds))


def _kinds(record: VehicleRecord, address: str, stock: Stock, opening: Opening) -> Iterator[dict[str, str]]:
    """Every choice of the variants on which an outcome may depend."""
    whens = [
        opening.when,
        *(duty.when for duty in record.duties.values()),
        *(part.when for part in record.parts.values()),
        *stock.conditions(address, opening.written),
    ]
    used = {name for when in whens for name in when.variants}
    return iter(cars.told_apart(record, used))


def conditions(having: Sequence[Mapping[str, str]], kinds: Sequence[Mapping[str, str]]) -> Iterator[When]:
    """Some of all kinds of car as one condition where that can be said, else one for each."""
    chosen = {name: tuple(dict.fromkeys(car[name] for car in having)) for name in kinds[0]}
    every = {name: {car[name] for car in kinds} for name in kinds[0]}
    if prod(map(len, chosen.values())) == len(having):
        yield When(tuple((name, found) for name, found in chosen.items() if set(found) != every[name]))
        return
    yield from (When(tuple((name, (choice,)) for name, choice in car.items())) for car in having)
