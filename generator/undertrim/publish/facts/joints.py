"""The joints of a vehicle with every lead set in stock, as data: what stands in the table of each, and which receivers come with it."""

from collections.abc import Iterator
from typing import Any

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.stock import Gear
from undertrim.derive.visit.visit import Joined
from undertrim.derive.wiring import groups
from undertrim.derive.wiring.row import State
from undertrim.publish.facts import joint
from undertrim.record.model import Opening, VehicleRecord
from undertrim.record.model.kinds.receiver import LeadsGear, ReceiverGear
from undertrim.words import Items, Message, Value, message

Data = dict[str, Any]

SIGNS = {
    State.NEVER: "×",
    State.CONFLICT: "≠",
    State.INTERFACE: "+",
    State.LEAD_ALONE: "–",
    State.PIN_ALONE: "–",
    State.UNKNOWN: "?",
    State.OTHER_COLOUR: "≈",
    State.JOINED: "✓",
}
"""A sign beside the words of each state, one that the fonts of page and sheet both have."""


def joints(vehicle: Vehicle) -> Iterator[Data]:
    """One entry for each opening that takes a receiver and each lead set, with a table for each group of cars.

    A table is that of `publish.facts.joint`; `cars_words` names its cars, empty for all, and each row has its `sign` and `notes` of both ends.
    """
    for opening in vehicle.record.openings.values():
        for leads in vehicle.stock.of(LeadsGear) if opening.takes_over else ():
            yield _joint(vehicle, opening, leads)


def of(record: VehicleRecord, joined: Joined) -> Data:
    """The joint of one visit at one opening, in the same shape."""
    return {
        "opening": joined.opening.id,
        "opening_name": joined.opening.name,
        "leads": joined.leads.id,
        "name": joined.leads.name,
        "note": joined.leads.facts.note,
        "receivers": [],
        "tables": [_table(joint.table(record, group)) for group in joined.groups],
    }


def _joint(vehicle: Vehicle, opening: Opening, leads: Gear) -> Data:
    found = groups.joints(vehicle.record, vehicle.address, opening, leads, vehicle.stock)
    receivers = [item.name for item in vehicle.stock.of(ReceiverGear) if item.facts.lead_set == leads.id]
    return {
        "opening": opening.id,
        "opening_name": opening.name,
        "leads": leads.id,
        "name": leads.name,
        "note": leads.facts.note,
        "receivers": receivers,
        "tables": (_table(joint.table(vehicle.record, group)) for group in found),
    }


def _table(table: Data) -> Data:
    return {
        **table,
        "rows": [
            {**row, "sign": SIGNS[State(row["state"])], "notes": list(dict.fromkeys(_notes(row)))}
            for row in table["rows"]
        ],
        "counts_words": _counts(table),
    }


def _notes(row: Data) -> Iterator[Message]:
    """What is noted of the wires on both sides, without the last full stop: more may follow."""
    ends: list[tuple[Value, Data]] = [(message("joint/car"), point) for point in row["car"]]
    ends += [(one["gear_name"], one) for one in row["contacts"]]
    ends += [(message("joint/lead"), row["lead"])] if row["lead"] else []
    for whose, end in ends:
        if end["note"]:
            yield message("joint/noted", whose=whose, note=end["note"].rstrip("."))


def _counts(table: Data) -> Items:
    """How many rows each state has, exceptions first."""
    counts = table["counts"]
    found = [
        message("joint/rows", count=counts[state.value], state=words)
        for state, words in joint.STATES.items()
        if counts[state.value]
    ]
    return Items(tuple(found), "semicolon")
