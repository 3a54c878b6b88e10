"""A speaker behind a panel with a window has glass behind it.

## What it finds

A speaker opening in a door whose depth says `over: no-glass`, though one of the parts before it needs the window up or down.

## Why it matters

The depth was taken with the glass somewhere. If it moves into the magnet, it breaks when the owner first opens the window.

## Bad

    parts:
      panel:
        name: Door panel
        area: front-door
        each: [left, right]
        release: lift
        needs: {glass: up}
      speaker:
        name: Factory speaker
        area: front-door
        each: [left, right]
        after: [panel]
        release: unscrew
        replaced: yes
    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        each: [left, right]
        behind: [speaker]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: no-glass}    # here

warning: 'no-glass', and 'panel' before it needs the window up (move the window through its whole travel while measuring, and write 'whole-travel')

## Good

    parts:
      cover:
        name: Mirror corner cover
        area: front-door
        each: [left, right]
        release: pull
        replaced: yes
    openings:
      corner:
        name: Mirror corners
        kind: speaker
        area: front-door
        each: [left, right]
        behind: [cover]
        hole: {shape: round, diameter: 46 mm}
        depth: {clear: 24 mm, datum: skin, over: no-glass}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Part, VehicleRecord
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING

_NEEDS = {"up": message("rules/glass-forgotten/needs-up"), "down": message("rules/glass-forgotten/needs-down")}


def check(subject: Subject) -> Iterator[Finding]:
    """Every door speaker that is said to have no glass behind it, behind a panel that minds the glass."""
    for opening in subject.record.openings.values():
        if opening.in_a_door and opening.depth and opening.depth.over == "no-glass":
            minds = next((part for part in _before(subject.record, opening.behind) if "glass" in part.needs), None)
            if minds:
                found = message(_NEEDS[minds.needs["glass"]].code, part=minds.id)
                yield Finding(("openings", opening.id, "depth", "over"), found, about=(minds.id,))


def _before(record: VehicleRecord, names: tuple[str, ...]) -> Iterator[Part]:
    """The parts of these names and all that each waits for; each once."""
    found: dict[str, None] = {}
    left = [name for name in names if name in record.parts]
    while left:
        part = record.parts[left.pop(0)]
        if part.id not in found:
            found[part.id] = None
            yield part
            left += [ref.part for ref in part.after if ref.part in record.parts]
            left += [item.under for item in part.held_by if item.under in record.parts]
