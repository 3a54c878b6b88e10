"""What stands in the way of calling a record verified: safety facts that are unknown, disputes that are open, lists nobody looked into."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive import doors
from undertrim.derive.evidence.conflicts import disputes
from undertrim.record.model import TURNED, Blank, Fastener, Part, Prep, Restraint, VehicleRecord
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity

MAKER = "look it up in the maker's information"
CARRIES = ("seat", "belt", "wheel")


@dataclass(frozen=True, slots=True)
class Obstacle:
    """One thing that is in the way: where in the record, what in words, and where the answer is to be found.

    `about` are ids that it rests on besides those that lead there. The place may be one that the record does not have yet; what is around it then stands for it.
    """

    pointer: Pointer
    what: str
    where: str
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
    )
    return (*found, *_lists(record))


def _restraint(record: VehicleRecord) -> Iterator[Obstacle]:
    facts = record.restraint
    if facts is None:
        yield Obstacle(
            _restrained(record),
            "there is no 'restraint' block",
            f"{MAKER}, or write 'fitted: no' in it if the car has none",
        )
    elif facts.fitted != "no":
        yield from _of_restraint(facts)


def _restrained(record: VehicleRecord) -> Pointer:
    """What shows that there are restraints, or that the battery goes off, where the record has no word on them."""
    for part in record.parts.values():
        for tether in part.tethers.values():
            if tether.circuit == "restraint":
                return ("parts", part.id, "tethers", tether.id)
    near = (("areas", area.id) for area in record.areas.values() if area.restraints)
    off = (("preps", prep.id) for prep in record.preps.values() if prep.sets.get("battery") == "off")
    return next(near, None) or next(off, ("openings",))


def _of_restraint(facts: Restraint) -> Iterator[Obstacle]:
    if not isinstance(facts.wait, Quantity):
        said = "unknown" if facts.wait is Blank.UNKNOWN else "'none' though a restraint system may be fitted"
        yield Obstacle(("restraint", "wait"), f"the restraint wait is {said}", MAKER)
    if facts.memory_keeper == "unknown":
        yield Obstacle(("restraint", "memory_keeper"), "it is unknown whether a memory keeper is allowed", MAKER)
    if facts.read_faults_first == "unknown":
        what = "it is unknown whether restraint faults must be read first"
        yield Obstacle(("restraint", "read_faults_first"), what, MAKER)


def _waits(record: VehicleRecord) -> Iterator[Obstacle]:
    for prep in record.preps.values():
        if prep.wait and not isinstance(prep.wait.time, Quantity):
            yield Obstacle(("preps", prep.id, "wait", "time"), f"the wait after '{prep.name}' is unknown", MAKER)


def _sensors(record: VehicleRecord) -> Iterator[Obstacle]:
    for opening in record.openings.values():
        if opening.crash_sensor in (None, "unknown") and doors.sensor(record, opening) == "unknown":
            what = f"it is unknown whether there is a crash pressure sensor at '{opening.name}'"
            yield Obstacle(("openings", opening.id, "crash_sensor"), what, MAKER)


def _voltage(record: VehicleRecord) -> Iterator[Obstacle]:
    if record.vehicle.forty_eight_volt == "unknown":
        what = "it is unknown whether the vehicle has a 48 V net"
        yield Obstacle(("vehicle", "forty_eight_volt"), what, MAKER)
    if record.vehicle.high_voltage == "unknown":
        what = "it is unknown whether the vehicle has a high-voltage system"
        yield Obstacle(("vehicle", "high_voltage"), what, MAKER)
        return
    for section, things in (("parts", record.parts), ("openings", record.openings)):
        for thing in things.values():
            if record.high_voltage(thing) == "unknown":
                what = f"it is unknown how close the high voltage comes to '{thing.name}'"
                yield Obstacle(
                    (section, thing.id, "high_voltage"), what, "look up the cable runs in the maker's information"
                )


def _torques(record: VehicleRecord) -> Iterator[Obstacle]:
    for section, things in (("parts", record.parts), ("preps", record.preps)):
        for thing in things.values():
            for number, fastener in _carrying(thing):
                what = f"the torque of the {fastener.role} {fastener.kind} '{fastener.what}' at '{thing.name}' is unknown"
                yield Obstacle((section, thing.id, "held_by", number, "torque"), what, MAKER)


def _carrying(thing: Part | Prep) -> Iterator[tuple[int, Fastener]]:
    """Fasteners that carry people and have no torque; one that is left alone is not tightened."""
    for number, fastener in enumerate(thing.held_by):
        turned = fastener.kind in TURNED and fastener.leave == "no"
        if turned and fastener.role in CARRIES and not isinstance(fastener.torque, Quantity):
            yield number, fastener


def _conflicts(record: VehicleRecord) -> Iterator[Obstacle]:
    for dispute in disputes(record):
        if not dispute.settled and not dispute.agreed:
            name = dispute.conflict.id
            what = f"the conflict '{name}' about '{dispute.conflict.about}' is not settled"
            hint = "measure at a car, add the claim and name it in 'settled_by'"
            yield Obstacle(("conflicts", name), what, hint, tuple(dispute.conflict.about.split("/")))


def _lists(record: VehicleRecord) -> Iterator[Obstacle]:
    facts = record.after_battery
    checked = facts.checked_none if facts else ()
    listed = {"before": facts.before if facts else {}, "after": facts.after if facts else {}}
    for name, todos in listed.items():
        if not todos and name not in checked:
            what = f"nobody has said what is to be done {name} the battery is {'off' if name == 'before' else 'back'}"
            yield Obstacle(
                ("after_battery",), what, f"list it, or write 'checked_none: [{name}]' once it was looked into"
            )
