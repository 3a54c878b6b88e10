"""Which cars a record is about: names, years, and what tells them from their neighbours."""

from typing import Any

from undertrim.derive import cars
from undertrim.publish.facts import phases
from undertrim.record.implied import LISTS
from undertrim.record.model import VehicleRecord
from undertrim.words import Value, message

Data = dict[str, Any]


def identity(record: VehicleRecord) -> Data:
    """What the cars of a record are called, when they were built and how they are told."""
    facts = record.vehicle
    return {
        "make": facts.make,
        "model": facts.model,
        "phase": facts.phase,
        "title": f"{facts.make} {facts.model}",
        **_years(record),
        **_built(record),
        "tell": facts.tell,
        "bodies": list(facts.bodies),
        **{
            listed: _named(record, name, listed) for name, listed in LISTS.items() if name not in ("body", "drive-side")
        },
        "drive_sides": list(facts.drive_side),
        "also_called": list(facts.also_called),
        "high_voltage": facts.high_voltage,
        "forty_eight_volt": facts.forty_eight_volt,
        "follows": facts.follows,
        "follows_words": phases.before(record),
        "changed": phases.changed(record),
    }


def _named(record: VehicleRecord, name: str, listed: str) -> list[Value]:
    """The gearboxes, engines or trim levels as people read them."""
    return [cars.answer(name, choice).label for choice in getattr(record.vehicle, listed)]


def _years(record: VehicleRecord) -> Data:
    """The model years; those in which the cars were built where no others are recorded."""
    facts = record.vehicle
    years = facts.model_years
    first, last = (years.first, years.last) if years else (facts.built.from_.year, facts.built.to.year)
    span = f"{first}–{last}" if first != last else str(first)
    return {"years": span, "first_year": first, "last_year": last}


def _built(record: VehicleRecord) -> Data:
    first, end = str(record.vehicle.built.from_), str(record.vehicle.built.to)
    return {
        "built_from": first,
        "built_to": end,
        "built": message("vehicle/built", first=first, end=end),
        "built_words": message("vehicle/built-alone", first=first, end=end),
    }
