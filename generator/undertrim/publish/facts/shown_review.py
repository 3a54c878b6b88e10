"""The shapes of a review as it is said and published (`schema/review.schema.json`)."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.words import Value, WayOut

FORMAT = 1
"""Rises where something goes or means something else."""


@dataclass(frozen=True, slots=True)
class Line:
    """One change: how closely to look, what became of it, where it is, its name, before and after, why it is not plain, who says so, for which cars, visit or leads it is so, all of that as a sentence, and what is another one about a step."""

    weight: str
    sort: str
    about: str
    name: Value
    before: Value = ""
    after: Value = ""
    why: Value = ""
    source: Value = ""
    where: Value = ""
    said: Value = ""
    details: Sequence["Line"] = ()


@dataclass(frozen=True, slots=True)
class ShownProblem:
    """What the check finds: the rule, its level, the message and the way out."""

    rule: str
    level: str
    said: Value
    way_out: WayOut


@dataclass(frozen=True, slots=True)
class PlacedProblem:
    """What the check finds of several records together: the file that it names, and the same as of one."""

    file: str
    rule: str
    level: str
    said: Value
    way_out: WayOut


@dataclass(frozen=True, slots=True)
class ShownVisit:
    """Visits that change alike: their jobs, the kinds of car (none: all), how many more steps and minutes they take, the changed steps, and what the whole comes to."""

    jobs: Sequence[str]
    cars: Sequence[Mapping[str, str]]
    title: Value
    more_steps: int
    more_minutes: float
    steps: Sequence[Line]
    totals: Sequence[Line]


@dataclass(frozen=True, slots=True)
class ShownStamp:
    """What became of the verification: the words before and after, and the facts that it no longer covers."""

    before: str
    after: str
    lost: Sequence[Value]
    said: Value


@dataclass(frozen=True, slots=True)
class ReviewedVehicle:
    """One vehicle; `look` are the lines that are not plain, the riskiest first, each of which stands in its place too."""

    vehicle: str
    title: str
    was: str
    weight: str
    look: Sequence[Line]
    facts: Sequence[Line]
    visits: Sequence[ShownVisit]
    refused: Sequence[Value]
    verdicts: Sequence[Line]
    margins: Sequence[Line]
    joints: Sequence[Line]
    blockers: Sequence[Line]
    conflicts: Sequence[Line]
    evidence: Sequence[Line]
    stamp: ShownStamp | None
    photos: Sequence[str]
    found: Sequence[ShownProblem]
    mended: Sequence[ShownProblem]


@dataclass(frozen=True, slots=True)
class ShownShort:
    """A vehicle that is new, gone or cannot be read on a side."""

    vehicle: str
    title: str
    sort: str
    jobs: Sequence[str]
    said: Value
    found: Sequence[ShownProblem]


@dataclass(frozen=True, slots=True)
class ShownGear:
    """A piece of gear whose record differs."""

    gear: str
    name: str
    kind: str
    sort: str
    was: str
    said: Value
    facts: Sequence[Line]
    found: Sequence[ShownProblem]
    mended: Sequence[ShownProblem]


@dataclass(frozen=True, slots=True)
class ShownReview:
    """The whole: how many changes make a safety fact weaker with the same source, and how many more want care."""

    format: int
    base: str
    weaker: int
    care: int
    vehicles: Sequence[ReviewedVehicle]
    shorts: Sequence[ShownShort]
    gear: Sequence[ShownGear]
    found: Sequence[PlacedProblem]
    mended: Sequence[PlacedProblem]
