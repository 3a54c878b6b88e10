"""Usual cautions: which apply to which step, read from the facts of the record. They come before the step they guard."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache

from undertrim.derive import doors
from undertrim.derive.areas import forty_eight_volt, restraints_along, restraints_at
from undertrim.derive.procedure import purposes, running
from undertrim.derive.procedure.steps import Step
from undertrim.derive.procedure.usual_caution import UsualCaution, usual_caution
from undertrim.record.model import Assignment, Blank, Opening, Part, Prep, VehicleRecord
from undertrim.resources import table
from undertrim.words import Items, message

_HANDS = ("remove", "refit", "move", "install")
_HARMLESS = ("todo", "join", "test", "try", "measure")
"""Kinds of step that no usual caution guards."""

_SENSOR = {"yes": "door-sensor", "unknown": "door-sensor-unknown"}
_MODULE = {"yes": "restraint-module", "unknown": "restraint-module-unknown"}


@cache
def usual(trigger: str) -> UsualCaution:
    """The usual caution for a trigger, from the data table."""
    return usual_caution(next(name for name, entry in table("cautions")["caution"].items() if entry["on"] == trigger))


def add(step: Step, record: VehicleRecord, car: Assignment, *, restraint: bool) -> Step:
    """The step with its usual cautions ahead of its own; `restraint` says that the job touches restraint wiring."""
    if step.kind in _HARMLESS:
        return step
    triggers = dict.fromkeys(_triggers(step, record, car, restraint))
    found = (*(usual(trigger) for trigger in triggers), *_near(step, record))
    return replace(step, cautions=(*found, *step.cautions)) if found else step


def _triggers(step: Step, record: VehicleRecord, car: Assignment, restraint: bool) -> Iterator[str]:
    if restraint and ("ignition", "", "on") in running.turns(step):
        yield "power-on"
    if any(line.fate == "out" and line.fastener.cuts for line in step.fasteners):
        yield "drilling"
    thing = step.node.worked if step.node else None
    if step.wait and isinstance(thing, Prep) and thing.sets.get("battery") == "off":
        yield "wait-unknown" if step.wait.time is Blank.UNKNOWN else "wait-known"
    if _at_battery(step):
        yield "battery"
    if isinstance(thing, Prep) and thing.sensor == "yes" and step.kind in ("prepare", "restore"):
        yield "battery-sensor"
    if isinstance(thing, Prep) and step.kind in ("prepare", "restore") and thing.area and thing.held_by:
        yield from _voltage(record.high_voltage(thing))
    if thing and (_works(step) or _at_battery(step)) and forty_eight_volt(record, thing, at_battery=_at_battery(step)):
        yield "forty-eight-volt"
    if isinstance(thing, Part) and step.kind in ("remove", "refit", "move"):
        yield from _of_part(thing, record, car)
    if isinstance(thing, Opening) and step.kind == "install":
        yield from _of_opening(thing, record)
        if any(line.tether.circuit == "restraint" for line in step.tethers):
            yield "restraint"


def _near(step: Step, record: VehicleRecord) -> Iterator[UsualCaution]:
    """What airbags and belt parts are beside the hands, in every step that takes off, fits or puts back something there, or lays cable past them."""
    thing = step.node.worked if step.node else None
    run = record.runs.get(step.along)
    at, along = (
        restraints_at(record, thing) if thing and _works(step) else (),
        restraints_along(record, run) if run else (),
    )
    if named := tuple(dict.fromkeys((*at, *along))):
        yield replace(usual("near-restraint"), hazard=message("cautions/beside", named=Items(named, "semicolon")))


def _works(step: Step) -> bool:
    """Whether hands take off, fit or put back something in this step."""
    held = step.node and isinstance(step.node.thing, Prep) and step.node.thing.held_by
    return step.kind in _HANDS or (step.kind in ("prepare", "restore") and bool(held))


def _at_battery(step: Step) -> bool:
    """Whether the 12 V battery is taken off or put back in this step."""
    thing = step.node.worked if step.node else None
    return isinstance(thing, Prep) and "battery" in thing.sets and step.kind in ("prepare", "restore")


def _of_part(part: Part, record: VehicleRecord, car: Assignment) -> Iterator[str]:
    circuits = {tether.circuit for tether in part.tethers.values() if tether.when.holds(car)}
    if "restraint" in circuits:
        yield "restraint"
    if purposes.seat_loose(part, car):
        yield "seat-loose"
    yield from _voltage("near" if "high-voltage" in circuits else record.high_voltage(part))


def _of_opening(opening: Opening, record: VehicleRecord) -> Iterator[str]:
    if trigger := _SENSOR.get(doors.sensor(record, opening)):
        yield trigger
    if trigger := _MODULE.get(opening.restraint_near):
        yield trigger
    yield from _voltage(record.high_voltage(opening))


def _voltage(here: str) -> Iterator[str]:
    if here in ("near", "inside"):
        yield "high-voltage-near"
    elif here == "unknown":
        yield "high-voltage-unknown"
