"""Joint tables as data: what the page, the PDF and the JSON are made of."""

from collections.abc import Sequence

from undertrim.derive.fit.kinds.receiver.sound import LEVELS
from undertrim.derive.fit.stock import Gear
from undertrim.derive.wiring.contacts import Comparison, Contact
from undertrim.derive.wiring.groups import Group
from undertrim.derive.wiring.leads import is_sound, level, named
from undertrim.derive.wiring.needs import Point
from undertrim.derive.wiring.row import Row, State
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts import names, words
from undertrim.publish.facts.pin_colours import colour
from undertrim.publish.facts.shown_joints import (
    Differing,
    ExtraContact,
    JointGear,
    JointHead,
    JointTables,
    PlainRow,
    PlainTable,
    ShownContact,
    ShownContacts,
    ShownLead,
    ShownPoint,
    ShownReason,
)
from undertrim.publish.facts.wiring import supply
from undertrim.record.gear import Lead
from undertrim.record.model import VehicleRecord
from undertrim.words import Value, message

STATES = {state: message(f"joint-states/{state.value}") for state in State}
"""The states in words, exceptions first."""

_BY: dict[str, Value] = {
    "pin": "",
    "wire": message("joint/on-wire"),
    "data": message("joint/by-data"),
    "absent": message("joint/absent"),
    "unknown": message("joint/unknown"),
}


def joints(record: VehicleRecord, address: str, receiver: Gear, groups: Sequence[Group]) -> Published:
    """The tables of one receiver or lead set in one opening, one for each group of cars, as plain data."""
    facts = record.vehicle
    made = JointTables(
        vehicle=address,
        title=f"{facts.make} {facts.model}",
        demo=record.demo == "yes",
        gear=receiver.id,
        gear_name=receiver.name,
        tables=[table(record, group) for group in groups],
    )
    return dict(said(made))


def table(record: VehicleRecord, group: Group) -> PlainTable:
    """One table."""
    joint = group.joint
    head = JointHead(
        cars=[dict(car) for car in group.cars],
        cars_words=names.kinds_of_car(record, group.cars),
        harness=_gear(joint.adapter) if joint.adapter else None,
        between=[_gear(item) for item in joint.interfaces],
        sound=joint.output,
        sound_words=LEVELS.get(joint.output, words.UNKNOWN),
        counts={state.value: sum(row.state is state for row in joint.rows) for state in State},
    )
    return PlainTable(head, [_row(row) for row in joint.rows], _contacts(joint.contacts), joint.notes)


def _gear(item: Gear) -> JointGear:
    return JointGear(item.id, item.name, item.facts.kind, item.facts.note)


def _row(row: Row) -> PlainRow:
    return PlainRow(
        id=row.id,
        function=row.function,
        function_words=named(row.function),
        state=row.state.value,
        state_words=STATES[row.state],
        car=[point(item) for item in row.car],
        contacts=[_contact(item) for item in row.contacts],
        lead=_lead(row.lead) if row.lead else None,
        through=row.through,
        reasons=[ShownReason(reason.name, reason.words) for reason in row.reasons],
        words=row.words,
        do=row.do,
    )


def point(item: Point) -> ShownPoint:
    """Where the car has a function: `address` is plug/pin, empty for what is on no recorded pin; `words` says how it is had there."""
    return ShownPoint(
        function=item.function,
        function_words=named(item.function),
        by=item.by,
        words=_BY[item.by],
        address=item.address,
        plug=item.plug,
        pin=item.pin,
        colour=colour(item.colour, item.scheme),
        behaves=item.behaves,
        supply=supply(item.supply),
        draws=words.quantity(item.draws),
        disputed=bool(item.disputed),
        note=item.note,
    )


def _contact(item: Contact) -> ShownContact:
    return ShownContact(
        gear=item.gear.id,
        gear_name=item.gear.name,
        address=item.address,
        plug=item.plug,
        pin=item.pin,
        made_for=item.made_for,
        function=item.lead.function,
        function_words=named(item.lead.function),
        colour=colour(item.lead.colour),
        note=item.lead.note,
    )


def _lead(lead: Lead) -> ShownLead:
    return ShownLead(
        id=lead.id,
        colour=colour(lead.colour),
        level=level(lead) if is_sound(lead.function) else "",
        behaves=lead.behaves,
        supply=supply(lead.supply),
        limit=words.quantity(lead.limit),
        fuse=words.quantity(lead.fuse),
        gauge=lead.gauge,
        note=lead.note,
    )


def _contacts(found: Comparison) -> ShownContacts:
    return ShownContacts(
        extra=[ExtraContact(_contact(extra.contact), extra.words) for extra in found.extra],
        missing=[point(item) for item in found.missing],
        differing=[Differing(_contact(contact), point(met)) for contact, met in found.differing],
    )
