"""Of every car with a radio and speakers it is known what the radio sends them.

## What it finds

A car for which the record has an opening for a receiver and one for a speaker, and for which no entry of `sound`
holds. `output: unknown` is an answer.

## Why it matters

At the radio, the "speaker wires" of an amplified car are not speaker wires. A new receiver that drives them
gives a thump, silence or smoke, and the page could have said so.

## Bad

    variants:
      sound:
        ask: Is there an amplifier?
        choices:
          plain: {label: No amplifier, tell: No badge in the doors}
          amplified: {label: Amplifier, tell: A badge in the front doors}
    openings:
      front-door:    # here
        name: Front door speakers
        kind: speaker
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin}
    sound:
      amplified: {when: {sound: amplified}, output: line, amplifier: Under the left front seat}

warning: nobody has said what the radio sends to the speakers where sound=plain (add it under 'sound', if only as 'output: unknown')

## Good

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin}
    sound:
      factory: {output: unknown}

Speakers in none of the cars that have a radio:

    variants:
      fit:
        ask: What was ordered?
        choices:
          speakers: {label: Speakers alone, tell: A blank in the dash}
          radio: {label: Radio alone, tell: No grilles}
    openings:
      dash:
        name: Radio opening
        kind: receiver
        behind: [radio]
        when: {fit: radio}
        kit: needed
        face: {width: 182 mm, height: 112 mm}
        depth: {clear: 170 mm}
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        when: {fit: speakers}
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin}
"""

from collections.abc import Iterator

from undertrim.check.affected import which
from undertrim.check.findings import Finding, Subject
from undertrim.derive.fit.factory_sound import systems
from undertrim.record.model import Assignment, VehicleRecord
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """The cars of which it is not said, once for the record, at its first speaker."""
    record = subject.record
    if hit := [car for car in subject.cars if _plays(record, car) and not systems(record, car)]:
        speaker = next(opening for opening in record.openings.values() if opening.on_channel)
        found = message("rules/sound-unstated/nobody-said", where=which(hit, subject.cars))
        yield Finding(("openings", speaker.id), found, key=True)


def _plays(record: VehicleRecord, car: Assignment) -> bool:
    """Whether a car has both."""
    here = [opening for opening in record.openings.values() if opening.when.holds(car)]
    driven = any(opening.on_channel for opening in here)
    return driven and any(opening.takes_over for opening in here)
