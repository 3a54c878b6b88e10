"""High voltage is near only in a vehicle that has some.

## What it finds

A part, opening or area to which high voltage comes `near` or which is `inside` it, or a tether with
`circuit: high-voltage`, while `vehicle.high_voltage` says `no`; the same for a 48 V net and `forty_eight_volt`.

## Why it matters

One of the two is wrong. Where the vehicle says `no`, nothing else is looked at: no caution comes, and nothing stops the
work where a cable is.

## Bad

    areas:
      floor: {high_voltage: near}    # here
    parts:
      carpet:
        name: Carpet
        release: lift
        tethers:
          feed: {name: Feed, kind: plug, circuit: high-voltage, then: leave}    # here
      tunnel:
        name: Tunnel
        release: lift
        high_voltage: inside    # here

error: 'high-voltage' here, and the vehicle has no high voltage (write 'high_voltage: yes' for the vehicle, or mend this)
error: 'inside' here, and the vehicle has no high voltage (write 'high_voltage: yes' for the vehicle, or mend this)
error: 'near' here, and the vehicle has no high voltage (write 'high_voltage: yes' for the vehicle, or mend this)

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: yes
    areas:
      floor: {high_voltage: near}
    parts:
      carpet:
        name: Carpet
        area: floor
        release: lift
        tethers:
          feed: {name: Feed, kind: plug, circuit: high-voltage, then: leave}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import message

Said = tuple[Pointer, str]

LEVEL = Level.ERROR

_HIGH = ("near", "inside", "high-voltage")
_48_VOLT = ("yes", "48-volt")


def check(subject: Subject) -> Iterator[Finding]:
    """Every word of high voltage, or of a 48 V net, in a vehicle without any."""
    vehicle = subject.record.vehicle
    if vehicle.high_voltage == "no":
        for pointer, word in _high(subject.record):
            if word in _HIGH:
                yield Finding(pointer, message("rules/voltage-contradicted/no-high-voltage", word=word))
    if vehicle.forty_eight_volt == "no":
        for pointer, word in _forty_eight(subject.record):
            if word in _48_VOLT:
                yield Finding(pointer, message("rules/voltage-contradicted/no-48-volt", word=word))


def _high(record: VehicleRecord) -> Iterator[Said]:
    for area in record.areas.values():
        yield ("areas", area.id, "high_voltage"), area.high_voltage
    for part in record.parts.values():
        yield ("parts", part.id, "high_voltage"), part.high_voltage
    for opening in record.openings.values():
        yield ("openings", opening.id, "high_voltage"), opening.high_voltage
    yield from _circuits(record)


def _forty_eight(record: VehicleRecord) -> Iterator[Said]:
    for area in record.areas.values():
        yield ("areas", area.id, "forty_eight_volt"), area.forty_eight_volt or ""
    yield from _circuits(record)


def _circuits(record: VehicleRecord) -> Iterator[Said]:
    for part in record.parts.values():
        for tether in part.tethers.values():
            yield ("parts", part.id, "tethers", tether.id, "circuit"), tether.circuit
