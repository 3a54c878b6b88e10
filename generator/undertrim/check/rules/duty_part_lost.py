"""A duty goes where the part that carries it goes.

## What it finds

A duty whose `part` the record does not have; one that `stays` in a part that is replaced; and one that is `moved` with
a part that goes to no new place.

## Why it matters

The hazard switch does not stay if its bezel is thrown away, and a climate panel that nobody moves over is lost.

## Bad

    parts:
      bezel: {name: Bezel, release: pull, replaced: yes}
      panel: {name: Climate panel, release: pull}
    duties:
      hazard-switch: {kept_by: stays, part: bezel}    # here
      climate: {kept_by: moved, part: panel}    # here
      clock: {kept_by: stays, part: panle}    # here

error: 'hazard-switch' stays in 'bezel', which is replaced (say what becomes of it when that part is gone: 'none', 'interface' or 'moved')
error: 'climate' moves with 'panel', which goes nowhere (say by 'goes_to' to which opening the part moves)
error: no part 'panle' (did you mean 'panel'?)

## Good

    parts:
      bezel: {name: Bezel, release: pull}
      panel: {name: Climate panel, release: pull, goes_to: dash}
    openings:
      dash:
        name: Radio opening
        kind: receiver
        behind: [radio, bezel, panel]
        face: {width: 182 mm, height: 112 mm}
        depth: {clear: 172 mm, datum: face, to: Cross-beam}
        kit: needed
    duties:
      hazard-switch: {kept_by: stays, part: bezel}
      climate: {kept_by: moved, part: panel}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Duty, VehicleRecord
from undertrim.record.nearness import suggestion
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every duty whose part does not do what is said of it."""
    for duty in subject.record.duties.values():
        if duty.part and subject.intact(("duties", duty.id)):
            yield from _part(subject.record, duty)


def _part(record: VehicleRecord, duty: Duty) -> Iterator[Finding]:
    place, part = ("duties", duty.id, "part"), record.parts.get(duty.part)
    if part is None:
        hint = suggestion(duty.part, list(record.parts), message("rules/duty-part-lost/parts-here"))
        yield Finding(place, message("rules/duty-part-lost/no-part", part=duty.part, hint=hint))
    elif duty.kept_by == "stays" and part.replaced == "yes":
        found = message("rules/duty-part-lost/part-replaced", duty=duty.id, part=part.id)
        yield Finding(place, found, about=(part.id,))
    elif duty.kept_by == "moved" and not part.goes_to:
        found = message("rules/duty-part-lost/part-goes-nowhere", duty=duty.id, part=part.id)
        yield Finding(place, found, about=(part.id,))
