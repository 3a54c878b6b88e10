"""Nothing is cut or drilled where high-voltage cables run.

## What it finds

`alters` on an opening to which the high voltage comes `near`, or of which nobody knows whether it does; fasteners there
that have to be drilled out; and texts there that tell to drill, cut, enlarge, file, saw or grind. Only in vehicles that
have a high-voltage system, or may have one.

## Why it matters

A drill through a floor or a wall that meets a high-voltage cable kills. Where its cables run is in the maker's
information, and a trim hides them.

## Bad

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: yes
    areas:
      floor: {high_voltage: near}
      dash: {high_voltage: clear}
    parts:
      carpet:
        name: Carpet
        area: floor
        release: lift
        how: Fold it back and drill the floor.    # here
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
    openings:
      shelf:
        name: Shelf speakers
        kind: speaker
        area: boot
        behind: [radio]
        hole: {shape: round, diameter: 120 mm}
        depth: {clear: 70 mm, datum: skin, over: no-glass}
        alters: [cut]    # here

error: 'drill' where high-voltage cables run near (use what is there, or leave this out)
error: 'carpet' is altered by 'drill' to get 'rivet: blind' out, and high-voltage cables run near it (use what is there, or leave this out)
error: 'seat-box' is altered by 'drill' to get 'rivet: solid' out, and how near the high voltage comes to it is not known (look it up: until 'high_voltage' says clear, nothing is altered here)
error: 'shelf' is altered by 'cut', and how near the high voltage comes to it is not known (look it up: until 'high_voltage' says clear, nothing is altered here)

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: yes
    areas:
      floor: {high_voltage: near}
      boot: {high_voltage: clear}
    parts:
      carpet:
        name: Carpet
        area: floor
        release: lift
        how: Fold it back. Never drill the floor.
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
    "voltage": Words(
        message("rules/cutting-near-voltage/told"),
        message("rules/cutting-near-voltage/done"),
    ),
    "voltage-unknown": Words(
        message("rules/cutting-near-voltage/told-unknown"),
        message("rules/cutting-near-voltage/done-unknown"),
    ),
}


def check(subject: Subject) -> Iterator[Finding]:
    """Every alteration where high-voltage cables run, or may run."""
    yield from cutting.find(subject, _WORDS)
