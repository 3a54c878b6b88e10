"""A part, preparation or opening states what its neighbours state.

## What it finds

A part without `area` or `takes`, a preparation without `takes`, a speaker opening without `panel`, `channel`, `bolts` or
`room_to_grille`, where at least three of four neighbours that could have it do, and at least three in number.

## Why it matters

The minutes of a job then lack one part, a caution of the area does not reach it, a fit cannot be told. The page shows a sum, and
nobody sees what is not in it.

## Bad

    parts:
      vent-trim: {name: Vent trim, release: pull, area: dash, takes: 2 min}
      bezel: {name: Radio bezel, release: pull, area: dash, takes: 3 min}
      lid: {name: Lid, release: lift, area: dash, takes: 1 min}
      tray: {name: Tray, release: lift}    # here

warning: 'tray' has no 'area' and no 'takes', and most of its neighbours do (add what is known of it)

## Good

    parts:
      vent-trim: {name: Vent trim, release: pull, area: dash, takes: 2 min}
      bezel: {name: Radio bezel, release: pull, area: dash}
      lid: {name: Lid, release: lift, area: dash}
      tray: {name: Tray, release: lift, area: dash}
"""

from collections.abc import Iterator, Mapping, Sequence

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Opening, Part, Prep
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.problem import Level
from undertrim.words import all_of, message

LEVEL = Level.WARNING

_PARTS = ("area", "takes")
_PREPS = ("takes",)
_SPEAKERS = ("panel", "channel", "bolts", "room_to_grille")
_LEAST = 3
"""So many neighbours must state it."""
_SHARE = 0.75
"""And so large a share of all; from memory of what a complete record looks like."""

Thing = Part | Prep | Opening


def check(subject: Subject) -> Iterator[Finding]:
    """Every lack of a field that the neighbours have, by thing."""
    record = subject.record
    speakers = {item.id: item for item in record.openings_of(SpeakerOpening)}
    yield from _section(subject, "parts", record.parts, _PARTS)
    yield from _section(subject, "preps", record.preps, _PREPS)
    yield from _section(subject, "openings", speakers, _SPEAKERS)


def _section(subject: Subject, section: str, things: Mapping[str, Thing], names: Sequence[str]) -> Iterator[Finding]:
    wanted = [name for name in names if _usual([bool(getattr(thing, name)) for thing in things.values()])]
    for thing in things.values():
        lacking = [name for name in wanted if not getattr(thing, name)]
        if lacking and subject.intact((section, thing.id)):
            fields = all_of(*(message("rules/field-left-out/no-field", field=name) for name in lacking))
            found = message("rules/field-left-out/lacking", thing=thing.id, fields=fields)
            yield Finding((section, thing.id), found, key=True)


def _usual(stated: Sequence[bool]) -> bool:
    return sum(stated) >= max(_LEAST, _SHARE * len(stated))
