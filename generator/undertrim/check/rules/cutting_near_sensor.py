"""A door with a crash pressure sensor is not cut, drilled or blown out.

## What it finds

`alters` on an opening in a door that holds a sensor, or of which nobody knows whether it does; and texts of parts,
preparations and openings in such a door that tell to drill, cut, enlarge, file or grind, or to use compressed air;
and rivets that come out of such a part, since they are drilled out.
What only goes through a cable tie, tape or cord is left alone, and so is a sentence that forbids it. A door is
looked at by its area; the worst that any of its openings says counts.

## Why it matters

The sensor reads the air in the closed door and fires the side airbags. A new hole, swarf or a blast of air changes
what it reads. Until somebody has looked it up, the door counts as having one.

## Bad

    parts:
      door-panel:
        name: Door panel
        area: front-door
        release: lift
        how: Lift the panel off, then enlarge the hole of the bracket.    # here
        refit_how: Blow the door out with compressed air.    # here
        held_by:
          - {rivet: blind, count: 4}    # here
          - {rivet: blind, count: 2, leave: yes, note: These hold the lock.}
    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin}
        crash_sensor: yes
        alters: [drill, blow-out]    # here
        install_how: Drill four holes.    # here
      rear-door:
        name: Rear door speakers
        kind: speaker
        area: rear-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin}
        alters: [cut]    # here

error: 'enlarge' in a door with a crash pressure sensor (use what is there, or leave this out)
error: 'Blow' in a door with a crash pressure sensor (use what is there, or leave this out)
error: 'rivet: blind' is drilled out in a door with a crash pressure sensor (use what is there, or leave this out)
error: 'front-door' is altered by 'drill' and 'blow-out', and its door holds a crash pressure sensor (use what is there, or leave this out)
error: 'Drill' in a door with a crash pressure sensor (use what is there, or leave this out)
error: 'rear-door' is altered by 'cut', and whether its door holds a crash pressure sensor is not known (look it up: until 'crash_sensor' says no, nothing is altered here)

## Good

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin}
        crash_sensor: yes
        install_how: Do not drill or cut. Use the drill holes that are there. Cut the cable tie and the tape.
        cautions:
          - {signal: CAUTION, hazard: A cut edge., consequence: Cut hands., avoid: Never drill here.}
      rear-door:
        name: Rear door speakers
        kind: speaker
        area: rear-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin}
        crash_sensor: no
        alters: [drill]
        install_how: Drill four holes.
    parts:
      boot-trim:
        name: Boot trim
        area: boot
        release: lift
        how: Drill the rivets out.
"""

from collections.abc import Iterator

from undertrim.check import alterations, doors, needs
from undertrim.check.fasteners import drilled
from undertrim.check.findings import Finding, Subject
from undertrim.check.stated import texts
from undertrim.record.model import Known, Opening
from undertrim.record.problem import Level

LEVEL = Level.ERROR

_NAMED = ("hazard", "consequence", "name")
_WAY_OUT: dict[Known, str] = {
    "yes": "use what is there, or leave this out",
    "unknown": "look it up: until 'crash_sensor' says no, nothing is altered here",
}
_HOLDS: dict[Known, str] = {
    "yes": "its door holds a crash pressure sensor",
    "unknown": "whether its door holds a crash pressure sensor is not known",
}
_IN: dict[Known, str] = {
    "yes": "in a door with a crash pressure sensor",
    "unknown": "in a door that may hold a crash pressure sensor",
}


def check(subject: Subject) -> Iterator[Finding]:
    """Every alteration of a door that holds a sensor, or may hold one."""
    for opening in subject.record.openings.values():
        if opening.alters and subject.intact(needs.home(opening)):
            yield from _altered(subject, opening)
    blocked = _blocked(subject)
    for item in drilled(subject):
        answer = blocked.get(item.pointer[:2])
        if answer:
            yield Finding(item.pointer, f"{item.shown} is drilled out {_IN[answer]}", _WAY_OUT[answer])
    for pointer, text in texts(subject.fields):
        answer = blocked.get(pointer[:2])
        if answer and pointer[-1] not in _NAMED:
            for said in alterations.find(text):
                yield Finding(pointer, f"'{said}' {_IN[answer]}", _WAY_OUT[answer])


def _altered(subject: Subject, opening: Opening) -> Iterator[Finding]:
    answer = doors.sensor_at(subject.record, opening)
    if answer in _HOLDS:
        done = " and ".join(f"'{what}'" for what in opening.alters)
        message = f"'{opening.id}' is altered by {done}, and {_HOLDS[answer]}"
        yield Finding(("openings", opening.id, "alters"), message, _WAY_OUT[answer])


def _blocked(subject: Subject) -> dict[tuple[str | int, ...], Known]:
    """What stands in a door that is not known to hold no sensor, with the answer for that door."""
    record = subject.record
    return {
        needs.home(thing): answer
        for door, answer in doors.sensors(record).items()
        if answer != "no"
        for thing in doors.inside(record, door)
    }
