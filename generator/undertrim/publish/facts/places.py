"""On which side of the car a thing is, in words, for each drive side that the record covers."""

from dataclasses import dataclass

from undertrim.derive import mirroring
from undertrim.publish.facts import words
from undertrim.record.model import Side, VehicleRecord, When
from undertrim.words import Value, message

_NOT_KNOWN = message("mirror/not-known")


@dataclass(frozen=True, slots=True)
class Placed:
    """A side of the car, and in words, with the cars for which it is that side; empty for all. Where it is not known, `side` is empty."""

    side: str
    text: Value
    when: Value
    clauses: words.Clauses


def places(record: VehicleRecord, thing: mirroring.Thing) -> list[Placed]:
    """Words such as `left (passenger side)`, with the cars they are for where drive sides differ; empty where no side is recorded."""
    if not thing.on_side:
        return []
    drive_sides = [side for side in record.vehicle.drive_side if mirroring.exists(thing, side)]
    return [_place(record, thing, side, several=len(drive_sides) > 1) for side in drive_sides]


def _place(record: VehicleRecord, thing: mirroring.Thing, drive_side: Side, *, several: bool) -> Placed:
    side = mirroring.side_on(record, thing, drive_side)
    only = When((("drive-side", (drive_side,)),) if several else ())
    return Placed(
        side=side or "",
        text=mirroring.side_words(side, drive_side) if side else _NOT_KNOWN,
        when=words.when(record, only),
        clauses=words.clauses(only),
    )
