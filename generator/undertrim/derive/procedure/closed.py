"""Openings that cannot be reached but through the high-voltage system: for them there are no steps, no gear, no template."""

from collections.abc import Mapping

from undertrim.derive import cars
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, Target, targets
from undertrim.record.model import Opening, Thing, VehicleRecord


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
