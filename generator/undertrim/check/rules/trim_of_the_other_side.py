"""The trims of a cable run lie on its side.

## What it finds

A cable run with a `side` whose `trims` name a part that only the other side has: by its `on_side`, or by an `each` without that side.
A part that changes sides with the steering wheel (`mirrors: yes`) is passed over.

## Why it matters

The tech takes off the trim of one side and looks for the channel on the other.

## Bad

    parts:
      right-sill:
        name: Right sill trim
        area: footwell
        release: lift
        on_side: right
        mirrors: no
      lining:
        name: Lining
        area: boot
        each: [right]
        release: pull
    runs:
      to-boot: {name: To the boot, from: Battery, to: Boot, length: 5 m, side: left, trims: [right-sill, lining]}    # here

warning: 'to-boot' lies on the left, and 'lining' is not there (name the part of that side, or mend 'side')
warning: 'to-boot' lies on the left, and 'right-sill' is not there (name the part of that side, or mend 'side')

## Good

    parts:
      left-sill:
        name: Left sill trim
        area: footwell
        release: lift
        on_side: left
        mirrors: no
      foot-rest:
        name: Foot rest
        area: footwell
        release: lift
        on_side: right
        mirrors: yes
      lining:
        name: Lining
        area: boot
        each: [left, right]
        release: pull
    runs:
      to-boot: {name: To the boot, from: Battery, to: Boot, length: 5 m, side: left, trims: [left-sill, foot-rest, lining]}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Part, Side
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every trim that is on the other side alone."""
    parts = subject.record.parts
    for run in subject.record.runs.values():
        for number, name in enumerate(run.trims):
            if run.side and name in parts and not _there(parts[name], run.side):
                side = message(f"sides/{run.side}")
                said = message("rules/trim-of-the-other-side/not-there", run=run.id, side=side, trim=name)
                yield Finding(("runs", run.id, "trims", number), said, about=(name,))


def _there(part: Part, side: Side) -> bool:
    """Whether a part is on a side, or may be."""
    if part.each:
        return side in part.each
    return part.on_side in (None, side) or part.mirrors == "yes"
