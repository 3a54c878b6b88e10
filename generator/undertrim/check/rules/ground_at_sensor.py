"""No ground of new gear is laid to a battery post with a current sensor.

## What it finds

A cable run that `carries` a ground and ends at a `battery` whose preparation says `sensor: yes`, or where nobody has
recorded whether there is one; and a `battery` of a run that is no preparation which takes a battery off.

## Why it matters

The sensor counts what goes through it. What is joined at the post itself goes past it: the car reckons its charge
wrongly, sheds loads too late or charges too little, and stands flat in the morning.

## Bad

    preps:
      battery:
        name: Battery off
        sets: {battery: off}
        needs: {ignition: off}
        sensor: yes
        how: Take the clamp off.
        restore: Put the clamp back.
      second:
        name: Second battery off
        sets: {battery: off}
        needs: {ignition: off}
        how: Take the clamp off.
        restore: Put the clamp back.
      window:
        name: Windows up
        sets: {glass: up}
        how: Close them.
    runs:
      to-boot:
        name: Battery to the boot
        from: Battery
        to: Boot floor
        length: 5 m
        carries: [plus, ground]    # here
        battery: battery
      to-seat:
        name: Second battery to the seat
        from: Second battery
        to: Below the seat
        length: 2 m
        carries: [ground]    # here
        battery: second
      to-door:
        name: Battery to the door
        from: Battery
        to: Door
        length: 2 m
        carries: [plus]
        battery: window    # here

warning: 'to-boot' takes a ground to the post of 'battery', where a current sensor sits (join the ground to the body, and take 'ground' out of 'carries')
warning: 'to-seat' takes a ground to the post of 'second', and whether a current sensor sits there is not recorded (look, and write 'sensor: yes' or 'sensor: no' in that preparation)
warning: 'to-door' names 'window' as its battery, which takes no battery off (name the preparation that sets 'battery: off')

## Good

    preps:
      battery:
        name: Battery off
        sets: {battery: off}
        needs: {ignition: off}
        sensor: yes
        how: Take the clamp off.
        restore: Put the clamp back.
      second:
        name: Second battery off
        sets: {battery: off}
        needs: {ignition: off}
        sensor: no
        how: Take the clamp off.
        restore: Put the clamp back.
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 5 m, carries: [plus], battery: battery}
      to-seat: {name: To the seat, from: Second battery, to: Below the seat, length: 2 m, carries: [ground], battery: second}
      to-front: {name: To the front, from: Boot, to: Dash, length: 5 m, carries: [ground]}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Run, VehicleRecord
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every run with a ground at such a post."""
    for run in subject.record.runs.values():
        if run.battery:
            yield from _of_run(subject.record, run)


def _of_run(record: VehicleRecord, run: Run) -> Iterator[Finding]:
    battery = record.preps.get(run.battery)
    if battery is None or battery.sets.get("battery") != "off":
        found = message("rules/ground-at-sensor/no-battery", run=run.id, battery=run.battery)
        yield Finding(("runs", run.id, "battery"), found, about=(run.battery,))
    elif "ground" in run.carries and battery.sensor != "no":
        if battery.sensor == "yes":
            found = message("rules/ground-at-sensor/sensor", run=run.id, battery=battery.id)
        else:
            found = message("rules/ground-at-sensor/sensor-unknown", run=run.id, battery=battery.id)
        yield Finding(("runs", run.id, "carries"), found, about=(battery.id,))
