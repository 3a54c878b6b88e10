"""An opening is in a car or it is not.

## What it finds

An opening with a line of `not_in` that holds for a car its `when` holds for too. An opening without `when` is
in every car.

## Why it matters

The page shows measures for a place that the same record says is not there. One of the two is wrong, and the
tech finds out with the trim off.

## Bad

    variants:
      sound:
        ask: Which sound system is it?
        choices:
          plain: {label: Plain, tell: No grille on the dash top}
          stage: {label: Stage, tell: A grille on the dash top}
          grand: {label: Grand, tell: A grille on the dash top with a badge}
    openings:
      dash-top:
        name: Dash top speaker
        kind: speaker
        behind: [radio]
        when: {sound: [stage, grand]}
        not_in: [{sound: [plain, grand]}]    # here
        hole: {shape: round, diameter: 78 mm}
        depth: {clear: 44 mm, datum: bracket}
      bass:
        name: Bass speaker
        kind: speaker
        behind: [radio]
        not_in: [{sound: plain}]    # here
        hole: {shape: round, diameter: 160 mm}
        depth: {clear: 94 mm, datum: bracket}

error: 'dash-top' is recorded and at the same time not there where sound=grand (take those cars out of 'when' or out of 'not_in')
error: 'bass' is recorded and at the same time not there where sound=plain (add 'when' for the cars that have it, or remove 'not_in')

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left, right]
      high_voltage: no
    variants:
      sound:
        ask: Which sound system is it?
        choices:
          plain: {label: Plain, tell: No grille on the dash top}
          stage: {label: Stage, tell: A grille on the dash top}
    openings:
      dash-top:
        name: Dash top speaker
        kind: speaker
        behind: [radio]
        when: {sound: stage}
        not_in:
          - {sound: plain}
          - {drive-side: right}    # here
        hole: {shape: round, diameter: 78 mm}
        depth: {clear: 44 mm, datum: bracket}

error: 'dash-top' is recorded and at the same time not there where sound=stage, drive-side=right (take those cars out of 'when' or out of 'not_in')

## Good

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left, right]
      high_voltage: no
    variants:
      sound:
        ask: Which sound system is it?
        choices:
          plain: {label: Plain, tell: No grille on the dash top}
          stage: {label: Stage, tell: A grille on the dash top}
    openings:
      dash-top:
        name: Dash top speaker
        kind: speaker
        behind: [radio]
        when: {sound: stage, drive-side: left}
        not_in: [{sound: plain}, {sound: stage, drive-side: right}]
        hole: {shape: round, diameter: 78 mm}
        depth: {clear: 44 mm, datum: bracket}
"""

from collections.abc import Iterator

from undertrim.check.affected import which
from undertrim.check.findings import Finding, Subject
from undertrim.check.opening_conditions import sound_openings
from undertrim.derive import coverage
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every line of 'not_in' that speaks of a car the opening is recorded for."""
    cars = coverage.kinds_of_car(subject.record)
    for opening in sound_openings(subject):
        for index, absent in enumerate(opening.not_in):
            if hit := [car for car in cars if opening.when.holds(car) and absent.holds(car)]:
                where = which(hit, cars)
                if opening.when.clauses:
                    found = message("rules/not-in-overlaps/against-when", opening=opening.id, where=where)
                else:
                    found = message("rules/not-in-overlaps/without-when", opening=opening.id, where=where)
                yield Finding(("openings", opening.id, "not_in", index), found)
