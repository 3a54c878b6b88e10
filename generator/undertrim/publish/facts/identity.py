"""Which cars a record is about: names, years, and what tells them from their neighbours."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive import cars
from undertrim.publish.encoding import Spread
from undertrim.publish.facts import phases, words
from undertrim.publish.facts.words import Clauses
from undertrim.record.implied import LISTS
from undertrim.record.model import VehicleRecord
from undertrim.words import Message, Value, message


@dataclass(frozen=True, slots=True)
class ModelYears:
    """The model years in words, the first and the last."""

    years: str
    first_year: int
    last_year: int


@dataclass(frozen=True, slots=True)
class BuiltMonths:
    """The first and the last month of build, and both in words."""

    built_from: str
    built_to: str
    built: Message
    built_words: Message


@dataclass(frozen=True, slots=True)
class ShownVinPattern:
    """How the numbers of some cars begin: the pattern, and in words and as data which cars they are (empty: every one)."""

    pattern: str
    when: Value
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class Identity:
    """What the cars of a record are called, when they were built and how they are told."""

    make: str
    model: str
    phase: str
    title: str
    model_years: Spread[ModelYears]
    months: Spread[BuiltMonths]
    tell: str
    bodies: Sequence[str]
    gearboxes: Sequence[Value]
    engines: Sequence[Value]
    trim_levels: Sequence[Value]
    drive_sides: Sequence[str]
    also_called: Sequence[str]
    vin: Sequence[ShownVinPattern]
    high_voltage: str
    forty_eight_volt: str | None
    follows: str
    follows_words: Value
    changed: Value


def identity(record: VehicleRecord) -> Identity:
    """What the cars of a record are called, when they were built and how they are told."""
    facts = record.vehicle
    return Identity(
        make=facts.make,
        model=facts.model,
        phase=facts.phase,
        title=f"{facts.make} {facts.model}",
        model_years=years(record),
        months=_built(record),
        tell=facts.tell,
        bodies=facts.bodies,
        gearboxes=_named(record, "gearbox"),
        engines=_named(record, "engine"),
        trim_levels=_named(record, "trim-level"),
        drive_sides=facts.drive_side,
        also_called=facts.also_called,
        vin=[ShownVinPattern(one.pattern, words.when(record, one.when), words.clauses(one.when)) for one in facts.vin],
        high_voltage=facts.high_voltage,
        forty_eight_volt=facts.forty_eight_volt,
        follows=facts.follows,
        follows_words=phases.before(record),
        changed=phases.changed(record),
    )


def _named(record: VehicleRecord, name: str) -> list[Value]:
    """The gearboxes, engines or trim levels as people read them."""
    return [cars.answer(name, choice).label for choice in getattr(record.vehicle, LISTS[name])]


def years(record: VehicleRecord) -> ModelYears:
    """The model years; those in which the cars were built where no others are recorded."""
    facts = record.vehicle
    stated = facts.model_years
    first, last = (stated.first, stated.last) if stated else (facts.built.from_.year, facts.built.to.year)
    span = f"{first}–{last}" if first != last else str(first)
    return ModelYears(span, first, last)


def _built(record: VehicleRecord) -> BuiltMonths:
    first, end = str(record.vehicle.built.from_), str(record.vehicle.built.to)
    return BuiltMonths(
        built_from=first,
        built_to=end,
        built=message("vehicle/built", first=first, end=end),
        built_words=message("vehicle/built-alone", first=first, end=end),
    )
