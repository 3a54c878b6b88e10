"""A speaker opening has as many bolt holes as its factory speaker has screws.

## What it finds

A pattern of `bolts` whose count is not that of the screws, bolts, nuts and rivets of the one part that is replaced
there.

## Why it matters

One of the two was miscounted. A speaker with four holes does not sit on three, and the tally at the end is one off.

## Bad

    parts:
      speaker:
        name: Factory speaker
        release: unscrew
        held_by: [{screw: T20, count: 3}]
        replaced: yes
    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [speaker]
        hole: {shape: round, diameter: 146 mm}
        bolts: {pattern: circle, count: 4, diameter: 160 mm}    # here
        depth: {clear: 64 mm, datum: skin, over: whole-travel}

warning: the pattern has 4 holes, and 'speaker' is held by 3 (count both again; if the factory speaker uses only some of the holes, allow it with that reason)

## Good

    parts:
      speaker:
        name: Factory speaker
        release: unscrew
        held_by: [{screw: T20, count: 4}, {screw: T20, count: 2, leave: yes, note: They hold the window guide.}]
        replaced: yes
    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [speaker]
        hole: {shape: round, diameter: 146 mm}
        bolts: {pattern: circle, count: 4, diameter: 160 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Fastener, Part
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every pattern of bolts that the factory speaker does not go with."""
    parts = subject.record.parts
    for opening in subject.record.openings_of(SpeakerOpening):
        out = [parts[name] for name in opening.behind if name in parts and parts[name].replaced == "yes"]
        held = _screws(out[0]) if len(out) == 1 and subject.intact(("parts", out[0].id)) else None
        if opening.bolts and held and opening.bolts.count != held and subject.intact(("openings", opening.id)):
            holes = opening.bolts.count
            found = message("rules/bolts-and-screws-differ/counts-differ", holes=holes, part=out[0].id, held=held)
            yield Finding(("openings", opening.id, "bolts", "count"), found, about=(out[0].id,))


def _screws(part: Part) -> int | None:
    """How many screws, bolts, nuts and rivets hold a part; None where that is not known, or depends on the car or its side."""
    lines: list[Fastener] = [item for item in part.held_by if (item.turned or item.plain_shank) and item.leave == "no"]
    counts = [item.count for item in lines if isinstance(item.count, int) and not (item.when.clauses or item.side)]
    return sum(counts) if lines and len(counts) == len(lines) else None
