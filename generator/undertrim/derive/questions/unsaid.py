"""What nobody ever said: functions, doors that the body has, sides; and what stands as unknown wherever it is."""

from collections.abc import Iterator

from undertrim.derive import coverage
from undertrim.derive.evidence.fingerprint import BY_ID, WHOLE
from undertrim.derive.questions.asked import Asked
from undertrim.derive.questions.forms import UNKNOWN
from undertrim.derive.questions.named import field_words
from undertrim.derive.questions.question import Sort
from undertrim.derive.wiring.leads import named
from undertrim.record.changing.edits import at
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.receiver import ReceiverOpening
from undertrim.record.source import Data, Pointer, Source
from undertrim.resources import table
from undertrim.words import message


def asked(record: VehicleRecord, source: Source) -> Iterator[Asked]:
    """What the record is silent about."""
    yield from _functions(record)
    yield from _doors(record)
    yield from _sides(record)
    yield from _after_battery(record, source)


def openings(record: VehicleRecord) -> Iterator[Asked]:
    """Openings of which nobody has said whether a kind of car has them; each kind is asked for itself."""
    for name, rows in coverage.matrix(record).missing.items():
        for row in rows:
            ask = message("measuring/missing", opening=record.openings[name].name, car=row.label)
            yield Asked(Sort.MISSING, ("openings", name), ask, cars=row.car)


def _functions(record: VehicleRecord) -> Iterator[Asked]:
    """Functions that a receiver may ask for, of which neither a pin nor 'functions' speaks."""
    if not any(isinstance(opening, ReceiverOpening) for opening in record.openings.values()):
        return
    pins = {pin.function for plug in record.connectors.values() for pin in plug.pins.values()}
    known = pins | {fact.of for fact in record.functions.values()}
    for name in table("questions")["functions"]:
        if name not in known:
            ask = message("measuring/function", function=named(name))
            yield Asked(Sort.FUNCTION, ("functions", name), ask)


def _doors(record: VehicleRecord) -> Iterator[Asked]:
    """Doors that the body has, in which the record has no opening: that takes a person who takes the door apart."""
    there = {opening.area for opening in record.openings.values()}
    bodies = table("questions")["doors"]
    doors = dict.fromkeys(door for body in record.vehicle.bodies for door in bodies.get(body, ()))
    for door in doors:
        if door not in there:
            ask = message("questions/door", area=message(f"areas/{door}"))
            yield Asked(Sort.MISSING, ("areas", door), ask, bare=True, nothing=True)


def _sides(record: VehicleRecord) -> Iterator[Asked]:
    """Things on one side of a car that is built with the wheel on both, of which nobody said whether they mirror."""
    if len(record.vehicle.drive_side) < 2:
        return
    for part in record.parts.values():
        if part.on_side and not part.mirrors:
            yield Asked(Sort.SIDE, ("parts", part.id, "mirrors"), message("questions/mirrors", thing=part.name))


def _after_battery(record: VehicleRecord, source: Source) -> Iterator[Asked]:
    if record.after_battery is None or at(source.data, ("after_battery",)) == UNKNOWN:
        yield Asked(Sort.OTHER, ("after_battery",), message("questions/after-battery"), bare=True, nothing=True)


def unknown(source: Source) -> Iterator[Asked]:
    """Every value of the whole that is unknown."""
    for place in _unknown(source.data, ()):
        if place[0] in (*BY_ID, *WHOLE):
            thing = at(source.data, place[:2])
            name = thing.get("name") if isinstance(thing, dict) else None
            field = field_words(source.data, place)
            yield Asked(Sort.OTHER, place, message("questions/find-out", thing=str(name or place[1]), field=field))


def _unknown(data: Data, place: Pointer) -> Iterator[Pointer]:
    if isinstance(data, dict):
        for key, inner in data.items():
            yield from _unknown(inner, (*place, key))
    elif isinstance(data, list):
        for number, inner in enumerate(data):
            yield from [place] if inner == UNKNOWN else _unknown(inner, (*place, number))
    elif data == UNKNOWN:
        yield place
