"""In which regions of the car a thing is, and which airbags, belt parts and 48 V parts are there."""

from collections.abc import Iterable

from undertrim.record.model import Opening, Part, Run, Thing, VehicleRecord


def areas_of(record: VehicleRecord, thing: Thing) -> tuple[str, ...]:
    """The areas of a thing; where it does not say, those of the openings it is in front of, or of the parts it is behind.

    What moves over to an opening is in that opening's area as well.
    """
    own = [thing.area] if thing.area else _around(record, thing)
    goes_to = record.openings.get(thing.goes_to) if isinstance(thing, Part) else None
    return tuple(dict.fromkeys([*own, *([goes_to.area] if goes_to and goes_to.area else [])]))


def restraints_at(record: VehicleRecord, thing: Thing) -> tuple[str, ...]:
    """The airbags, belt parts and sensors that the record names in the areas of a thing."""
    return _restraints(record, areas_of(record, thing))


def restraints_along(record: VehicleRecord, run: Run) -> tuple[str, ...]:
    """The same along the way of a cable: where it passes, and in the areas of the parts that lie over it."""
    over = (record.parts[name] for name in run.trims if name in record.parts)
    names = [
        *(item.area for item in run.passes if item.area),
        *(name for part in over for name in areas_of(record, part)),
    ]
    return _restraints(record, names)


def _restraints(record: VehicleRecord, areas: Iterable[str]) -> tuple[str, ...]:
    facts = (record.areas.get(name) for name in areas)
    return tuple(dict.fromkeys(name for area in facts if area for name in area.restraint_parts))


def forty_eight_volt(record: VehicleRecord, thing: Thing, *, at_battery: bool = False) -> bool:
    """Whether a 48 V net is to be minded at a thing: it carries a plug of it, or stands in an area that has parts of it.

    `at_battery` asks for the 12 V battery, where any such net of the vehicle counts. Where the vehicle has one and no area says
    where, it may be anywhere.
    """
    if isinstance(thing, Part) and any(tether.circuit == "48-volt" for tether in thing.tethers.values()):
        return True
    said = {name: area.forty_eight_volt for name, area in record.areas.items() if area.forty_eight_volt}
    if record.vehicle.forty_eight_volt != "yes":
        return any(said.get(name) == "yes" for name in areas_of(record, thing))
    return (
        at_battery
        or "yes" not in said.values()
        or any(said.get(name) in ("yes", "unknown") for name in areas_of(record, thing))
    )


def _around(record: VehicleRecord, thing: Thing) -> list[str]:
    if isinstance(thing, Opening):
        return [record.parts[name].area for name in thing.behind if name in record.parts and record.parts[name].area]
    behind = (opening for opening in record.openings.values() if thing.id in opening.behind)
    return [opening.area for opening in behind if opening.area]
