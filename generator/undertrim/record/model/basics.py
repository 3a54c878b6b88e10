"""What every part of a record is made of: quantities, conditions, words."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated, Literal

from undertrim.record.units import Quantity
from undertrim.words import Language

Assignment = Mapping[str, str]  # variant -> choice, for one particular car


class Blank(StrEnum):
    """A word that stands where a quantity could: not known, or looked into and there is none."""

    UNKNOWN = "unknown"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Kind:
    """Marks an annotated quantity with the kind of unit it is typed in."""

    name: str


Length = Annotated[Quantity | Blank, Kind("length")]


Duration = Annotated[Quantity | Blank, Kind("time")]


Torque = Annotated[Quantity | Blank, Kind("torque")]


Impedance = Annotated[Quantity | Blank, Kind("resistance")]
Current = Annotated[Quantity | Blank, Kind("current")]
Voltage = Annotated[Quantity | Blank, Kind("voltage")]
Angle = Annotated[Quantity | Blank, Kind("angle")]
Share = Annotated[Quantity | Blank, Kind("share")]
Power = Annotated[Quantity | Blank, Kind("power")]
Charge = Annotated[Quantity | Blank, Kind("charge")]
Frequency = Annotated[Quantity | Blank, Kind("frequency")]


Count = int | Literal[Blank.UNKNOWN]


Known = Literal["yes", "no", "unknown"]


Decided = Literal["yes", "no"]


Side = Literal["left", "right"]


Sources = tuple[str, ...]


States = dict[str, str]


@dataclass(frozen=True, slots=True)
class When:
    """The variants something applies to: every clause must hold, each by any of its choices."""

    clauses: tuple[tuple[str, tuple[str, ...]], ...] = ()

    def holds(self, car: Assignment) -> bool:
        """Whether it applies to a car; a variant that `car` leaves open counts as holding."""
        # A check asks fifty thousand times, mostly without a clause.
        return not self.clauses or all(car.get(variant, choices[0]) in choices for variant, choices in self.clauses)

    @property
    def variants(self) -> frozenset[str]:
        """The variants it names."""
        return frozenset(variant for variant, _ in self.clauses)


ALWAYS = When()


class Written:
    """What is written under its own id, or under one for all kinds of car, `form_of`, where it stands here once for each kind."""

    __slots__ = ()
    id: str
    form_of: str

    @property
    def written(self) -> str:
        """The id under which it is written."""
        return self.form_of or self.id

    def is_named(self, name: str) -> bool:
        """Whether an id names it."""
        return name in (self.id, self.written)


def all_names(things: Iterable[Written]) -> set[str]:
    """All ids by which some things can be named."""
    return {name for thing in things for name in (thing.id, thing.written)}


@dataclass(frozen=True, slots=True)
class Month:
    """A month of build; comparable through `index`."""

    year: int
    month: int

    @property
    def index(self) -> int:
        """Months since year 0."""
        return self.year * 12 + self.month - 1

    def __str__(self) -> str:
        return f"{self.year:04}-{self.month:02}"

    def say(self, _: Language) -> str:
        """As typed, which is the same in every language."""
        return str(self)
