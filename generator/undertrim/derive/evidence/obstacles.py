"""What stands in the way of calling a record verified: safety facts that are unknown, disputes that are open, lists nobody looked into."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from undertrim.derive import doors
from undertrim.derive.evidence import taken
from undertrim.derive.evidence.conflicts import disputes
from undertrim.record.model import Blank, Fastener, Part, Prep, Restraint, VehicleRecord
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity
from undertrim.words import Message, message, word

CARRIES = ("seat", "belt", "wheel")


@dataclass(frozen=True, slots=True)
class Obstacle:
    """One thing that is in the way: where in the record, and what; the way out of `said` tells where the answer is to be found.

    `about` are ids that it rests on besides those that lead there. The place may be one that the record does not have yet; what is around it then stands for it.
    """

    pointer: Pointer
    said: Message
    about: tuple[str, ...] = ()


def obstacles(record: VehicleRecord) -> tuple[Obstacle, ...]:
    """Everything in the way, the restraint system first."""
    found = (
        *_restraint(record),
        *_waits(record),
        *_sensors(record),
        *_voltage(record),
        *_torques(record),
        *_conflicts(record),
        *_unseen(record),
    )
    return (*found, *_lists(record))


def in_the_way_of(record: VehicleRecord, blocks: Collection[str], *, taken_seen: bool = False) -> tuple[Obstacle, ...]:
    """What is in the way of calling these blocks of facts verified; `taken_seen` where what other records say was looked at."""
    return tuple(
        item
        for item in obstacles(record)
        if _concerns(record, item, blocks) and not (taken_seen and item.said.code == "sharing/obstacle")
    )


def _concerns(record: VehicleRecord, item: Obstacle, blocks: Collection[str]) -> bool:
    if item.said.code == "sharing/obstacle":
        return any("/".join(map(str, place)) in blocks for places in taken.things(record).values() for place in places)
    steps = item.about if item.pointer[0] == "conflicts" else item.pointer
    return str(steps[0]) in blocks or "/".join(map(str, steps[:2])) in blocks or item.pointer[0] == "restraint"


def _restraint(record: VehicleRecord) -> Iterator[Obstacle]:
    facts = record.restraint
    if facts is None:
        yield Obstacle(_restrained(record), message("obstacles/no-restraint-block"))
    elif facts.fitted != "no":
        yield from _of_restraint(facts)


def _restrained(record: VehicleRecord) -> Pointer:
    """What shows that there are restraints, or that the battery goes off, where the record has no word on them."""
    for part in record.parts.values():
        for tether in part.tethers.values():
            if tether.circuit == "restraint":
                return ("parts", part.id, "tethers", tether.id)
    near = (("areas", area.id) for area in record.areas.values() if area.restraint_parts)
    off = (("preps", prep.id) for prep in record.preps.values() if prep.sets.get("battery") == "off")
    return next(near, None) or next(off, ("openings",))


def _of_restraint(facts: Restraint) -> Iterator[Obstacle]:
    if not isinstance(facts.wait, Quantity):
        unknown = facts.wait is Blank.UNKNOWN
        said = message("obstacles/wait-unknown") if unknown else message("obstacles/wait-none")
        yield Obstacle(("restraint", "wait"), said)
    if facts.memory_keeper == "unknown":
        yield Obstacle(("restraint", "memory_keeper"), message("obstacles/memory-keeper"))
    if facts.read_faults_first == "unknown":
        yield Obstacle(("restraint", "read_faults_first"), message("obstacles/read-faults-first"))


def _waits(record: VehicleRecord) -> Iterator[Obstacle]:
    for prep in record.preps.values():
        if prep.wait and not isinstance(prep.wait.time, Quantity):
            yield Obstacle(("preps", prep.id, "wait", "time"), message("obstacles/wait-after", prep=prep.name))


def _sensors(record: VehicleRecord) -> Iterator[Obstacle]:
    for opening in record.openings.values():
        if opening.crash_sensor in (None, "unknown") and doors.sensor(record, opening) == "unknown":
            said = message("obstacles/crash-sensor", opening=opening.name)
            yield Obstacle(("openings", opening.id, "crash_sensor"), said)


def _voltage(record: VehicleRecord) -> Iterator[Obstacle]:
    if record.vehicle.forty_eight_volt == "unknown":
        yield Obstacle(("vehicle", "forty_eight_volt"), message("obstacles/48-volt"))
    if record.vehicle.high_voltage == "unknown":
        yield Obstacle(("vehicle", "high_voltage"), message("obstacles/high-voltage"))
        return
    for section, things in (("parts", record.parts), ("openings", record.openings)):
        for thing in things.values():
            if record.high_voltage(thing) == "unknown":
                yield Obstacle((section, thing.id, "high_voltage"), message("obstacles/near-voltage", thing=thing.name))


def _torques(record: VehicleRecord) -> Iterator[Obstacle]:
    for section, things in (("parts", record.parts), ("preps", record.preps)):
        for thing in things.values():
            for number, fastener in _carrying(thing):
                yield Obstacle((section, thing.id, "held_by", number, "torque"), _torque(fastener, thing.name))


def _torque(fastener: Fastener, thing: str) -> Message:
    role, kind = message(f"roles/{fastener.role}"), word("fasteners", fastener.kind, "label")
    return message("obstacles/torque", role=role, kind=kind, what=fastener.what, thing=thing)


def _carrying(thing: Part | Prep) -> Iterator[tuple[int, Fastener]]:
    """Fasteners that carry people and have no torque; one that is left alone is not tightened."""
    for number, fastener in enumerate(thing.held_by):
        turned = fastener.turned and fastener.leave == "no"
        if turned and fastener.role in CARRIES and not isinstance(fastener.torque, Quantity):
            yield number, fastener


def _conflicts(record: VehicleRecord) -> Iterator[Obstacle]:
    for dispute in disputes(record):
        if not dispute.settled and not dispute.agreed:
            name = dispute.conflict.id
            said = message("obstacles/conflict", conflict=name, about=dispute.conflict.about)
            yield Obstacle(("conflicts", name), said, tuple(dispute.conflict.about.split("/")))


def _unseen(record: VehicleRecord) -> Iterator[Obstacle]:
    """What other records say of their cars, until somebody has looked at it on this one."""
    for car, places in taken.things(record).items() if not taken.is_seen(record) else ():
        said = message("sharing/obstacle", count=len(places), car=car.said)
        asked = next(spot for spot in record.taken if spot[: len(places[0])] == places[0])  # it stands in 'shares'
        yield Obstacle(asked, said)
    if found := taken.usual(record):
        yield Obstacle(found[0], message("usual/obstacle", count=len(found)))


def _lists(record: VehicleRecord) -> Iterator[Obstacle]:
    facts = record.after_battery
    checked = facts.checked_none if facts else ()
    listed = {"before": facts.before if facts else {}, "after": facts.after if facts else {}}
    for name, todos in listed.items():
        if not todos and name not in checked:
            before = name == "before"
            said = message("obstacles/before-battery") if before else message("obstacles/after-battery")
            yield Obstacle(("after_battery",), said)
