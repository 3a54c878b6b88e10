"""Doors that may hold a crash pressure sensor: what a record says of each, and what stands in them."""

from collections.abc import Iterator

from undertrim.record.model import Known, Opening, Part, Prep, VehicleRecord

DOORS = ("front-door", "rear-door")

_WORST = ("yes", "unknown", "no")


def sensors(record: VehicleRecord) -> dict[str, Known]:
    """For each door in which an opening is: whether it holds a sensor, the worst that any opening says; 'unknown' where none does."""
    said: dict[str, list[Known]] = {}
    for opening in record.openings.values():
        for door in doors_of(record, opening):
            said.setdefault(door, []).extend([opening.crash_sensor] if opening.crash_sensor else [])
    return {door: min(answers, key=_WORST.index, default="unknown") for door, answers in said.items()}


def sensor_at(record: VehicleRecord, opening: Opening) -> Known:
    """The same at one opening; 'no' for one that is in no door and says nothing."""
    answers = [said for door, said in sensors(record).items() if door in doors_of(record, opening)]
    return min([*answers, opening.crash_sensor or "no"], key=_WORST.index)


def doors_of(record: VehicleRecord, opening: Opening) -> tuple[str, ...]:
    """The doors an opening is in: its area; without one the areas of the parts it is behind, or what its id says."""
    if opening.area:
        return (opening.area,) if opening.area in DOORS else ()
    behind = {record.parts[name].area for name in opening.behind if name in record.parts}
    if known := tuple(door for door in DOORS if door in behind):
        return known
    if not opening.in_a_door:
        return ()
    return tuple(door for door in DOORS if door in opening.id) or DOORS


def inside(record: VehicleRecord, door: str) -> Iterator[Part | Prep | Opening]:
    """The preparations, parts and openings in a door; a part without an area is where the openings behind it are."""
    yield from (prep for prep in record.preps.values() if prep.area == door)
    here = [opening for opening in record.openings.values() if door in doors_of(record, opening)]
    behind = {name for opening in here for name in opening.behind}
    yield from (part for part in record.parts.values() if part.area == door or (not part.area and part.id in behind))
    yield from here
