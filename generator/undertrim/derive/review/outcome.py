"""What all changes come to: of a vehicle, of a piece of gear, of the collection."""

from dataclasses import dataclass, field

from undertrim.derive.review.change import (
    BlockerChange,
    Detail,
    FactChange,
    JointChange,
    MarginChange,
    Side,
    Sort,
    StampChange,
    VerdictChange,
    VisitChange,
    Weight,
)
from undertrim.record.problem import Problem
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class VehicleChange:
    """All that changed for one vehicle; `was` is the address that it had, where that is another one."""

    address: str
    title: str
    was: str = ""
    facts: tuple[FactChange, ...] = ()
    visits: tuple[VisitChange, ...] = ()
    refused: tuple[Value, ...] = ()
    verdicts: tuple[VerdictChange, ...] = ()
    margins: tuple[MarginChange, ...] = ()
    joints: tuple[JointChange, ...] = ()
    blockers: tuple[BlockerChange, ...] = ()
    conflicts: tuple[FactChange, ...] = ()
    evidence: tuple[Detail, ...] = ()
    stamp: StampChange | None = None
    photos: tuple[str, ...] = ()
    """Photographs whose files are others, new or gone."""
    found: tuple[Problem, ...] = ()
    mended: tuple[Problem, ...] = ()
    sides: tuple[Side, Side] | None = field(default=None, compare=False, repr=False)
    """Both records, for whoever draws them."""

    @property
    def empty(self) -> bool:
        """Whether nothing changed for anybody."""
        said = (self.facts, self.visits, self.refused, self.verdicts, self.margins, self.joints, self.blockers)
        more = (self.conflicts, self.evidence, self.photos, self.found, self.mended)
        return not any((*said, *more)) and self.stamp is None and not self.was

    @property
    def weight(self) -> Weight:
        """The heaviest of all."""
        steps = {one.weight for visit in self.visits for one in visit.steps}
        found = steps | {one.weight for one in self.facts} | {one.weight for one in self.verdicts}
        return next((weight for weight in Weight if weight in found), Weight.PLAIN)


@dataclass(frozen=True, slots=True)
class GearChange:
    """What changed about a piece of gear itself; what that does to vehicles stands with them. `was` is the id that it had."""

    id: str
    name: str
    kind: str
    sort: Sort
    was: str = ""
    facts: tuple[FactChange, ...] = ()
    found: tuple[Problem, ...] = ()
    mended: tuple[Problem, ...] = ()


@dataclass(frozen=True, slots=True)
class Short:
    """A vehicle of which little is to be said: it is new or gone, or its record cannot be read on a side (`why`)."""

    address: str
    title: str
    sort: Sort
    jobs: tuple[str, ...] = ()
    verified: bool = False
    found: tuple[Problem, ...] = ()
    why: Value = ""


@dataclass(frozen=True, slots=True)
class Review:
    """All that the changes of a collection do: `base` is what it was compared with."""

    base: str
    vehicles: tuple[VehicleChange, ...]
    shorts: tuple[Short, ...]
    gear: tuple[GearChange, ...]
    found: tuple[Problem, ...] = ()
    """What is found of several records together, and was not."""
    mended: tuple[Problem, ...] = ()
    """What of that is no longer found."""

    @property
    def weaker(self) -> int:
        """How many changes make a safety fact weaker with the same source."""
        return sum(_weaker(one) for one in self.vehicles)


def _weaker(one: VehicleChange) -> int:
    steps = {(step.id, step.details) for visit in one.visits for step in visit.steps if step.weight is Weight.WEAKER}
    return sum(change.weight is Weight.WEAKER for change in one.facts) + len(steps)
