"""Usual cautions: which apply to which step, read from the facts of the record. They come before the step they guard."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache

from undertrim.derive.procedure import purposes, running
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import Assignment, Blank, Caution, Opening, Part, Prep, VehicleRecord
from undertrim.resources import table


@cache
def usual(trigger: str) -> Caution:
    """The usual caution for a trigger, from the data table."""
    entry = next(entry for entry in table("cautions")["caution"] if entry["on"] == trigger)
    return Caution(
        entry["signal"],
        entry["hazard"],
        entry["consequence"],
        entry["avoid"],
        state=tuple(entry.get("state", {}).items()),
    )


def add(step: Step, record: VehicleRecord, car: Assignment, *, restraint: bool) -> Step:
    """The step with its usual cautions ahead of its own; `restraint` says that the job touches restraint wiring."""
    found = tuple(usual(trigger) for trigger in dict.fromkeys(_triggers(step, record, car, restraint)))
    return replace(step, cautions=(*found, *step.cautions)) if found else step


def _triggers(step: Step, record: VehicleRecord, car: Assignment, restraint: bool) -> Iterator[str]:
    if restraint and ("ignition", "", "on") in running.turns(step):
        yield "power-on"
    if any(line.fate == "out" and line.fastener.drilled for line in step.fasteners):
        yield "drilling"
    thing = step.node.thing if step.node else None
    if step.wait and isinstance(thing, Prep) and thing.sets.get("battery") == "off":
        yield "wait-unknown" if step.wait.time is Blank.UNKNOWN else "wait-known"
    if isinstance(thing, Prep) and "battery" in thing.sets and step.kind in ("prepare", "restore"):
        yield "battery"
    if isinstance(thing, Prep) and thing.sensor == "yes" and step.kind in ("prepare", "restore"):
        yield "battery-sensor"
    if isinstance(thing, Prep) and step.kind in ("prepare", "restore") and thing.area and thing.held_by:
        yield from _of_area(thing.area, record)
    if isinstance(thing, Part) and step.kind in ("remove", "refit", "move"):
        yield from _of_part(thing, record, car)
    if isinstance(thing, Opening) and step.kind == "install":
        yield from _of_opening(thing, record)
        if any(line.tether.circuit == "restraint" for line in step.tethers):
            yield "restraint"


def _of_part(part: Part, record: VehicleRecord, car: Assignment) -> Iterator[str]:
    if any(t.circuit == "restraint" and t.when.holds(car) for t in part.tethers.values()):
        yield "restraint"
    if purposes.seat_loose(part, car):
        yield "seat-loose"
    yield from _voltage(record.high_voltage(part))


def _of_area(name: str, record: VehicleRecord) -> Iterator[str]:
    area = record.areas.get(name)
    if record.vehicle.high_voltage != "no":
        yield from _voltage((area.high_voltage if area else "") or "unknown")


def _of_opening(opening: Opening, record: VehicleRecord) -> Iterator[str]:
    if opening.crash_sensor == "yes":
        yield "door-sensor"
    if opening.kind == "speaker" and opening.in_a_door and opening.crash_sensor in (None, "unknown"):
        yield "door-sensor-unknown"
    yield from _voltage(record.high_voltage(opening))


def _voltage(here: str) -> Iterator[str]:
    if here in ("near", "inside"):
        yield "high-voltage-near"
    elif here == "unknown":
        yield "high-voltage-unknown"
