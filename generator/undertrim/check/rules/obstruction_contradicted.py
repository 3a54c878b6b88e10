"""What ends a depth is one thing, in the field and in the words beside it.

## What it finds

A speaker depth that ends at `glass` although no glass is said to be there; and one whose `to` names the glass
while `obstruction` says nothing, or something else. The rail or guide of a window is not the glass.

## Why it matters

The field decides how much room is kept behind a magnet, the words only tell the reader. Where the two differ, one of
them is wrong, and the glass is what breaks.

## Bad

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel, to: Window glass}    # here
      rear-door:
        name: Rear door speakers
        kind: speaker
        area: rear-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel, obstruction: metal, to: Window glass}    # here
      shelf:
        name: Shelf speakers
        kind: speaker
        area: boot
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: no-glass, obstruction: glass}    # here

warning: 'Window glass' names the glass, and 'obstruction' says nothing (write 'obstruction: glass', or say in 'to' what is really there)
warning: 'Window glass' names the glass, and 'obstruction' says 'metal' (write 'obstruction: glass', or say in 'to' what is really there)
warning: the depth ends at 'glass' where 'over' says 'no-glass' (write 'over: whole-travel' once the glass was moved, or say what else is there)

## Good

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel, obstruction: glass, to: Window glass}
      rear-door:
        name: Rear door speakers
        kind: speaker
        area: rear-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel, obstruction: metal, to: Guide rail of the glass}
"""

import re
from collections.abc import Iterator
from functools import cache

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Depth
from undertrim.record.problem import Level
from undertrim.resources import table
from undertrim.words import Message, message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every depth behind a speaker or tweeter that says two things of what ends it."""
    for opening in subject.record.openings.values():
        place = ("openings", opening.id, "depth")
        if opening.often_in_doors and opening.depth and subject.intact(place):
            yield from _contradicted((*place,), opening.depth)


def _contradicted(place: tuple[str, ...], depth: Depth) -> Iterator[Finding]:
    if depth.over == "no-glass" and depth.obstruction == "glass":
        yield Finding((*place, "over"), message("rules/obstruction-contradicted/no-glass"))
    elif depth.over != "no-glass" and depth.obstruction not in ("glass", "unknown") and _names_glass(depth.to):
        yield Finding((*place, "to"), _names_another(depth))


def _names_another(depth: Depth) -> Message:
    if depth.obstruction:
        return message("rules/obstruction-contradicted/names-glass", text=depth.to, obstruction=depth.obstruction)
    return message("rules/obstruction-contradicted/names-glass-alone", text=depth.to)


def _names_glass(text: str) -> bool:
    return bool(_words("named").search(text)) and not _words("beside").search(text)


@cache
def _words(name: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(table('words')['glass'][name])})\b", re.IGNORECASE)
