"""An area with restraint wiring names its restraints.

## What it finds

A part with a tether of the restraint system, whose area has no `restraints` under `areas`.

## Why it matters

What is in an area brings its caution to every part of it, also to those that have no plug of their own. An airbag that
is only known by one plug is not there for the next part.

## Bad

    parts:
      trim:
        name: Vent trim
        area: dash
        release: pull
        tethers:
          lamp: {name: Airbag lamp plug, kind: plug, circuit: restraint, then: leave}    # here

warning: 'lamp' is restraint wiring in 'dash', and 'areas' names no restraints there (name what is there: 'areas: {dash: {restraints: [...]}}')

## Good

    areas:
      dash: {restraints: [Passenger airbag above the glovebox]}
    parts:
      trim:
        name: Vent trim
        area: dash
        release: pull
        tethers:
          lamp: {name: Airbag lamp plug, kind: plug, circuit: restraint, then: leave}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every restraint plug in an area of which nobody says what fires there."""
    areas = subject.record.areas
    for part in subject.record.parts.values():
        said = part.area in areas and areas[part.area].restraint_parts
        for tether in part.tethers.values():
            if tether.circuit == "restraint" and part.area and not said and subject.intact(("areas",)):
                found = message("rules/restraint-area-not-said/no-restraints", tether=tether.id, area=part.area)
                yield Finding(("parts", part.id, "tethers", tether.id), found, key=True, about=(part.area,))
