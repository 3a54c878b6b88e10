"""What the page's script puts together from the choices is what the planner says, for every car and every set of openings."""

from itertools import chain, combinations
from pathlib import Path

from hypothesis import HealthCheck, assume, given, settings

from making import record
from random_records import Case, records
from undertrim.derive import cars
from undertrim.derive.procedure.choices import Choices, choices
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, Target, targets
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

WORKSPACE = Workspace.around(Path(__file__))


def subsets(wanted: tuple[Target, ...]) -> list[tuple[Target, ...]]:
    return list(chain.from_iterable(combinations(wanted, size) for size in range(1, len(wanted) + 1)))


def shown(made: Choices, number: int, jobs: tuple[str, ...]) -> list[str]:
    """The steps that `visit` in site_overrides/assets/undertrim/vehicle.js shows for one car."""
    plans = made.cars[number]
    if jobs in plans.sets:
        return list(plans.sets[jobs])
    summed = {step for job in jobs for step in plans.singles[job]}
    return [step.id for step in made.steps if step.id in summed]


def assert_shown_as_planned(about: VehicleRecord) -> Choices:
    made = choices(Planner(about))
    fresh = Planner(about)
    for number, car in enumerate(cars.assignments(about)):
        assert made.cars[number].car == car
        for chosen in subsets(targets(about)):
            expected = [step.id for step in fresh.plan(chosen, car).steps]
            assert shown(made, number, tuple(map(str, chosen))) == expected, (car, chosen)
    return made


@settings(deadline=None, max_examples=150, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much])
@given(records())
def test_every_visit_is_shown_as_planned(case: Case) -> None:
    try:
        made = assert_shown_as_planned(case.record)
    except Unreachable:
        assume(False)
        return
    names = [step.id for step in made.steps]
    assert len(names) == len(set(names))
    assert all(ids for plans in made.cars for ids in plans.sets.values())
