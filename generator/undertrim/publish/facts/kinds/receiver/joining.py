"""What a receiver is joined to at an opening, as the scripts reckon with it: wires, data, sound and duties, each with its cars. Nothing of it comes from the stock."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.evidence.disputed import open_disputes
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.duties import Outcome
from undertrim.derive.fit.duty_groups import outcomes_at
from undertrim.derive.fit.duty_kinds import kind_of, named
from undertrim.derive.fit.factory_sound import TURN_ON
from undertrim.derive.fit.kinds.receiver.functions import doubts_at
from undertrim.derive.fit.stock import NOTHING
from undertrim.derive.fit.stopping import TYPED
from undertrim.publish.facts import words
from undertrim.publish.facts.words import Clauses
from undertrim.record.model import Duty, Opening, VehicleRecord, When
from undertrim.words import Value, Word, word


@dataclass(frozen=True, slots=True)
class HadFunction:
    """A function that some cars have, and whether the evidence disagrees on it.

    `by` is `pin` for one that stands on a contact; one that comes as data has its `name`, since something must be got that brings it.
    """

    function: str
    name: Value
    by: str
    disputed: bool
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class HadSound:
    """A factory sound system: what its radio sends, whether an amplifier follows, and what wakes that."""

    output: str
    amplified: bool
    turn_on: str
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class DutyStop:
    """What becomes of a duty whatever the gear is, where that stops the job."""

    words: Value
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class HadDuty:
    """Something that the factory unit also does. Gear keeps it by one of the ids that it is `called`, through the function `lead` if it needs one.

    `grave` where a unit that no longer does it is no plain replacement.
    """

    name: Value
    called: Sequence[str]
    lead: str
    grave: bool
    kept_by: str
    clauses: Clauses
    stops: Sequence[DutyStop]


@dataclass(frozen=True, slots=True)
class Joining:
    """What a receiver is joined to, in each kind of car; `turn_on` is what the turn-on of an amplifier is called."""

    turn_on: Value
    functions: Sequence[HadFunction]
    sound: Sequence[HadSound]
    duties: Sequence[HadDuty]


def joining(vehicle: Vehicle, opening: Opening) -> Joining:
    """What a receiver at an opening is joined to; the record is one that is reckoned with."""
    record = vehicle.record
    had = {(one.function, one.by, one.disputed, str(one.clauses)): one for one in _functions(record)}
    return Joining(_called(TURN_ON), list(had.values()), list(_sound(record)), list(_duties(vehicle, opening)))


def _functions(record: VehicleRecord) -> Iterator[HadFunction]:
    for plug in (one for one in record.connectors.values() if one.at_radio):
        for pin in plug.pins.values():
            both = _both(plug.when, pin.when)
            if pin.function and both is not None:
                yield HadFunction(pin.function, "", "pin", bool(doubts_at(record, plug, pin)), words.clauses(both))
    for fact in record.functions.values():
        doubted = bool(open_disputes(record, "functions", fact.id))
        called = _called(fact.of) if fact.by == "data" else ""
        yield HadFunction(fact.of, called, fact.by, doubted, words.clauses(fact.when))


def _called(function: str) -> Word:
    return word("functions", "function", function, "words")


def _both(one: When, other: When) -> When | None:
    """The cars in which two conditions hold; None where there is no such car."""
    found = dict(one.clauses)
    for name, choices in other.clauses:
        found[name] = tuple(choice for choice in found.get(name, choices) if choice in choices)
    return When(tuple(found.items())) if all(found.values()) else None


def _sound(record: VehicleRecord) -> Iterator[HadSound]:
    for system in record.sound.values():
        yield HadSound(system.output, bool(system.amplifier), system.turn_on, words.clauses(system.when))


def _duties(vehicle: Vehicle, opening: Opening) -> Iterator[HadDuty]:
    record, found = vehicle.record, list(outcomes_at(vehicle.record, vehicle.address, NOTHING, opening, TYPED))
    for duty in record.duties.values():
        kind = kind_of(duty)
        yield HadDuty(
            name=named(duty.id),
            called=list(dict.fromkeys((duty.id, kind.id))),
            lead=kind.lead,
            grave=kind.grave,
            kept_by=duty.kept_by,
            clauses=words.clauses(duty.when),
            stops=[DutyStop(outcome.words, words.clauses(when)) for outcome, when in found if _settled(duty, outcome)],
        )


def _settled(duty: Duty, outcome: Outcome) -> bool:
    """Whether an outcome is that of a duty on which no gear has a say, and stops the job."""
    return duty.kept_by in ("stays", "moved") and outcome.duty == duty.id and outcome.stops
