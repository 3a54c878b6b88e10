"""What is said of one door's crash pressure sensor agrees.

## What it finds

Two openings of one door, in one car, whose `crash_sensor` differ. Openings in cars that exclude each other by their
variants, and on different sides, are different doors.

## Why it matters

There is one door, and it has a sensor or it has not. Until somebody looks it up, the worse of the two answers counts for
every opening of that door.

## Bad

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin, over: whole-travel}
        crash_sensor: yes
      tweeter:
        name: Tweeters
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 46 mm}
        depth: {clear: 20 mm, datum: skin, over: no-glass}
        crash_sensor: no    # here

error: 'front-door' says 'yes' and 'tweeter' says 'no' of one door's crash pressure sensor (look it up, and write the same at both or at one of them; until then it counts as 'yes')

## Good

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62 mm, datum: skin, over: whole-travel}
        crash_sensor: yes
      tweeter:
        name: Tweeters
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 46 mm}
        depth: {clear: 20 mm, datum: skin, over: no-glass}
      rear-door:
        name: Rear door speakers
        kind: speaker
        area: rear-door
        behind: [radio]
        hole: {shape: round, diameter: 120 mm}
        depth: {clear: 50 mm, datum: skin, over: whole-travel}
        crash_sensor: no
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive import doors
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every two openings of one door that say different things."""
    for one, other in doors.contradictions(subject.record):
        found = message(
            "rules/sensor-contradicted/one-door",
            one=one.id,
            first=one.crash_sensor or "",
            other=other.id,
            second=other.crash_sensor or "",
            counts=doors.sensor(subject.record, other),
        )
        yield Finding(("openings", other.id, "crash_sensor"), found, about=(one.id,))
