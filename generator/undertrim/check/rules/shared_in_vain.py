"""What a record shares is used, and what it says over that changes something.

## What it finds

In what lies over things that `shares` takes from another record: a field that says the same, with no `source` that would make it a fact
of this car; a `source` with no fact beside it. In `shares` itself: a group or an id that is asked for twice, a thing of which this
record states everything itself, and a name under `without` that was not asked for.

## Why it matters

What changes nothing looks like a difference between the two cars. Whoever mends the other record then wonders which was meant. And a
`source` backs only what is stated here: what is taken may change over there, and was not seen on this car.

## Bad

    # file: brindleway/otter-2014-2018.yaml
    parts:
      cap: {name: Cap, release: pull, held_by: [{clip: push, count: 2}], takes: 2 min}
      lid: {name: Lid, release: lift, held_by: [{clip: push, count: 2}], takes: 2 min}
      flap: {name: Flap, release: lift, takes: 2 min}
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 4.8 m}

    # file: brindleway/vole-2014-2018.yaml
    format: 2
    vehicle: {make: Brindleway, model: Vole, built: {from: 2014-01, to: 2018-01}, drive_side: left, high_voltage: no}
    shares:
      otter-2014-2018:
        parts:
          - cap
          - lid
          - flap    # here
        runs: [all, to-boot]    # here
        without: visor    # here
    parts:
      cap: {takes: 2 min}    # here
      lid: {source: e1}    # here
      flap: {name: Flap, release: lift, takes: 3 min, source: e1}

warning: 'takes' is what the other record says already (leave it out, or name in 'source' where it was seen on this car)
warning: a source stands here with no fact that it could back (state beside it what was seen on this car, or leave it out)
warning: nothing is taken of this: the record states all of it itself (leave it out of 'shares')
warning: this is taken already (leave it out)
warning: this was not asked for (leave it out of 'without')

## Good

    # file: brindleway/otter-2014-2018.yaml
    parts:
      cap: {name: Cap, release: pull, held_by: [{clip: push, count: 2}], takes: 2 min}
      lid: {name: Lid, release: lift, held_by: [{clip: push, count: 2}], takes: 2 min}

    # file: brindleway/vole-2014-2018.yaml
    format: 2
    vehicle: {make: Brindleway, model: Vole, built: {from: 2014-01, to: 2018-01}, drive_side: left, high_voltage: no}
    shares:
      otter-2014-2018: {parts: [cap, lid]}
    parts:
      cap: {takes: 2 min, source: e1}
      lid: {takes: 3 min}
"""

from collections.abc import Iterator
from dataclasses import replace

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Everything that could be left out of `shares`, and of what lies over it."""
    origin = subject.source.origin
    for item in origin.twice if origin else ():
        if item.source in _SAID:
            name = str(next(step for step in reversed(item.pointer) if isinstance(step, str)))
            yield Finding(item.pointer, replace(_SAID[item.source], values={"field": name}), key=item.source in _KEYS)


_SAID = {
    "shares": message("rules/shared-in-vain/same"),
    "source": message("rules/shared-in-vain/source"),
    "asked": message("rules/shared-in-vain/asked"),
    "unused": message("rules/shared-in-vain/unused"),
    "without": message("rules/shared-in-vain/without"),
}
_KEYS = ("shares", "source")
