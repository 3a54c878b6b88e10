"""A car has one sound system.

## What it finds

Two entries of `sound` that hold for one car.

## Why it matters

Speaker level or line level: with both said, the page can only call it unknown, and the tech finds out by ear.

## Bad

    variants:
      sound:
        ask: Is there an amplifier?
        choices:
          plain: {label: No amplifier, tell: No badge in the doors}
          amplified: {label: Amplifier, tell: A badge in the front doors}
    sound:
      plain: {output: speaker}
      amplified: {when: {sound: amplified}, output: line}    # here

error: 'plain' and 'amplified' both hold where sound=amplified (say with 'when' which cars have which)

## Good

    variants:
      sound:
        ask: Is there an amplifier?
        choices:
          plain: {label: No amplifier, tell: No badge in the doors}
          amplified: {label: Amplifier, tell: A badge in the front doors}
    sound:
      plain: {when: {sound: plain}, output: speaker}
      amplified: {when: {sound: amplified}, output: line}
"""

from collections.abc import Iterator
from itertools import combinations

from undertrim.check.affected import which
from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every two sound systems that one car would have."""
    for one, other in combinations(subject.record.sound.values(), 2):
        if hit := [car for car in subject.cars if one.when.holds(car) and other.when.holds(car)]:
            where = which(hit, subject.cars)
            found = message("rules/sound-stated-twice/both-hold", one=one.id, other=other.id, where=where)
            yield Finding(("sound", other.id), found, key=True, about=(one.id,))
