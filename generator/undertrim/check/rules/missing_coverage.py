"""An opening that some cars do not have says so.

## What it finds

An opening whose `when` leaves out cars that no line of `not_in` speaks of.

## Why it matters

The tech with such a car cannot tell "nobody looked" from "there is none". With `not_in` the page says that it
is not there, and without it somebody is sent to measure.

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
        when: {sound: [stage, grand]}    # here
        hole: {shape: round, diameter: 78 mm}
        depth: {clear: 44 mm, datum: bracket}
      bass:
        name: Bass speaker
        kind: speaker
        behind: [radio]
        when: {sound: grand}    # here
        not_in: [{sound: plain}]
        hole: {shape: round, diameter: 160 mm}
        depth: {clear: 94 mm, datum: bracket}

warning: nobody has said whether 'dash-top' is there where sound=plain (record it for those cars, or write 'not_in' if somebody looked and there is none)
warning: nobody has said whether 'bass' is there where sound=stage (record it for those cars, or write 'not_in' if somebody looked and there is none)

## Good

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
        not_in: [{sound: plain}]
        hole: {shape: round, diameter: 78 mm}
        depth: {clear: 44 mm, datum: bracket}
      bass:
        name: Bass speaker
        kind: speaker
        behind: [radio]
        when: {sound: grand}
        not_in: [{sound: plain}, {sound: stage}]
        hole: {shape: round, diameter: 160 mm}
        depth: {clear: 94 mm, datum: bracket}
      centre:
        name: Centre speaker
        kind: speaker
        behind: [radio]
        when: {sound: [plain, stage, grand]}
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

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every opening with cars that nobody has said anything of."""
    matrix = coverage.matrix(subject.record)
    cars = [row.car for row in matrix.rows]
    missing = matrix.missing
    for opening in sound_openings(subject):
        if hit := [row.car for row in missing.get(opening.id, ())]:
            found = message("rules/missing-coverage/not-said", opening=opening.id, where=which(hit, cars))
            yield Finding(("openings", opening.id, "when"), found)
