"""Whether the door that a thing is in holds a crash pressure sensor: one answer for a door, the worst that anybody gave for it.

A door is an area and a side of the car. An opening that does not say where it is may be in any of them.
"""

from collections.abc import Iterator
from itertools import combinations, product

from undertrim.derive.cars import together
from undertrim.derive.once import once
from undertrim.record.model import DOORS, Known, Opening, Part, Prep, Thing, VehicleRecord
from undertrim.record.model.basics import Side

Door = tuple[str, Side]

_SIDES: tuple[Side, ...] = ("left", "right")
_WORST = ("yes", "unknown", "no")


def sensor(record: VehicleRecord, thing: Thing) -> Known:
    """Whether a pressure sensor is in the door of a thing: yes before unknown before no, and unknown where nobody says.

    `no` for what is in no door, unless it says something else of itself.
    """
    own = thing.crash_sensor if isinstance(thing, Opening) else None
    answers: list[Known] = [_in(record, door, thing) for door in doors_of(record, thing)]
    return worst([*answers, *([own] if own else [])], "no")


def worst(answers: list[Known], nothing: Known) -> Known:
    """The worst of several answers; `nothing` where there is none."""
    return min(answers, key=_WORST.index, default=nothing)


@once
def _of_openings(record: VehicleRecord) -> dict[str, frozenset[Door]]:
    """The doors that each opening is in or may be in."""
    return {name: doors_of(record, opening) for name, opening in record.openings.items()}


def doors_of(record: VehicleRecord, thing: Thing) -> frozenset[Door]:
    """The doors that a thing is in or may be in. A part without an area is where the openings behind it are."""
    if isinstance(thing, Part) and not thing.area:
        behind = [opening for opening in record.openings.values() if thing.id in opening.behind and opening.area]
        return frozenset(door for opening in behind for door in doors_of(record, opening))
    return frozenset(product(_areas(thing), _sides(record, thing)))


def contradictions(record: VehicleRecord) -> Iterator[tuple[Opening, Opening]]:
    """Every two openings of one door, in one car, that say different things of its sensor."""
    said = [opening for opening in record.openings.values() if opening.crash_sensor and opening.area]
    for one, other in combinations(said, 2):
        if one.crash_sensor != other.crash_sensor and together(one.when, other.when) and _shared(record, one, other):
            yield one, other


def _shared(record: VehicleRecord, one: Thing, other: Thing) -> frozenset[Door]:
    return doors_of(record, one) & doors_of(record, other)


def _in(record: VehicleRecord, door: Door, thing: Thing) -> Known:
    """What is said of one door by the openings that can be in it in a car that also has the thing."""
    here = (opening for opening in record.openings.values() if together(opening.when, thing.when))
    return worst([said for opening in here if (said := _said(record, opening, door, thing))], "unknown")


def _said(record: VehicleRecord, opening: Opening, door: Door, thing: Thing) -> Known | None:
    """What an opening says of a door; that there is none counts only from one that is surely in it, or for itself."""
    if door not in _of_openings(record)[opening.id]:
        return None
    sure = opening is thing or (bool(opening.area) and not _may_change_sides(record, opening))
    return opening.crash_sensor if sure or opening.crash_sensor != "no" else None


def _areas(thing: Thing) -> tuple[str, ...]:
    if isinstance(thing, Opening) and not thing.area:
        return DOORS if thing.in_a_door else ()
    return tuple(door for door in DOORS if door == thing.area)


def _sides(record: VehicleRecord, thing: Thing) -> tuple[Side, ...]:
    each = () if isinstance(thing, Prep) else thing.each
    if thing.on_side and not _may_change_sides(record, thing):
        return (thing.on_side,)
    return each or _SIDES


def _may_change_sides(record: VehicleRecord, thing: Thing) -> bool:
    return bool(thing.on_side) and thing.mirrors != "no" and len(record.vehicle.drive_side) > 1
