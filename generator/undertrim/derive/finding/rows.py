"""What the finder knows of each vehicle, and the words that people type beside names."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from undertrim.words import Value


class FinderJob(NamedTuple):
    """What can be worked at: its id, its name with its side, and the kind of gear that it takes (empty: it is only reached for)."""

    id: str
    name: str
    kind: str


class Row(NamedTuple):
    """A vehicle, in the order in which the index has it. `whose` is said where a shop's own collection lies on shared ones.

    Years are model years, both covered; months (`2014-03`) are of the building, the last not covered. `vin` has patterns, each with the choices
    that it leaves of some variants, as data and in words.
    """

    address: str
    make: str
    model: str
    first_year: int
    last_year: int
    phase: str
    others: Sequence[str]
    built_from: str
    built_to: str
    bodies: Sequence[str]
    sides: Sequence[str]
    tell: str
    jobs: Sequence[FinderJob]
    vin: Sequence[tuple[str, Mapping[str, Sequence[str]], Value]]
    whose: str = ""

    @property
    def names(self) -> tuple[str, ...]:
        """By what it is called."""
        return (self.make, self.model, *self.others, *((self.phase,) if self.phase else ()))


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """Words of the reader's language: the months from January on, what stands between two times, what may be left out, and phrases with what they mean.

    A meaning is of a sort (`body`, `side` or `kind`) and a value of it.
    """

    months: Sequence[str]
    between: Sequence[str]
    idle: Sequence[str]
    phrases: Mapping[str, Sequence[tuple[str, str]]]
