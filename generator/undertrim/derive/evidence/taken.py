"""What nobody has seen on the record's own car: said beside each thing, and in the way of verifying.

That is what the record takes from others, and what stands in it since it is usual in such cars.
"""

from dataclasses import replace

from undertrim.derive.evidence.fingerprint import BY_ID
from undertrim.record.field_titles import FieldTitles
from undertrim.record.fields import root
from undertrim.record.model import VehicleRecord, VerifiedPart
from undertrim.record.source import Pointer
from undertrim.record.taken import Taken
from undertrim.words import Items, Message, message

SEEN = "seen"
USUAL = "usual"
"""What evidence says that is no look at any car."""
_DEPTH = 2
"""A thing has two steps: its section and its id."""


def unseen(record: VehicleRecord, *place: str | int) -> Message | None:
    """That a thing, or something in it, is taken from another car or only usual; None where somebody saw all of it on this one.

    `place` leads to a thing (section and id), or into one: then it is told where just that is taken.
    """
    return _taken(record, *place) or (message("usual/unseen") if place in usual(record) else None)


def usual(record: VehicleRecord) -> tuple[Pointer, ...]:
    """The things that rest on what is usual in such cars, whatever else is named beside that."""
    kept = {name for name, piece in record.evidence.items() if piece.how == USUAL}
    if not kept:
        return ()
    things = ((section, name, thing) for section in BY_ID for name, thing in getattr(record, section).items())
    return tuple((section, name) for section, name, thing in things if kept.intersection(getattr(thing, "source", ())))


def _taken(record: VehicleRecord, *place: str | int) -> Message | None:
    if not record.taken:
        return None
    car = record.taken.get(place)
    if car:
        return _said(record, car, place)
    inside = _inside(record, place) if len(place) == _DEPTH else []
    return _said(record, record.taken[inside[0]], place) if inside else None


def things(record: VehicleRecord) -> dict[Taken, list[Pointer]]:
    """The things that are taken in whole or in part, by the car they are taken from."""
    found: dict[Taken, dict[Pointer, None]] = {}
    for place, car in record.taken.items():
        found.setdefault(replace(car, own=()), {})[place[:_DEPTH]] = None
    return {car: list(places) for car, places in found.items()}


def is_unseen(record: VehicleRecord) -> bool:
    """Whether there is something that nobody has seen on this car."""
    return bool(record.taken or usual(record))


def is_seen(record: VehicleRecord) -> bool:
    """Whether somebody said that all of it was looked at on this car."""
    return bool(record.verified and record.verified.taken == SEEN)


def _said(record: VehicleRecord, car: Taken, place: Pointer) -> Message:
    stamp = record.verified if is_seen(record) else _part_seen(record, place)
    if stamp:
        return message("sharing/seen", car=car.said, on=stamp.on, by=stamp.by)
    if car.own:
        return message("sharing/unseen-but", car=car.said, fields=Items(tuple(map(_title, car.own))))
    return message("sharing/unseen", car=car.said)


def _part_seen(record: VehicleRecord, place: Pointer) -> VerifiedPart | None:
    """The stamp of a part by which somebody looked at a thing on this car too."""
    block = "/".join(map(str, place[:_DEPTH]))
    return next((one for one in record.verified_parts.values() if one.taken == SEEN and block in one.facts), None)


def _inside(record: VehicleRecord, place: Pointer) -> list[Pointer]:
    return [spot for spot in record.taken if spot[: len(place)] == place]


def _title(field: tuple[str, str]) -> FieldTitles:
    """What the schema calls a field of a section's things."""
    section, name = field
    thing = root("vehicle").child(section)
    of_thing = thing.child("*") if thing else None
    known = of_thing.child(name) if of_thing else None
    return FieldTitles((known.schema.get("title", name) if known else name,))
