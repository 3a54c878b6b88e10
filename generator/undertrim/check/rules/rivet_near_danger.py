"""No rivet is drilled out beside restraints or high voltage.

## What it finds

A rivet that comes out of a part or preparation whose area holds `restraints`, or that has high voltage near it, in it, or
nobody knows how near. In doors with a crash pressure sensor `cutting-near-sensor` finds it.

## Why it matters

A drill breaks through. Behind the sheet lie the leads of a bag, a belt tensioner, a curtain bag itself, or an orange cable;
a bit that meets one of them can kill.

## Bad

    areas:
      pillar: {restraints: [curtain bag]}
    parts:
      pillar-trim:
        name: Pillar trim
        area: pillar
        release: pull
        held_by:
          - {rivet: blind, count: 2}    # here
          - {rivet: blind, count: 1, leave: yes, note: Holds the bracket of the bag.}

error: 'rivet: blind' is drilled out of 'pillar-trim' beside curtain bag (leave the part where it is, or look up how the maker has it done)

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: yes
    areas:
      boot: {high_voltage: near}
    parts:
      tray:
        name: Tray
        area: boot
        release: lift
        held_by: [{rivet: blind, count: 2}]    # here
      seat-box:
        name: Seat box
        release: lift
        held_by: [{rivet: solid, count: 2}]    # here
      dash-foot:
        name: Dash foot
        release: lift
        high_voltage: clear
        held_by: [{rivet: blind, count: 2}]

error: 'rivet: blind' is drilled out of 'tray', where high voltage is near (leave the part where it is: that is work for trained persons)
error: 'rivet: solid' is drilled out of 'seat-box', where high voltage is unknown (look it up: until 'high_voltage' says clear, nothing is drilled here)

## Good

    areas:
      pillar: {restraints: [curtain bag]}
    parts:
      shelf:
        name: Shelf
        area: boot
        release: lift
        held_by: [{rivet: blind, count: 2, diameter: 4.8 mm}]
"""

from collections.abc import Iterator

from undertrim.check.fasteners import Held, drilled
from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Part, VehicleRecord
from undertrim.record.problem import Level

LEVEL = Level.ERROR

_TRAINED = "leave the part where it is: that is work for trained persons"
_VOLTAGE = {
    "inside": _TRAINED,
    "near": _TRAINED,
    "unknown": "look it up: until 'high_voltage' says clear, nothing is drilled here",
}


def check(subject: Subject) -> Iterator[Finding]:
    """Every rivet beside something that a drill must not meet."""
    for item in drilled(subject):
        area = subject.record.areas.get(item.thing.area)
        doing = f"{item.shown} is drilled out of '{item.thing.id}'"
        if area and area.restraints:
            hint = "leave the part where it is, or look up how the maker has it done"
            yield Finding(item.pointer, f"{doing} beside {' and '.join(area.restraints)}", hint)
        voltage = _voltage(subject.record, item)
        if voltage in _VOLTAGE:
            yield Finding(item.pointer, f"{doing}, where high voltage is {voltage}", _VOLTAGE[voltage])


def _voltage(record: VehicleRecord, item: Held) -> str:
    if isinstance(item.thing, Part):
        return record.high_voltage(item.thing)
    area = record.areas.get(item.thing.area)
    return "clear" if record.vehicle.high_voltage == "no" else (area.high_voltage if area else "") or "unknown"
