"""Which steps belong to which visit, for every car and every set of openings: what a page needs to filter its steps.

In most records the steps of a visit are those of its openings taken one by one, in one order. Where routes or open restraint plugs
make a visit differ from that, its steps are listed by themselves, so what a page shows is always what the planner says.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from undertrim.derive import cars
from undertrim.derive.procedure import steps
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, Target, targets
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import Assignment, Part

MOST_LISTED = 8
"""Up to so many targets every set is compared; a record with more keeps to single targets, pairs and all."""


@dataclass(frozen=True, slots=True)
class CarPlans:
    """For one car: the step ids of each target by itself, and of every set of targets that is not simply their sum."""

    car: Assignment
    singles: dict[str, tuple[str, ...]]
    sets: dict[tuple[str, ...], tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Choices:
    """All steps of a record in one order, and for each car which of them each visit has."""

    steps: tuple[Step, ...]
    cars: tuple[CarPlans, ...]


def choices(planner: Planner) -> Choices:
    """The choices of a record. Raises Unreachable when an opening cannot be reached."""
    record = planner.record
    wanted = targets(record)
    plans = [(car, {t: planner.plan([t], car).steps for t in wanted}) for car in cars.assignments(record)]
    every = _all_steps(planner, [single for _, singles in plans for single in singles.values()])
    place = {step.id: i for i, step in enumerate(every)}
    made = []
    for car, singles in plans:
        by_id = {str(target): tuple(step.id for step in single) for target, single in singles.items()}
        made.append(CarPlans(car, by_id, dict(_deviating(planner, car, wanted, by_id, place))))
    return Choices(every, tuple(made))


def _all_steps(planner: Planner, plans: Sequence[tuple[Step, ...]]) -> tuple[Step, ...]:
    """The catalogue, or where the record as a whole has no order: the steps as the plans bring them."""
    try:
        found = {step.id: step for step in planner.catalogue()}
    except Unreachable:
        found = {}
    for plan in plans:
        for step in plan:
            found.setdefault(step.id, step)
    used = {step.id for plan in plans for step in plan}
    return tuple(step for step in found.values() if step.id in used or step.part)


def _deviating(
    planner: Planner, car: Assignment, wanted: Sequence[Target], singles: dict[str, tuple[str, ...]], place: dict[str, int]
) -> Iterator[tuple[tuple[str, ...], tuple[str, ...]]]:
    """The sets of targets whose steps are not the sum of their targets' steps in the one order."""
    for chosen in _sets(planner, wanted):
        ids = tuple(str(target) for target in chosen)
        summed = {step for target in ids for step in singles[target]}
        expected = tuple(sorted(summed, key=place.__getitem__))
        actual = tuple(step.id for step in planner.plan(chosen, car).steps) if len(chosen) > 1 else singles[ids[0]]
        if actual != expected:
            yield ids, actual


def _sets(planner: Planner, wanted: Sequence[Target]) -> Iterator[tuple[Target, ...]]:
    """The sets that may deviate: single ones always; larger ones only where something in the record can make them."""
    sizes = [1]
    if _may_deviate(planner):
        sizes = list(range(1, len(wanted) + 1)) if len(wanted) <= MOST_LISTED else [1, 2, len(wanted)]
    for size in sizes:
        yield from combinations(wanted, size)


def _may_deviate(planner: Planner) -> bool:
    """Routes can be shared, and an undone restraint plug moves the tests: only then is a visit more than its parts."""
    parts: Sequence[Part] = tuple(planner.record.parts.values())
    return any(part.after_any or steps.restraint_open(part, {}) for part in parts)
