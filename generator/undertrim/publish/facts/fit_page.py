"""What the pages reckon with at an opening, as data for the scripts. Nothing of it comes from the stock: that is the shelf's (`shelf.py`)."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive import cars
from undertrim.derive.cutting import bars
from undertrim.derive.fit import measured
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.duty_groups import conditions
from undertrim.derive.procedure.closed import closed_in
from undertrim.publish.encoding import Published
from undertrim.publish.facts import words
from undertrim.publish.facts.kinds import room
from undertrim.publish.facts.kinds.amplifier.feeding import Feeding
from undertrim.publish.facts.kinds.receiver.joining import Joining
from undertrim.publish.facts.loads import Load
from undertrim.publish.facts.plain import plain
from undertrim.publish.facts.words import Clauses
from undertrim.record.model import Opening
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class Form:
    """One opening as it is reckoned: its sizes, the cars that have it, and what gear there is joined to.

    `closed` are the cars in which it is inside the high-voltage system, so that nothing is offered; `uncut` tells that nothing may be fitted
    that takes material off the car.
    """

    kind: str
    gear: str
    opening: Published
    clauses: Clauses
    closed: Sequence[Clauses]
    uncut: bool
    notes: Sequence[Value]
    loads: Sequence[Load]
    joining: Joining | None
    feeding: Feeding | None


def form(vehicle: Vehicle, opening: Opening) -> Form:
    """What the pages reckon with at an opening."""
    counted, notes = measured.reckoned(vehicle.record, opening)
    return Form(
        kind=opening.kind,
        gear=opening.takes.kind,
        opening=opening_data(counted),
        clauses=words.clauses(opening.when),
        closed=list(_closed(vehicle, opening)),
        uncut=bool(bars(vehicle.record, opening)),
        notes=notes,
        loads=list(room(opening).loads(vehicle)),
        joining=room(opening).joining(vehicle),
        feeding=room(opening).feeding(vehicle),
    )


def _closed(vehicle: Vehicle, opening: Opening) -> Iterator[Clauses]:
    """The cars in which nothing is offered there."""
    having = [car for car, _ in closed_in(vehicle.record, opening)]
    if having:
        yield from map(words.clauses, conditions(having, cars.assignments(vehicle.record)))


def opening_data(opening: Opening) -> Published:
    """The dimensions of an opening that its kind has."""
    return {name: plain(getattr(opening, name)) for name in room(opening).form}
