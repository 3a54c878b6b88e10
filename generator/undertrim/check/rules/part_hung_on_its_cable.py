"""A part that stays on a cable says where it is laid.

## What it finds

A part with a tether that `goes-with` it, and no `laid`.

## Why it matters

A cable that cannot be undone is the only thing that holds its part while the part is off. A part that hangs on it kinks the
cable, tears its end out, or pulls a pane of the controls through. What stays joined and could be undone (`leave`) is
no finding: most such plugs have lead enough.

## Bad

    parts:
      climate-panel:    # here
        name: Climate panel
        release: unscrew
        goes_to: dash
        tethers:
          flap: {name: Air flap cable, kind: cable, then: goes-with}

warning: 'climate-panel' stays on 'flap', and nothing says where it is laid (add 'laid' with where it is laid or hung within reach)

## Good

    parts:
      climate-panel:
        name: Climate panel
        release: unscrew
        goes_to: dash
        laid: Hung by a cord from the hook of the centre vent
        tethers:
          flap: {name: Air flap cable, kind: cable, then: goes-with}
      bezel:
        name: Bezel
        release: pull
        tethers:
          lamp: {name: Airbag lamp plug, kind: plug, circuit: restraint, then: leave}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every part that hangs on a tether, for all that is said."""
    for part in subject.record.parts.values():
        on = next((tether for tether in part.tethers.values() if tether.then == "goes-with"), None)
        if on and not part.laid and subject.intact(("parts", part.id)):
            found = message("rules/part-hung-on-its-cable/not-laid", part=part.id, tether=on.id)
            yield Finding(("parts", part.id), found, key=True, about=(on.id,))
