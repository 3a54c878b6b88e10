"""The shapes of what changed."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from undertrim.derive.fit.verdict import Fit
from undertrim.derive.procedure.steps import Step
from undertrim.record.gear import GearRecord
from undertrim.record.model import Evidence, VehicleRecord
from undertrim.record.problem import Problem
from undertrim.record.source import Data, Pointer
from undertrim.words import Value


class Weight(StrEnum):
    """How closely to look, the first first."""

    WEAKER = "weaker"
    """A safety fact is less cautious than it was, and nobody new says so."""
    CARE = "care"
    """Power, battery, glass, a verdict that became yes, or a safety fact that somebody new makes lighter."""
    PLAIN = "plain"


class Sort(StrEnum):
    """What became of a fact, a step or a piece."""

    ADDED = "added"
    GONE = "gone"
    CHANGED = "changed"
    MOVED = "moved"
    RENAMED = "renamed"
    KNOWN = "known"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Side:
    """A vehicle on one side of the comparison: its record with the address, its data as typed and spread out, and what the check finds."""

    record: VehicleRecord
    address: str
    data: Data
    problems: tuple[Problem, ...] = ()


@dataclass(frozen=True, slots=True)
class GearSide:
    """A piece of gear on one side of the comparison: its record with the id, its data as typed, and what the check finds."""

    record: GearRecord
    id: str
    data: Data
    problems: tuple[Problem, ...] = ()


@dataclass(frozen=True, slots=True)
class FactChange:
    """One fact that is another one, new or gone. `thing` tells a whole part, plug or entry from a field of it; `why` says why it is not plain.

    `said_by` are the ids of the evidence on either side, `same_source` whether that is the same evidence in the same words.
    """

    pointer: Pointer
    name: Value
    sort: Sort
    before: str
    after: str
    weight: Weight = Weight.PLAIN
    why: Value = ""
    thing: bool = False
    said_before: tuple[Evidence, ...] = ()
    said_after: tuple[Evidence, ...] = ()
    same_source: bool = True
    taken: str = ""
    """The address of the record that it is taken from, which says who saw it."""
    lighter: bool = False
    """Whether it is less cautious than it was, whoever says so."""


@dataclass(frozen=True, slots=True)
class Detail:
    """One thing about a step or a visit that is another one: `what` names it, such as `tools`; before and after may be empty."""

    what: str
    before: Value = ""
    after: Value = ""
    weight: Weight = Weight.PLAIN


@dataclass(frozen=True, slots=True)
class StepChange:
    """One step of a visit; `follows` is the step that now comes before it, where it is new or stands elsewhere."""

    id: str
    sort: Sort
    before: Step | None
    after: Step | None
    details: tuple[Detail, ...] = ()
    weight: Weight = Weight.PLAIN
    follows: Step | None = None

    @property
    def step(self) -> Step:
        """The step as it is, or was."""
        step = self.after or self.before
        assert step
        return step


@dataclass(frozen=True, slots=True)
class VisitChange:
    """What changed in one or several visits alike: the jobs, the kinds of car (empty for all), the steps, and what the whole comes to."""

    jobs: tuple[str, ...]
    cars: tuple[Mapping[str, str], ...]
    steps: tuple[StepChange, ...]
    totals: tuple[Detail, ...]
    minutes: float = 0.0
    """How much longer it takes by the recorded times; less where it is below zero."""

    @property
    def more(self) -> int:
        """How many more steps there are."""
        return sum({Sort.ADDED: 1, Sort.GONE: -1}.get(one.sort, 0) for one in self.steps)


@dataclass(frozen=True, slots=True)
class VerdictChange:
    """One piece of gear in one opening that another verdict is true of; no verdict on the side on which there is no such gear or opening."""

    opening: str
    gear: str
    name: str
    cars: tuple[Mapping[str, str], ...]
    before: Fit | None
    after: Fit | None
    weight: Weight = Weight.PLAIN


@dataclass(frozen=True, slots=True)
class MarginChange:
    """Gear in one opening that keeps its verdict with more or less room: how many pieces, and the least and most in mm by which."""

    opening: str
    count: int
    least: float
    most: float


@dataclass(frozen=True, slots=True)
class JointChange:
    """One row of joints that is another one, with the names of the lead sets for which it is the same."""

    opening: str
    function: str
    cars: tuple[Mapping[str, str], ...]
    before: Value
    after: Value
    leads: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BlockerChange:
    """Something that stands in the way now, or no longer."""

    sort: Sort
    weight: str
    title: Value
    text: Value


@dataclass(frozen=True, slots=True)
class StampChange:
    """What became of the record's verification: the words before and after, and the blocks of facts that are no longer covered."""

    before: str
    after: str
    lost: tuple[Value, ...]
