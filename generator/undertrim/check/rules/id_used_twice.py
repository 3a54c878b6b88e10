"""A part and a preparation may not share an id, nor may two jobs.

## What it finds

An id that stands both under `parts` and under `preps`; a part or a cable run that is `reached_for` and has the id of an
opening, or of another thing that is reached for.

## Why it matters

`after` names parts and preparations alike, so a shared id can mean either: one of the two would silently
drop out of every procedure. A job is asked for by its id: of two, the opening would be meant and nobody could have the other.

## Bad

    parts:
      battery:    # here
        name: Battery
        release: lift

error: 'battery' is both a preparation and a part (give one of them another id: 'after' could mean either)

    parts:
      dash:
        name: Dash frame
        release: lift
        reached_for: Camera cable    # here

error: 'dash' is both an opening and what is reached for (give one of them another id: a job could mean either)

    parts:
      lining:
        name: Lining
        release: lift
        reached_for: Camera cable
    runs:
      lining:
        name: Behind the lining
        from: Tailgate
        to: Dash
        length: 4 m
        trims: [lining]
        reached_for: Camera cable    # here

error: 'lining' is both a part and a cable run that is reached for (give one of them another id: a job could mean either)

## Good

    parts:
      battery-cover:
        name: Battery cover
        release: lift
      dash:
        name: Dash frame
        release: lift
        tethers:
          battery: {name: Battery lead, kind: cable}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model import VehicleRecord, all_names
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every id that a part and a preparation share, at the later of the two, and every job that has another's."""
    for name in subject.record.parts.keys() & subject.record.preps.keys():
        places: list[Pointer] = [("parts", name), ("preps", name)]
        later = max(places, key=lambda place: subject.source.position(place, key=True))
        yield Finding(later, message("rules/id-used-twice/twice", name=name), key=True)
    yield from _jobs(subject.record)


def _jobs(record: VehicleRecord) -> Iterator[Finding]:
    openings, parts = all_names(record.openings.values()), set[str]()
    for one in record.reached:
        place = (one.section, one.id, "reached_for")
        if not openings.isdisjoint((one.id, one.written)):
            yield Finding(place, message("rules/id-used-twice/opening", name=one.id))
        elif one.id in parts:
            yield Finding(place, message("rules/id-used-twice/part", name=one.id))
        parts.add(one.id)
