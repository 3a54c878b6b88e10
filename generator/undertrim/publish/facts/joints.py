"""The joints of a vehicle with every lead set in stock, as data: what stands in the table of each, and which receivers come with it."""

from typing import Any

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.stock import Gear
from undertrim.derive.wiring import groups
from undertrim.publish.facts import joint
from undertrim.publish.facts.fit import kinds_of_car
from undertrim.record.model import Opening

Data = dict[str, Any]


def joints(vehicle: Vehicle) -> list[Data]:
    """One entry for each opening that takes a receiver and each lead set, with a table for each group of cars."""
    return [
        _joint(vehicle, opening, leads)
        for opening in vehicle.record.openings.values()
        if opening.kind == "receiver"
        for leads in vehicle.stock.of("leads")
    ]


def _joint(vehicle: Vehicle, opening: Opening, leads: Gear) -> Data:
    found = groups.joints(vehicle.record, vehicle.address, opening, leads, vehicle.stock)
    made = joint.joints(vehicle.record, vehicle.address, leads, found)
    receivers = [item.name for item in vehicle.stock.of("receiver") if item.facts.lead_set == leads.id]
    return {
        "opening": opening.id,
        "opening_name": opening.name,
        "leads": leads.id,
        "name": leads.name,
        "note": leads.facts.note,
        "receivers": receivers,
        "tables": [
            {**table, "cars_words": kinds_of_car(vehicle.record, table["cars"]), "counts_words": _counts(table)}
            for table in made["tables"]
        ],
    }


def _counts(table: Data) -> str:
    """How many rows each state has, in words, exceptions first."""
    return ", ".join(
        f"{count} {joint.STATES[state]}" for state in joint.STATES if (count := table["counts"][state.value])
    )
