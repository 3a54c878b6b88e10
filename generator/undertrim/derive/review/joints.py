"""Which rows of the joints of a vehicle with the lead sets in stock are others now; a row that differs alike with several lead sets is told once."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.review.change import JointChange
from undertrim.derive.review.visits import agrees
from undertrim.derive.wiring.groups import Group, joints
from undertrim.derive.wiring.leads import named
from undertrim.derive.wiring.row import Row
from undertrim.record.combinations import TooMany
from undertrim.record.model import Assignment
from undertrim.record.model.kinds.receiver import LeadsGear
from undertrim.words import ENGLISH, Items, Value, message, say


@dataclass(frozen=True, slots=True)
class _Met:
    """One row on both sides, as it is told, in some kinds of car."""

    cars: tuple[Assignment, ...]
    function: str
    before: Value
    after: Value


def differing(before: Vehicle, after: Vehicle, openings: Mapping[str, str]) -> Iterator[JointChange]:
    """The changed rows; `openings` are the ids of before by those of now."""
    was = {item.id: item for item in before.stock.of(LeadsGear)}
    found: dict[tuple[str, str, str, str], JointChange] = {}
    for now_id, was_id in openings.items():
        if not after.record.openings[now_id].takes_over or not before.record.openings[was_id].takes_over:
            continue
        for leads in after.stock.of(LeadsGear):
            if leads.id not in was:
                continue  # a new piece of gear is told as one
            for row in _met(_groups(before, was_id, was[leads.id]), _groups(after, now_id, leads)):
                key = (now_id, row.function, say(row.before, ENGLISH), say(row.after, ENGLISH))
                change = JointChange(now_id, row.function, row.cars, row.before, row.after, (leads.name,))
                same = found.get(key)
                found[key] = replace(same, leads=(*same.leads, leads.name)) if same else change
    yield from found.values()


def _groups(vehicle: Vehicle, opening: str, leads: Stocked[LeadsGear]) -> list[Group]:
    try:
        return joints(vehicle.record, vehicle.address, vehicle.record.openings[opening], leads, vehicle.stock)
    except TooMany:
        return []  # told where the steps are


def _met(before: Sequence[Group], after: Sequence[Group]) -> Iterator[_Met]:
    """The rows that differ, by what they are about, for each pair of groups that one kind of car can be in."""
    for was in before:
        for now in after:
            kinds = tuple(car for car in now.cars if not was.cars or any(agrees(one, car) for one in was.cars))
            if was.cars and now.cars and not kinds:
                continue
            old, new = (_rows(group.joint.rows) for group in (was, now))
            for name in dict.fromkeys((*new, *old)):
                one, other = old.get(name), new.get(name)
                if _key(one) != _key(other):
                    row = other or one
                    assert row
                    yield _Met(kinds, row.function, _told(one), _told(other))


def _rows(rows: Sequence[Row]) -> dict[str, Row]:
    """By lead, and a wire that no lead takes by what it does: its pin may be another one now."""
    found: dict[str, Row] = {}
    for row in rows:
        name, number = row.id if row.lead else row.function, 1
        while f"{name} {number}" in found:
            number += 1
        found[f"{name} {number}"] = row
    return found


def _key(row: Row | None) -> object:
    if row is None:
        return None
    car = tuple((point.by, point.address, point.colour) for point in row.car)
    lead = (row.lead.id, row.lead.colour, row.lead.fuse) if row.lead else None
    return row.state, car, lead, row.through


def _told(row: Row | None) -> Value:
    """`main/A5 GN to lead 3: joined`; empty where there is no such row."""
    if row is None:
        return ""
    ends = tuple(
        message("review/end", at=point.address, colour=point.colour) if point.address else point.by for point in row.car
    )
    car = Items(ends, "plus") if ends else message("review/no-wire")
    lead: Value = message("review/lead", lead=row.lead.id) if row.lead else message("review/no-lead")
    state = message(f"joint-states/{row.state.value}")
    if row.through:
        return message("review/row-through", car=car, lead=lead, through=row.through, state=state)
    return message("review/row", car=car, lead=lead, state=state)


def called(change: JointChange) -> Value:
    """The function that a row is about, in words."""
    return named(change.function)
