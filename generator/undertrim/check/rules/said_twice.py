"""Nothing is said that follows anyway.

## What it finds

In a record of format 2: an `area`, `each` or other field that the group says already, or the part that an opening is behind;
an `area` that is the id of its group; `model_years` that follow from the months of build; a `count` that is the sum of `at`;
a `name` that is the id in words.

## Why it matters

What is said twice is mended once. The reader cannot see which of the two was meant, and has to read both.

## Bad

    format: 2
    parts:
      front-door:
        each: [left, right]
        parts:
          handle-cap: {release: lift, each: [left, right], held_by: {clip: snap-in, count: 2, at: {top: 1, bottom: 1}}}    # here
          door-panel: {name: Door panel, release: lift, held_by: {screw: T30, count: 2, under: handle-cap}}    # here
    openings:
      dash: {name: Radio opening, kind: receiver, behind: radio, kit: needed, face: {width: 182 mm, height: 112 mm}, depth: {clear: 170 mm}}
      front-door:
        kind: speaker
        area: front-door    # here
        behind: door-panel
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm}

warning: 'count' is the sum of 'at' (leave it out)
warning: 'each' is what the group says already (leave it out)
warning: 'name' is what the id says already (leave it out)
warning: 'area' is that of the part it is behind (leave it out)

    format: 2
    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-03, to: 2018-01}
      model_years: {first: 2014, last: 2017}    # here
      drive_side: [left]
      high_voltage: no
    openings:
      dash: {name: Radio opening, kind: receiver, behind: radio, kit: needed, face: {width: 182 mm, height: 112 mm}, depth: {clear: 170 mm}}

warning: 'model_years' follows from 'built' (leave it out)

## Good

    format: 2
    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-03, to: 2018-01}
      model_years: {first: 2014, last: 2018}
      drive_side: [left]
      high_voltage: no
    parts:
      front-door:
        each: [left, right]
        parts:
          handle-cap: {release: lift, each: none, held_by: {clip: snap-in, at: {top: 1, bottom: 1}}}
          door-panel: {name: Front door panel, release: lift, held_by: {screw: T30, count: 2, under: handle-cap}}
    openings:
      dash: {name: Radio opening, kind: receiver, behind: radio, kit: needed, face: {width: 182 mm, height: 112 mm}, depth: {clear: 170 mm}}
      front-door:
        kind: speaker
        behind: door-panel
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm}
"""

from collections.abc import Iterator
from dataclasses import replace

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every field as typed that would have the same value if it were left out."""
    origin = subject.source.origin
    for item in origin.twice if origin else ():
        why = _SAID_BY.get(item.source)
        if why:  # what is shared with another record is another rule's
            yield Finding(item.pointer, replace(why, values={"field": str(item.pointer[-1])}), key=True)


_SAID_BY = {
    "group": message("rules/said-twice/group"),
    "group-id": message("rules/said-twice/group-id"),
    "behind": message("rules/said-twice/behind"),
    "built": message("rules/said-twice/built"),
    "at": message("rules/said-twice/at"),
    "id": message("rules/said-twice/id"),
}
