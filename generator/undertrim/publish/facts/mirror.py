"""A record read for the other drive side, as data: what is known there, what to ask, what is not there."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive import mirroring
from undertrim.publish.encoding import Spread
from undertrim.record.model import Side, VehicleRecord
from undertrim.words import Message, Value, message


@dataclass(frozen=True, slots=True)
class MirroredFact:
    """A fact about sides: the place in the record, what has it, and what it is, as recorded."""

    place: str
    name: str
    fact: str
    fact_words: Value
    recorded: Value


@dataclass(frozen=True, slots=True)
class KnownThere:
    """What a fact is on the other drive side; `was` is what is recorded, empty where that is the same."""

    about: Spread[MirroredFact]
    there: Value | None
    words: Value
    was: Value


@dataclass(frozen=True, slots=True)
class AskedThere:
    """A fact that must be asked on the other drive side."""

    about: Spread[MirroredFact]
    ask: Message
    was: Value


@dataclass(frozen=True, slots=True)
class Mirrored:
    """What the record knows of sides in cars of a drive side; `unsaid` are the places it says nothing of, each list with its names."""

    vehicle: str
    drive_side: Side
    recorded_on: Side
    known: Sequence[KnownThere]
    questions: Sequence[AskedThere]
    not_there: Sequence[str]
    not_there_names: Sequence[str]
    unsaid: Sequence[str]
    unsaid_names: Sequence[str]


def mirror(record: VehicleRecord, address: str, drive_side: Side) -> Mirrored:
    """What the record knows of sides in cars of a drive side."""
    facts = mirroring.mirrored(record, drive_side)
    called = {place: thing.name for place, thing in mirroring.things(record)}
    not_there = [place for place, thing in mirroring.things(record) if not mirroring.exists(thing, drive_side)]
    unsaid = mirroring.unsaid(record, drive_side)
    return Mirrored(
        vehicle=address,
        drive_side=drive_side,
        recorded_on=record.vehicle.drive_side[0],
        known=[_known(fact, drive_side) for fact in facts if fact.there is not None],
        questions=[_question(fact) for fact in facts if fact.there is None],
        not_there=not_there,
        not_there_names=[called[place] for place in not_there],
        unsaid=unsaid,
        unsaid_names=[called[place] for place in unsaid],
    )


def _known(fact: mirroring.Sided, drive_side: Side) -> KnownThere:
    there = fact.there
    words = mirroring.side_words(there, drive_side) if fact.fact == "side" and isinstance(there, str) else _value(there)
    was = _value(fact.recorded) if fact.recorded != there else ""
    return KnownThere(_about(fact), there, words, was)


def _question(fact: mirroring.Sided) -> AskedThere:
    return AskedThere(_about(fact), fact.ask, _value(fact.recorded))


def _about(fact: mirroring.Sided) -> MirroredFact:
    words = message(f"mirror/about-{fact.fact}", fastener=fact.fastener) if fact.fact in _SAID else ""
    return MirroredFact(fact.place, fact.name, fact.fact, words, fact.recorded)


_SAID = ("direction", "edges", "text")
"""Facts whose value does not say by itself what it is."""


def _value(found: Value | None) -> Value:
    """A side or a direction in words; what else is recorded says itself."""
    return message(f"sides/{found}") if isinstance(found, str) and found in mirroring.OTHER else found or ""
