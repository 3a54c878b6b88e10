"""What serves an airbag or a belt is restraint wiring.

## What it finds

A tether that `serves` an airbag, a belt, their sensors or lamps, without `circuit: restraint`.

## Why it matters

The circuit brings the cautions, the battery off and the wait. Without it the plug is undone like that of a lamp.

## Bad

    parts:
      seat:
        name: Front seat
        release: lift
        tethers:
          buckle: {name: Buckle plug, kind: plug, serves: [seat, belt]}    # here

error: 'buckle' serves the belt tensioner or buckle, but is no restraint wiring (add 'circuit: restraint')

## Good

    parts:
      seat:
        name: Front seat
        release: lift
        tethers:
          buckle: {name: Buckle plug, kind: plug, circuit: restraint, serves: [seat, belt], then: rejoin}
          heating: {name: Heating plug, kind: plug, serves: [seat]}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.procedure.purposes import purpose
from undertrim.record.problem import Level
from undertrim.words import Message, all_of, message, word

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every tether whose purpose is restraint and whose circuit is not."""
    for part in subject.record.parts.values():
        for tether in part.tethers.values():
            held = [_the(name) for name in tether.serves if purpose(name).restraint]
            if held and tether.circuit != "restraint":
                found = message("rules/serves-against-circuit/no-restraint", tether=tether.id, held=all_of(*held))
                yield Finding(("parts", part.id, "tethers", tether.id), found, key=True)


def _the(name: str) -> Message:
    return message("rules/serves-against-circuit/the", what=word("purposes", "purpose", name, "label"))
