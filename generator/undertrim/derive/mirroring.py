"""What is known of the other drive side: facts about left and right, carried over from the cars they were taken on.

Sides are recorded as they are in a car of the record's first drive side, or of the first on which the thing exists. What mirrors
changes sides with the steering wheel, what does not stays, and what nobody has looked into becomes a question.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from undertrim.derive.fastener_words import many, one
from undertrim.derive.sided_texts import texts
from undertrim.record.model import ALWAYS, Opening, Part, Prep, Side, VehicleRecord, When
from undertrim.words import Message, Value, message

Thing = Part | Prep | Opening

OTHER: dict[str, Side] = {"left": "right", "right": "left"}


@dataclass(frozen=True, slots=True)
class Sided:
    """One fact about sides: as recorded, and as it is on the other drive side; `there` is None where that must be asked.

    `fact` is side, place, direction, edges or text; of a side and a direction the values are left and right. `fastener` is the sort
    whose edges it is about.
    """

    place: str
    name: str
    fact: str
    recorded: Value
    there: Value | None
    ask: Message
    fastener: Value = ""


def side_words(side: str, drive_side: Side) -> Message:
    """A side with who sits there: `left (passenger side)`."""
    called = message(f"sides/{side}")
    return message("mirror/driver", side=called) if side == drive_side else message("mirror/passenger", side=called)


def exists(thing: Thing, drive_side: Side) -> bool:
    """Whether a thing is in some car of a drive side."""
    return thing.when.holds({"drive-side": drive_side})


def own_side(thing: Thing) -> Side | None:
    """The side that is recorded for a thing that exists once."""
    each = () if isinstance(thing, Prep) else thing.each
    return thing.on_side or (each[0] if len(each) == 1 else None)


def side_on(record: VehicleRecord, thing: Thing, drive_side: Side) -> Side | None:
    """The side of a thing in cars of a drive side; None where it is not known or there is none."""
    side = own_side(thing)
    moves = changes(record, thing, drive_side)
    return side if side is None or moves is False else OTHER[side] if moves else None


def changes(record: VehicleRecord, thing: Thing, drive_side: Side, when: When = ALWAYS) -> bool | None:
    """Whether left and right are exchanged against how they were recorded, for a fact that holds in `when`; None if unknown."""
    if drive_side == recorded_on(record, thing, when):
        return False
    return {"yes": True, "no": False}.get(thing.mirrors or "")


def recorded_on(record: VehicleRecord, thing: Thing, when: When = ALWAYS) -> Side:
    """The drive side of the cars that a fact about a thing was taken on."""
    sides = record.vehicle.drive_side
    return next((side for side in sides if exists(thing, side) and when.holds({"drive-side": side})), sides[0])


def things(record: VehicleRecord) -> Iterator[tuple[str, Thing]]:
    """Every preparation, part and opening with its place."""
    sections: dict[str, Mapping[str, Thing]] = {
        "preps": record.preps,
        "parts": record.parts,
        "openings": record.openings,
    }
    for section, held in sections.items():
        yield from ((f"{section}/{name}", thing) for name, thing in held.items())


def mirrored(record: VehicleRecord, drive_side: Side) -> tuple[Sided, ...]:
    """All facts about sides for cars of a drive side; what exists on both sides anyway, or not there at all, has none."""
    return tuple(
        fact
        for place, thing in things(record)
        if exists(thing, drive_side) and not _on_both(thing)
        for fact in (*_side(record, place, thing, drive_side), *_ways(record, place, thing, drive_side))
    )


def unsaid(record: VehicleRecord, drive_side: Side) -> tuple[str, ...]:
    """Places of things that exist once, of which nothing tells whether they change sides."""
    told = {fact.place for fact in mirrored(record, drive_side)}
    found = ((place, thing) for place, thing in things(record) if exists(thing, drive_side) and not _on_both(thing))
    return tuple(place for place, thing in found if place not in told and changes(record, thing, drive_side) is None)


def _on_both(thing: Thing) -> bool:
    return not isinstance(thing, Prep) and len(thing.each) == len(OTHER)


def _side(record: VehicleRecord, place: str, thing: Thing, drive_side: Side) -> Iterator[Sided]:
    """Where the thing is; without a side, at least whether it moves."""
    side, moves = own_side(thing), changes(record, thing, drive_side)
    if side:
        ask = message("mirror/which-side", thing=thing.name)
        yield Sided(place, thing.name, "side", side, side_on(record, thing, drive_side), ask)
    elif thing.mirrors:
        there = None if moves is None else message("mirror/other-side") if moves else message("mirror/same-place")
        yield Sided(place, thing.name, "place", "", there, message("mirror/same-place-asked", thing=thing.name))


def _ways(record: VehicleRecord, place: str, thing: Thing, drive_side: Side) -> Iterator[Sided]:
    """Which way it goes, how its fasteners are spread, and texts to read again."""
    moves = changes(record, thing, drive_side)
    if isinstance(thing, Part) and thing.direction in OTHER:
        ask = message("mirror/which-way", thing=thing.name)
        yield Sided(place, thing.name, "direction", thing.direction, _across(thing.direction, moves), ask)
    yield from _edges(record, place, thing, drive_side)
    if moves:
        for word, text in texts(thing):
            ask = message("mirror/text-true", thing=thing.name, word=word)
            yield Sided(place, thing.name, "text", text, None, ask)


def _edges(record: VehicleRecord, place: str, thing: Thing, drive_side: Side) -> Iterator[Sided]:
    for item in () if isinstance(thing, Opening) else thing.held_by:
        left, right = (item.at.get(edge, 0) for edge in OTHER)
        if left != right and item.when.holds({"drive-side": drive_side}):
            moves = changes(record, thing, drive_side, item.when)
            there = None if moves is None else _spread(right, left) if moves else _spread(left, right)
            ask = message("mirror/edges-asked", fasteners=many(item), thing=thing.name)
            yield Sided(place, thing.name, "edges", _spread(left, right), there, ask, one(item))


def _across(way: str, moves: bool | None) -> str | None:
    return None if moves is None else OTHER[way] if moves else way


def _spread(left: int, right: int) -> Message:
    return message("mirror/spread", left=left, right=right)
