"""Holds a car that somebody looked at against the record: what cannot be so, and what was not said."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from undertrim.derive import cars
from undertrim.derive.evidence.seen import DRIVE_SIDE, UNKNOWN, Seen, answers, seen, shared
from undertrim.record.gear import AnyRecord
from undertrim.record.model import Built, CarSeen, VehicleRecord
from undertrim.record.source import Pointer


@dataclass(frozen=True, slots=True)
class Look:
    """One look at a car: the place in the record, how, the day and the car; `how` is `verified` for the stamp."""

    pointer: Pointer
    name: str
    how: str
    on: str
    car: CarSeen | None

    @property
    def at_a_car(self) -> bool:
        """Whether it was made at one car, and not read or told."""
        return self.how in ("measured", "seen", "verified")


class Why(StrEnum):
    """What about a car cannot be so."""

    YEAR = "year"
    """No car of the record is of that year."""
    MONTH_BESIDE_YEAR = "month-beside-year"
    """Month of build and year are too far apart."""
    BUILT = "built"
    """No car of the record is built in that month."""
    SIDE = "side"
    """The record has no car with the wheel on that side."""
    VARIANT = "variant"
    """The record has no such variant."""
    CHOICE = "choice"
    """The variant has no such choice."""
    CHOICE_THEN = "choice-then"
    """The choice was not built then."""


@dataclass(frozen=True, slots=True)
class Misfit:
    """One thing about the car that cannot be so: why, the field's keys below `car`, the value, and what the record has.

    Where several years are said of the car, `value` is the first and `until` the last.
    """

    why: Why
    field: tuple[str, ...]
    value: str
    has: tuple[str, ...]
    until: str = ""


def looks(record: AnyRecord) -> Iterator[Look]:
    """Every look that the record names: each piece of evidence and the stamp."""
    for item in record.evidence.values():
        yield Look(("evidence", item.id), item.id, item.how, item.on, item.car)
    if not isinstance(record, VehicleRecord):
        return
    stamp = record.verified
    if stamp:
        yield Look(("verified",), "verified", "verified", stamp.on, stamp.car)
    for part in record.verified_parts.values():
        yield Look(("verified_parts", part.id), part.id, "verified", part.on, part.car)


def misfits(record: VehicleRecord, car: CarSeen | None) -> Iterator[Misfit]:
    """What is said of a car that no car of this record can be."""
    known = seen(record, car)
    yield from _year(record, known)
    yield from _built(record, known)
    if known.side and known.side not in record.vehicle.drive_side:
        yield Misfit(Why.SIDE, ("side",), known.side, record.vehicle.drive_side)
    yield from _choices(record, known)


def unsaid(record: VehicleRecord, car: CarSeen | None) -> Iterator[str]:
    """What sets cars of this record apart and is not said of this one: `year`, `side`, names of variants."""
    known = seen(record, car)
    told = {**answers(record, known), **dict.fromkeys(known.unknown, "")}
    if (known.months is None or known.years) and "year" not in known.unknown:  # one car has one year
        yield "year"
    if len(record.vehicle.drive_side) > 1 and not known.side and "side" not in known.unknown:
        yield "side"
    yield from (name for name in cars.variants(record) if name not in told and name != DRIVE_SIDE)


def first_day(record: VehicleRecord, car: CarSeen | None) -> date:
    """The first day on which the car, or if that is not said a car of this record, can have been looked at."""
    earliest = record.vehicle.built.from_
    months = seen(record, car).months
    if months and months.from_.index > earliest.index:
        earliest = months.from_
    return date(earliest.year, earliest.month, 1)


def years(record: VehicleRecord) -> tuple[int, int]:
    """The first and last year that may stand for a car of this record, as year of build, model year or first registration.

    Where no model years are recorded, the last one may be a year after the last month of build.
    """
    built, model = record.vehicle.built, record.vehicle.model_years
    last = (built.to.index - 1) // 12
    if model:
        return min(built.from_.year, model.first), max(last, model.last)
    return built.from_.year, last + 1


def _year(record: VehicleRecord, known: Seen) -> Iterator[Misfit]:
    first, last = years(record)
    said = (known.year, known.year) if known.year else known.years
    if said and (said[1] < first or last < said[0]):
        until = str(said[1]) if said[0] != said[1] else ""
        yield Misfit(Why.YEAR, ("year",), str(said[0]), (str(first), str(last)), until)
    elif known.year and known.built and abs(known.year - known.built.year) > 1:
        yield Misfit(Why.MONTH_BESIDE_YEAR, ("year",), str(known.year), (str(known.built),))


def _built(record: VehicleRecord, known: Seen) -> Iterator[Misfit]:
    span = record.vehicle.built
    if known.built and not span.from_.index <= known.built.index < span.to.index:
        yield Misfit(Why.BUILT, ("built",), str(known.built), (str(span.from_), str(span.to)))


def _choices(record: VehicleRecord, known: Seen) -> Iterator[Misfit]:
    variants = {name: variant for name, variant in cars.variants(record).items() if name != DRIVE_SIDE}
    months = shared(known.months, record.vehicle.built) if known.months else None
    unknown = dict.fromkeys(sorted(known.unknown - {"year", "side"}), UNKNOWN)
    for name, choice in {**known.choices, **unknown}.items():
        if name not in variants:
            yield Misfit(Why.VARIANT, ("is", name), name, tuple(variants))
        elif choice != UNKNOWN:
            yield from _choice(variants[name], choice, months)


def _choice(variant: cars.AnyVariant, choice: str, months: Built | None) -> Iterator[Misfit]:
    place = ("is", variant.id)
    if choice not in variant.choices:
        yield Misfit(Why.CHOICE, place, choice, (variant.id, *variant.choices))
        return
    built = variant.choices[choice].built
    if built and months and not shared(months, built):
        yield Misfit(Why.CHOICE_THEN, place, choice, (variant.id, str(built.from_), str(built.to)))
