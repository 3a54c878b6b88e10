"""Which car somebody looked at: read from the fields of a piece of evidence, or from its one line of text.

The line is split at commas. What is a year, `built` with a month, a steering side or the name of a variant's choice is read;
anything else stays a note, and what was not read counts as not said. A paper may be for several years: `2014 to 2018`.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from undertrim.derive import cars
from undertrim.record.model import Blank, Built, CarSeen, Month, VehicleRecord
from undertrim.words import Items, Value, message

DRIVE_SIDE = "drive-side"
UNKNOWN = str(Blank.UNKNOWN)

_YEAR = re.compile(r"(?:19|20)[0-9]{2}")
_YEARS = re.compile(r"((?:19|20)[0-9]{2}) to ((?:19|20)[0-9]{2})")
_BUILT = re.compile(r"built ((?:19|20)[0-9]{2})-(0[1-9]|1[0-2])")
_SIDES = {"left-hand drive": "left", "lhd": "left", "right-hand drive": "right", "rhd": "right"}


@dataclass(frozen=True, slots=True)
class Seen:
    """What is known of the car. `unknown` are the names of what the record says nobody noted: `year`, `side`, variants."""

    year: int | None = None
    built: Month | None = None
    side: str = ""
    choices: Mapping[str, str] = field(default_factory=dict)
    notes: tuple[str, ...] = ()
    unknown: frozenset[str] = frozenset()
    years: tuple[int, int] | None = None
    """First and last year of what is said of several: a paper of the maker."""

    @property
    def months(self) -> Built | None:
        """The months in which it may have been built; None where neither month nor year is said.

        A model year may begin in the calendar year before it, and a car may be registered in the year after it was built.
        """
        if self.built:
            return Built(self.built, _later(self.built, 1))
        first, last = self.years or (self.year, self.year)
        return Built(Month(first - 1, 1), Month(last + 1, 1)) if first and last else None


def seen(record: VehicleRecord, car: CarSeen | None) -> Seen:
    """What is known of a car that was looked at."""
    if car is None:
        return Seen()
    return _read(record, car.text) if car.text else _typed(car)


def answers(record: VehicleRecord, known: Seen) -> dict[str, str]:
    """The choice of each variant the car is known to have, those that follow from its month of build and side included."""
    sides = record.vehicle.drive_side
    side = {DRIVE_SIDE: known.side} if known.side and len(sides) > 1 else {}
    return {**_by_month(record, known.months), **side, **known.choices}


def shown(record: VehicleRecord, car: CarSeen | None) -> Value:
    """The car: its line of text, or `2016, built 2016-04, left-hand drive, Map radio`; empty where it is not said."""
    if car is None or car.text:
        return car.text if car else ""
    said = tuple(_words(record, car))
    return Items(said, "comma") if said else ""


def _words(record: VehicleRecord, car: CarSeen) -> Iterator[Value]:
    if car.year:
        yield message("evidence/year-unknown") if car.year == UNKNOWN else str(car.year)
    if car.built:
        yield message("evidence/built", month=str(car.built))
    if car.side:
        yield message(f"evidence/side-{car.side}")
    known = cars.variants(record)
    for name, choice in car.is_.items():
        there = name in known and choice in known[name].choices
        yield cars.label(known, name, choice) if there else message("evidence/choice", variant=name, choice=choice)
    if car.note:
        yield car.note


def _typed(car: CarSeen) -> Seen:
    said: dict[str, object] = {"year": car.year, "side": car.side, **car.is_}
    return Seen(
        car.year if isinstance(car.year, int) else None,
        car.built,
        car.side if car.side and car.side != UNKNOWN else "",
        {name: choice for name, choice in car.is_.items() if choice != UNKNOWN},
        (car.note,) if car.note else (),
        frozenset(name for name, value in said.items() if value == UNKNOWN),
    )


def _read(record: VehicleRecord, text: str) -> Seen:
    """The line of text, clause by clause."""
    names = _choice_names(record)
    year, years, built, side, choices, notes = None, None, None, "", {}, []
    for clause in filter(None, (" ".join(part.split()) for part in text.split(","))):
        word = clause.casefold()
        month, several = _BUILT.fullmatch(word), _YEARS.fullmatch(word)
        if _YEAR.fullmatch(word):
            year = int(word)
        elif several:
            years = (int(several[1]), int(several[2]))
        elif month:
            built = Month(int(month[1]), int(month[2]))
        elif word in _SIDES:
            side = _SIDES[word]
        elif word in names:
            choices[names[word][0]] = names[word][1]
        else:
            notes.append(clause)
    return Seen(year, built, side, choices, tuple(notes), years=years)


def _choice_names(record: VehicleRecord) -> dict[str, tuple[str, str]]:
    """What the choices are called: label or id; a name that two variants share says nothing."""
    found: dict[str, set[tuple[str, str]]] = {}
    for variant in cars.variants(record).values():
        for choice in variant.choices.values() if variant.id != DRIVE_SIDE else ():
            label = choice.label if isinstance(choice.label, str) else choice.id
            for name in {label.casefold(), choice.id}:
                found.setdefault(" ".join(name.split()), set()).add((variant.id, choice.id))
    return {name: next(iter(pairs)) for name, pairs in found.items() if len(pairs) == 1}


def _by_month(record: VehicleRecord, months: Built | None) -> dict[str, str]:
    """The choices that the months of build decide."""
    vehicle = record.vehicle.built
    span = shared(months, vehicle) if months else None
    return {
        variant.id: choice.id
        for variant in record.variants.values()
        for choice in variant.choices.values()
        if span and choice.built and _within(span, choice.built)
    }


def shared(one: Built, other: Built) -> Built | None:
    """The months that two spans share; None if there are none."""
    first = max(one.from_, other.from_, key=lambda month: month.index)
    span = Built(first, min(one.to, other.to, key=lambda month: month.index))
    return span if span.from_.index < span.to.index else None


def _within(inner: Built, outer: Built) -> bool:
    return outer.from_.index <= inner.from_.index and inner.to.index <= outer.to.index


def _later(month: Month, by: int) -> Month:
    index = month.index + by
    return Month(index // 12, index % 12 + 1)
