"""A cable from the engine bay goes through the bulkhead.

## What it finds

A cable run with `engine: yes` that passes neither a grommet nor an edge.

## Why it matters

The hole in the bulkhead is the hard part of the job: whether there is a grommet with room, or a hole to be made and an edge
to be guarded, decides what to bring.

## Bad

    runs:
      to-boot:
        name: Battery to boot
        from: Battery under the bonnet
        to: Boot floor
        length: 5.4 m
        engine: yes
        passes:    # here
          - {where: Left sill, through: channel}

warning: 'to-boot' comes from the engine bay and goes through no hole of the bulkhead (add where it passes the bulkhead, 'through' a grommet or an edge, or 'unknown')

## Good

    runs:
      to-boot:
        name: Battery to boot
        from: Battery under the bonnet
        to: Boot floor
        length: 5.4 m
        engine: yes
        passes:
          - {where: "Bulkhead, left of the pedals", through: grommet}
          - {where: Left sill, through: channel}
      from-floor:
        name: Battery to boot
        from: Battery under the seat
        to: Boot floor
        length: 2.4 m
        engine: no
        passes:
          - {where: Left sill, through: channel}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING

_THROUGH = ("grommet", "edge", "unknown")


def check(subject: Subject) -> Iterator[Finding]:
    """Every run out of the engine bay that goes through no metal."""
    for run in subject.record.runs.values():
        metal = any(item.through in _THROUGH for item in run.passes)
        if run.engine == "yes" and run.passes and not metal and subject.intact(("runs", run.id)):
            found = message("rules/bulkhead-not-passed/through-nothing", run=run.id)
            yield Finding(("runs", run.id, "passes"), found, key=True)
