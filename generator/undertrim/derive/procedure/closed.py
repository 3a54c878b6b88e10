"""Openings that cannot be reached but through the high-voltage system: for them there are no steps, no gear, no template."""

from collections.abc import Iterator, Mapping, Sequence

from undertrim.derive import cars
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, Target, targets
from undertrim.record.model import Opening, Thing, VehicleRecord, When
from undertrim.words import Items, Message, message, quoted


def any_inside(record: VehicleRecord) -> bool:
    """Whether anything of the record is inside the high-voltage system, so that it is worth asking."""
    return any(record.high_voltage(thing) == "inside" for thing in record.things)


def closed(record: VehicleRecord, opening: Opening, car: Mapping[str, str]) -> tuple[Thing, ...]:
    """What on the way to an opening is inside the high-voltage system, at any of its sides; nothing where the way is free."""
    if not any_inside(record):
        return ()
    return _of_opening(Planner(record), opening, car)


def closed_in(record: VehicleRecord, opening: Opening) -> list[tuple[dict[str, str], tuple[Thing, ...]]]:
    """Every kind of car in which an opening is closed, and by what."""
    if not any_inside(record):
        return []
    planner = Planner(record)
    found = ((car, _of_opening(planner, opening, car)) for car in cars.assignments(record))
    return [(car, by) for car, by in found if by]


def _of_opening(planner: Planner, opening: Opening, car: Mapping[str, str]) -> tuple[Thing, ...]:
    wanted = (target for target in targets(planner.record) if target.job == opening.id)
    found = (thing for target in wanted for thing in _closed(planner, target, car))
    return tuple({thing.id: thing for thing in found}.values())


def _closed(planner: Planner, target: Target, car: Mapping[str, str]) -> tuple[Thing, ...]:
    """What closes a target; a way that cannot be worked out at all is a matter for the checker."""
    try:
        return planner.closed(target, car)
    except (Unreachable, TooTangled):
        return ()


def why_closed(opening: Opening, names: Sequence[str]) -> Message:
    """Why nothing is told of an opening; `names` are what is inside on the way to it."""
    by = tuple(quoted(name) for name in names if name != opening.name)
    if not by:
        return message("closed/inside", opening=opening.name)
    return message("closed/behind", opening=opening.name, parts=Items(by, "comma"))


def closings(record: VehicleRecord) -> Iterator[tuple[Opening, When, Message]]:
    """Every opening that is closed, in which cars, and the words for it."""
    for opening in record.openings.values():
        found = closed_in(record, opening)
        if found:
            names = dict.fromkeys(thing.name for _, by in found for thing in by)
            yield opening, _cars(record, opening, [car for car, _ in found]), why_closed(opening, list(names))


def _cars(record: VehicleRecord, opening: Opening, closed: Sequence[Mapping[str, str]]) -> When:
    """The cars in which it is closed, as far as single variants tell; never fewer than it is."""
    every = [car for car in cars.assignments(record) if opening.when.holds(car)]
    clauses = []
    for name in every[0]:
        chosen = tuple(dict.fromkeys(car[name] for car in closed))
        if len(chosen) < len({car[name] for car in every}):
            clauses.append((name, chosen))
    narrowed = When(tuple(clauses))
    named = {name for name, _ in clauses}
    return When((*narrowed.clauses, *(clause for clause in opening.when.clauses if clause[0] not in named)))
