"""What changes in the visits of a vehicle: each job by itself, in each kind of car; visits that change alike are told together."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive import cars
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.procedure.steps import Step
from undertrim.derive.review import steps, totals
from undertrim.derive.review.change import Detail, Side, StepChange, VisitChange
from undertrim.derive.review.explaining import Explained
from undertrim.record.combinations import TooMany
from undertrim.record.model import Assignment, VehicleRecord
from undertrim.words import Value, message

Refused = (Unreachable, TooTangled, TooMany)


@dataclass(frozen=True, slots=True)
class Visits:
    """The visits that changed, and those for which there are no steps on one of the sides, each in words."""

    changed: tuple[VisitChange, ...]
    refused: tuple[Value, ...]


@dataclass(frozen=True, slots=True)
class Told:
    """What facts tell already: what became lighter, and the things that are called otherwise, by their ids."""

    lighter: Explained
    named: frozenset[str]


@dataclass(frozen=True, slots=True)
class _Found:
    job: str
    cars: tuple[Assignment, ...]
    steps: tuple[StepChange, ...]
    totals: tuple[Detail, ...]
    minutes: float

    @property
    def key(self) -> object:
        """What differs, whatever stands before it in this kind of car."""
        return [(one.id, one.sort, one.details, one.weight) for one in self.steps], self.totals, self.minutes


def visits(before: Side, after: Side, names: Mapping[str, str], told: Told) -> Visits:
    """The changed visits; `names` are the ids of before that are others now, `told` what facts tell already."""
    planners = Planner(reckoned(before.record)), Planner(reckoned(after.record))
    found: list[_Found] = []
    refused: list[Value] = []
    try:
        pairs = list(_pairs(before.record, after.record))
    except TooMany:
        return Visits((), (message("review/too-many-cars"),))
    for job, old in _jobs(before.record, after.record, names):
        try:
            found += _of_job(job, old, planners, pairs, names, told)
        except Refused:
            refused.append(message("review/no-steps", job=after.record.jobs[job].name))
    return Visits(tuple(_together(found)), tuple(refused))


def _pairs(before: VehicleRecord, after: VehicleRecord) -> Iterator[tuple[Assignment, Assignment]]:
    """Each kind of car of now, with the first of before that it can have been, or that is most like it. Raises TooMany."""
    was = cars.assignments(before)
    for car in cars.assignments(after):
        yield max(was, key=lambda one: _agreeing(one, car)), car


def _agreeing(one: Assignment, other: Assignment) -> tuple[bool, int]:
    """How well two kinds of car go together: whether they can be one, and in how many choices they are."""
    return agrees(one, other), sum(other.get(name) == choice for name, choice in one.items())


def agrees(one: Assignment, other: Assignment) -> bool:
    """Whether two kinds of car can be one: what both answer is answered alike."""
    return all(other.get(name, choice) == choice for name, choice in one.items())


def _jobs(before: VehicleRecord, after: VehicleRecord, names: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """The jobs of now that were there before, with the id that they had: what is new or gone is told as a fact."""
    back = {new: old for old, new in names.items()}
    for job in after.jobs:
        old = back.get(job, job)
        if old in before.jobs:
            yield job, old


def _of_job(
    job: str,
    old: str,
    planners: tuple[Planner, Planner],
    pairs: Sequence[tuple[Assignment, Assignment]],
    names: Mapping[str, str],
    told: Told,
) -> list[_Found]:
    """What changed in the visits for one job: an entry for each group of cars in which it is the same. Raises what planning raises."""
    found: list[_Found] = []
    for was, now in pairs:
        before, after = _planned(planners[0], old, was), _planned(planners[1], job, now)
        changed = tuple(_steps(before, after, names, told)) if before != after else ()
        sums, minutes = totals.differing(before, after)
        one = _Found(job, (now,), changed, sums, minutes)
        if not changed and not sums and not minutes:
            continue
        same = next((place for place, other in enumerate(found) if other.key == one.key), None)
        if same is None:
            found.append(one)
        else:
            found[same] = replace(found[same], cars=(*found[same].cars, now))
    every = len(pairs)
    return [replace(one, cars=()) if len(one.cars) == every else one for one in found]


def _steps(before: Sequence[Step], after: Sequence[Step], names: Mapping[str, str], told: Told) -> Iterator[StepChange]:
    for one in steps.differing(before, after, names, told.named):
        yield steps.settled(one) if told.lighter.explains(one.step) else one


def _planned(planner: Planner, job: str, car: Assignment) -> tuple[Step, ...]:
    wanted = [target for target in targets(planner.record) if target.job == job]
    return planner.plan(wanted, car).steps


def _together(found: Sequence[_Found]) -> Iterator[VisitChange]:
    """Visits that change alike as one."""
    groups: list[tuple[list[str], _Found]] = []
    for one in found:
        alike = next((jobs for jobs, other in groups if (one.cars, one.key) == (other.cars, other.key)), None)
        if alike is None:
            groups.append(([one.job], one))
        else:
            alike.append(one.job)
    for jobs, one in groups:
        yield VisitChange(tuple(dict.fromkeys(jobs)), one.cars, one.steps, one.totals, one.minutes)
