"""A door with a crash pressure sensor is not cut, drilled or blown out.

## What it finds

`alters` on an opening in a door that holds a sensor, or of which nobody knows whether it does; and texts of parts,
preparations and openings in such a door that tell to drill, cut, enlarge, file or grind, or to use compressed air;
and fasteners in it that have to be drilled out.
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
error: 'door-panel' is altered by 'drill' to get 'rivet: blind' out, and its door holds a crash pressure sensor (use what is there, or leave this out)
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

from undertrim.check import cutting
from undertrim.check.cutting import Words
from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR

_WORDS = {
    "sensor": Words(
        message("rules/cutting-near-sensor/told"),
        message("rules/cutting-near-sensor/done"),
    ),
    "sensor-unknown": Words(
        message("rules/cutting-near-sensor/told-unknown"),
        message("rules/cutting-near-sensor/done-unknown"),
    ),
}


def check(subject: Subject) -> Iterator[Finding]:
    """Every alteration of a door that holds a sensor, or may hold one."""
    yield from cutting.find(subject, _WORDS)
