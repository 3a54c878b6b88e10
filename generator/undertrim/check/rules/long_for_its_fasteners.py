"""A part with little to undo comes off in little time.

## What it finds

A time that is more than 5 minutes, 2 more for each fastener and 3 more for each tether. What is not counted is
not judged. From memory of real jobs.

## Why it matters

Seconds typed as minutes make half an hour of a screw cap, and the job's sum is believed.

## Bad

    parts:
      cap:
        name: Screw cap
        release: lift
        held_by: [{clip: snap-in, count: 1}]
        takes: 30 min    # here

warning: '30 min' for what can be undone in 7 min (are these seconds, or is a fastener missing?)

## Good

    parts:
      cap:
        name: Screw cap
        release: lift
        held_by: [{clip: snap-in, count: 1}]
        takes: 30 s
      seat:
        name: Seat
        release: lift
        held_by: [{bolt: T50, count: 4}]
        tethers:
          heater: {name: Heater plug, kind: plug}
        takes: 15 min
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Part, Prep
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.words import message

LEVEL = Level.WARNING

_ANY, _FASTENER, _TETHER = 300, 120, 180  # s
_JOB = 10800  # s; above this no part's time is plausible, and `implausible-quantity` says so


def check(subject: Subject) -> Iterator[Finding]:
    """Every time that what there is to undo does not account for."""
    for section, things in (("parts", subject.record.parts), ("preps", subject.record.preps)):
        for thing in things.values():
            most = _most(thing)
            if most is not None and isinstance(thing.takes, Quantity) and most < thing.takes.value <= _JOB:
                time, minutes = thing.takes.text, most // 60
                found = message("rules/long-for-its-fasteners/too-long", time=time, minutes=minutes)
                yield Finding((section, thing.id, "takes"), found)


def _most(thing: Part | Prep) -> int | None:
    """The longest time in s that needs no second look; None where something is not counted."""
    counts = [item.count for item in thing.held_by]
    if not counts or not all(isinstance(count, int) for count in counts):
        return None
    tethers = len(thing.tethers) if isinstance(thing, Part) else 0
    return _ANY + _FASTENER * sum(count for count in counts if isinstance(count, int)) + _TETHER * tethers
