"""Which openings are recorded for which cars: one cell for each kind of car and opening, in three states.

A cell is `value` (the opening is recorded for that car), `none` (somebody looked into it and it is not there) or `missing`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from undertrim.derive import cars
from undertrim.record.model import Assignment, Opening, VehicleRecord
from undertrim.words import Items, Message, Value, message

VALUE, NONE, MISSING = "value", "none", "missing"
STATES = (VALUE, NONE, MISSING)


@dataclass(frozen=True, slots=True)
class Share:
    """How many of the cells have an answer."""

    answered: int
    cells: int

    @property
    def fraction(self) -> Fraction:
        """From 0 to 1; 0 where there are no cells."""
        return Fraction(self.answered, self.cells) if self.cells else Fraction(0)

    @property
    def percent(self) -> int:
        """In whole per cent, halves rounded up."""
        return int(self.fraction * 100 + Fraction(1, 2))

    def __add__(self, other: "Share") -> "Share":
        return Share(self.answered + other.answered, self.cells + other.cells)

    @property
    def said(self) -> Message:
        """In numbers: `7/9 = 78 %`."""
        return message("coverage/share", answered=self.answered, cells=self.cells, percent=self.percent)


@dataclass(frozen=True, slots=True)
class Row:
    """One kind of car with the state of each opening by id; `label` is the car in words."""

    car: Assignment
    label: Value
    cells: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Matrix:
    """Kinds of car, at least one, by openings."""

    openings: tuple[str, ...]
    rows: tuple[Row, ...]

    @property
    def share(self) -> Share:
        """Cells with a value or a found none, out of all."""
        states = [state for row in self.rows for state in row.cells.values()]
        return Share(sum(state != MISSING for state in states), len(states))

    @property
    def missing(self) -> dict[str, tuple[Row, ...]]:
        """Openings with missing cells, each with the cars nobody has said anything of."""
        found = {name: tuple(row for row in self.rows if row.cells[name] == MISSING) for name in self.openings}
        return {name: rows for name, rows in found.items() if rows}


def matrix(record: VehicleRecord) -> Matrix:
    """Every combination of the choices that some opening, or a fact inside one, depends on, against every opening."""
    rows = (Row(car, label(record, car), _cells(record, car)) for car in kinds_of_car(record))
    return Matrix(tuple(record.openings), tuple(rows))


def kinds_of_car(record: VehicleRecord) -> Sequence[dict[str, str]]:
    """The cars that differ in their openings; one that leaves everything open where none do."""
    used = {name for place, when in cars.conditions(record) if place[0] == "openings" for name in when.variants}
    return cars.told_apart(record, used)


def state(opening: Opening, car: Assignment) -> str:
    """What is known of an opening in one car: value, none or missing."""
    if opening.when.holds(car):
        return VALUE
    return NONE if any(absent.holds(car) for absent in opening.not_in) else MISSING


def label(record: VehicleRecord, car: Assignment) -> Value:
    """A car by the labels of its choices; every car where nothing varies."""
    known = cars.variants(record)
    labels = tuple(cars.label(known, name, choice) for name, choice in car.items())
    return Items(labels, "comma") if labels else message("cars/every")


def _cells(record: VehicleRecord, car: Assignment) -> dict[str, str]:
    return {name: state(opening, car) for name, opening in record.openings.items()}
