"""A restraint plug must say what becomes of it.

## What it finds

A tether with `circuit: restraint` and no `then`.

## Why it matters

Other plugs are undone and joined again without a word. An airbag or belt plug undone without need lights the
lamp, or leaves a bag that does not fire; whether it stays joined is a decision that somebody makes at the
car.

## Bad

    parts:
      vent-trim:
        name: Vent trim
        release: pull
        tethers:
          passenger-lamp: {name: Passenger airbag lamp plug, kind: plug, circuit: restraint}    # here

error: the restraint plug 'passenger-lamp' does not say what becomes of it (write 'then: leave' where it can stay joined, else 'then: rejoin')

## Good

    parts:
      vent-trim:
        name: Vent trim
        release: pull
        tethers:
          passenger-lamp: {name: Passenger airbag lamp plug, kind: plug, circuit: restraint, then: leave}
          hazard: {name: Hazard switch plug, kind: plug}
      seat:
        name: Seat
        release: lift
        tethers:
          belt: {name: Belt tensioner plug, kind: plug, circuit: restraint, then: rejoin}
          heater: {name: Heater plug, kind: plug, circuit: ordinary}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message, word

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every restraint tether without `then`."""
    for part in subject.record.parts.values():
        for tether in part.tethers.values():
            home = ("parts", part.id, "tethers", tether.id)
            if tether.circuit == "restraint" and not tether.then and subject.intact(home):
                kind = word("tethers", "kind", tether.kind, "noun")
                found = message("rules/restraint-undecided/no-end", kind=kind, tether=tether.id)
                yield Finding(home, found, key=True)
