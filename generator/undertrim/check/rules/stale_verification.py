"""No fact has changed since the record was verified.

## What it finds

A `verified` stamp, or one of `verified_parts`, over facts that were edited, added or removed since. The stamp of a part
stands for what its openings rest on, and for nothing else. Comments, layout, `evidence` and
`conflicts` are no facts and do not count.

## Why it matters

Somebody stood at the car and put initials to these facts. Facts they never saw must not borrow them.

## Bad

    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by: [{clip: push, count: 4}]
    verified:    # here
      on: 2026-04-02
      by: rk
      car: 2016, left-hand drive
      facts:
        vehicle: 0e490655
        preps/battery: c36d82de
        parts/radio: 00000000
        parts/vent-trim: 9f31c2aa
        openings/dash: 27135006
        after_battery: 5c3b7903

error: facts edited since 2026-04-02: changed 'parts/radio'; added 'parts/bezel'; removed 'parts/vent-trim' (check them at the car and verify the record again ('undertrim verify --help' says how), or remove 'verified')

Of the stamps of parts only those are stale that rest on what was edited.

    verified_parts:
      dash:    # here
        on: 2026-04-02
        by: rk
        car: 2016, left-hand drive
        of: [dash]
        facts:
          vehicle: 0e490655
          preps/battery: c36d82de
          parts/radio: 00000000
          openings/dash: 27135006
          after_battery: 5c3b7903

error: facts of 'dash' edited since 2026-04-02: changed 'parts/radio' (check them at the car and verify this part again ('undertrim verify --help' says how), or remove its stamp)

## Good

    parts:
      # the same facts in another layout
      radio:
        takes: '3 min'
        release: slide
        name:   Factory radio
        area: dash
        replaced: yes
        tethers:
          main: {kind: plug, name: Main plug}
        held_by:
          - {count: 4, screw: T20}
    verified:
      on: 2026-04-02
      by: rk
      car: 2016, left-hand drive
      facts:
        vehicle: 0e490655
        preps/battery: c36d82de
        parts/radio: 05c10531
        openings/dash: 27135006
        after_battery: 5c3b7903
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.evidence import resting
from undertrim.derive.evidence.fingerprint import Changes, changed_among, changed_since
from undertrim.record.model import VerifiedPart
from undertrim.record.problem import Level
from undertrim.words import Items, Message, message, some_of

LEVEL = Level.ERROR

_NAMED = 6
"""So many blocks of each sort are named, the rest counted."""


def check(subject: Subject) -> Iterator[Finding]:
    """The stamp, if what it stands for has changed."""
    stamp = subject.record.verified
    changes = changed_since(subject.source.data, stamp.facts) if stamp else None
    if stamp and changes:
        names = (*changes.changed, *changes.added, *changes.removed)
        about = tuple(step for name in names for step in name.split("/"))
        edits = Items(tuple(_edits(changes)), "semicolon")
        found = message("rules/stale-verification/edited", date=stamp.on, edits=edits)
        yield Finding(("verified",), found, key=True, about=about)
    for part in subject.record.verified_parts.values():
        yield from _part(subject, part)


def _part(subject: Subject, part: VerifiedPart) -> Iterator[Finding]:
    """The stamp of a part, if what it rests on has changed."""
    wanted = resting.of_stamp(subject.record, subject.source.data, part)
    changes = changed_among(subject.source.data, part.facts, wanted)
    if changes:
        names = (*changes.changed, *changes.added, *changes.removed)
        edits = Items(tuple(_edits(changes)), "semicolon")
        found = message("rules/stale-verification/part-edited", id=part.id, date=part.on, edits=edits)
        about = tuple(step for name in names for step in name.split("/"))
        yield Finding(("verified_parts", part.id), found, key=True, about=about)


def _edits(changes: Changes) -> Iterator[Message]:
    if changes.changed:
        yield message("rules/stale-verification/changed", facts=some_of(changes.changed, _NAMED))
    if changes.added:
        yield message("rules/stale-verification/added", facts=some_of(changes.added, _NAMED))
    if changes.removed:
        yield message("rules/stale-verification/removed", facts=some_of(changes.removed, _NAMED))
