"""A verified record leaves no safety question open.

## What it finds

A `verified` stamp, or one of `verified_parts` for the facts that it stands for, on a record in which a safety fact is unknown, a conflict is not settled, or nobody has said
what to do around the battery: the restraint wait, a memory keeper, faults to read first, the crash pressure
sensor of a door, high voltage, and the torque of what holds a seat, belt or wheel.

## Why it matters

"Verified" on a page tells the tech that there is nothing left to look up. Where there is, the word is a trap.

## Bad

    restraint: {wait: unknown, memory_keeper: forbidden, read_faults_first: yes, source: e1}    # here
    preps:
      seat-loose:
        name: Seat loosened
        sets: {seat: forward}
        held_by:
          - {bolt: T50, count: 4, role: seat}    # here
        how: Take out the four bolts.
    openings:
      front-door:    # here
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel}
    verified: {on: 2026-04-02, by: rk, car: 2016, facts: {vehicle: 9f31c2aa}}

error: the torque of the seat bolt 'T50' at 'Seat loosened' is unknown (look it up in the maker's information, or remove 'verified')
error: it is unknown whether there is a crash pressure sensor at 'Front door speakers' (look it up in the maker's information, or remove 'verified')
error: the restraint wait is unknown (look it up in the maker's information, or remove 'verified')

    restraint: {wait: 3 min, memory_keeper: forbidden, read_faults_first: yes, source: e1}
    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: unknown    # here
    conflicts:
      dash-depth:    # here
        about: openings/dash/depth/clear
        claims: [{says: 170 mm, source: e1}, {says: 168 mm, source: e1}]
    verified: {on: 2026-04-02, by: rk, car: 2016, facts: {vehicle: 9f31c2aa}}

error: it is unknown whether the vehicle has a high-voltage system (look it up in the maker's information, or remove 'verified')
error: the conflict 'dash-depth' about 'openings/dash/depth/clear' is not settled (measure at a car, add the claim and name it in 'settled_by', or remove 'verified')

## Good

    restraint: {fitted: no, wait: none, memory_keeper: unknown, source: e1}
    preps:
      seat-loose:
        name: Seat loosened
        sets: {seat: forward}
        held_by:
          - {bolt: T50, count: 4, role: seat, torque: 40 N.m}
          - {bolt: T50, count: 1, role: belt, leave: yes}
          - {screw: T20, count: 2, torque: unknown}
        how: Take out the four bolts.
    openings:
      boot:
        name: Speaker beside the boot
        kind: speaker
        area: boot
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: no-glass}
    verified: {on: 2026-04-02, by: rk, car: 2016, facts: {vehicle: 9f31c2aa}}

Without a stamp a record may leave open whatever it likes.

    restraint: {wait: unknown}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.evidence.obstacles import Obstacle, in_the_way_of, obstacles
from undertrim.derive.evidence.taken import SEEN
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level
from undertrim.words import WayOut, message

LEVEL = Level.ERROR


def _in_the_way(record: VehicleRecord) -> tuple[Obstacle, ...]:
    """Of a record that is verified as a whole all, else what is in the way of its parts."""
    if record.verified is not None:
        return obstacles(record)
    parts = record.verified_parts.values()
    every = (item for part in parts for item in in_the_way_of(record, part.facts, taken_seen=part.taken == SEEN))
    return tuple(dict.fromkeys(every))


def check(subject: Subject) -> Iterator[Finding]:
    """Everything that stands in the way, in a record that is verified all the same."""
    for item in _in_the_way(subject.record):
        found = message("rules/verified-with-unknowns/in-the-way", what=item.said, where=WayOut(item.said))
        yield Finding(item.pointer, found, key=True, about=item.about)
