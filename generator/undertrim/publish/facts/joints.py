"""The joints of a vehicle with every lead set in stock, as data: what stands in the table of each, and which receivers come with it."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.stock import Gear
from undertrim.derive.visit.visit import Joined
from undertrim.derive.wiring import groups
from undertrim.derive.wiring.row import State
from undertrim.publish.encoding import Spread
from undertrim.publish.facts import joint
from undertrim.publish.facts.shown_joints import JointHead, PlainRow, PlainTable, ShownContacts
from undertrim.record.model import Opening, VehicleRecord
from undertrim.record.model.kinds.receiver import LeadsGear, ReceiverGear
from undertrim.words import Items, Message, Value, message

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

_CAR, _LEAD = message("joint/car"), message("joint/lead")


@dataclass(frozen=True, slots=True)
class JointRow:
    """A row with the sign of its state, and the notes of both its ends."""

    row: Spread[PlainRow]
    sign: str
    notes: Sequence[Message]


@dataclass(frozen=True, slots=True)
class JointTable:
    """A table as page and sheet show it; `counts_words` says how many rows each state has, exceptions first."""

    head: Spread[JointHead]
    rows: Sequence[JointRow]
    contacts: ShownContacts
    notes: Sequence[Value]
    counts_words: Items


@dataclass(frozen=True, slots=True)
class ShownJoint:
    """An opening that takes a receiver with a lead set, the receivers that come with it, and a table for each group of cars."""

    opening: str
    opening_name: str
    leads: str
    name: str
    note: str
    receivers: Sequence[str]
    tables: Iterable[JointTable]


def joints(vehicle: Vehicle) -> Iterator[ShownJoint]:
    """One entry for each opening that takes a receiver and each lead set, with a table for each group of cars."""
    for opening in vehicle.record.openings.values():
        for leads in vehicle.stock.of(LeadsGear) if opening.takes_over else ():
            yield _joint(vehicle, opening, leads)


def of(record: VehicleRecord, joined: Joined) -> ShownJoint:
    """The joint of one visit at one opening, in the same shape."""
    return ShownJoint(
        opening=joined.opening.id,
        opening_name=joined.opening.name,
        leads=joined.leads.id,
        name=joined.leads.name,
        note=joined.leads.facts.note,
        receivers=(),
        tables=[_table(joint.table(record, group)) for group in joined.groups],
    )


def _joint(vehicle: Vehicle, opening: Opening, leads: Gear) -> ShownJoint:
    found = groups.joints(vehicle.record, vehicle.address, opening, leads, vehicle.stock)
    receivers = [item.name for item in vehicle.stock.of(ReceiverGear) if item.facts.lead_set == leads.id]
    return ShownJoint(
        opening=opening.id,
        opening_name=opening.name,
        leads=leads.id,
        name=leads.name,
        note=leads.facts.note,
        receivers=receivers,
        tables=[_table(joint.table(vehicle.record, group)) for group in found],
    )


def _table(table: PlainTable) -> JointTable:
    rows = [JointRow(row, SIGNS[State(row.state)], tuple(dict.fromkeys(_notes(row)))) for row in table.rows]
    return JointTable(table.head, rows, table.contacts, table.notes, _counts(table.head.counts))


def _notes(row: PlainRow) -> Iterator[Message]:
    """What is noted of the wires on both sides, without the last full stop: more may follow."""
    noted: list[tuple[Value, str]] = [(_CAR, point.note) for point in row.car if point.note]
    noted += [(one.gear_name, one.note) for one in row.contacts if one.note]
    noted += [(_LEAD, row.lead.note)] if row.lead and row.lead.note else []
    for whose, note in noted:
        yield message("joint/noted", whose=whose, note=note.rstrip("."))


def _counts(counts: Mapping[str, int]) -> Items:
    """How many rows each state has, exceptions first."""
    found = [
        message("joint/rows", count=counts[state.value], state=words)
        for state, words in joint.STATES.items()
        if counts[state.value]
    ]
    return Items(tuple(found), "semicolon")
