"""What the vehicle page's script makes of the choices, written again in Python, against the planner itself."""

from itertools import chain, combinations

from undertrim.derive import cars
from undertrim.derive.procedure.choices import Choices, choices
from undertrim.derive.procedure.planning import Planner, Target, targets
from undertrim.record.model import VehicleRecord


def subsets(wanted: tuple[Target, ...]) -> list[tuple[Target, ...]]:
    return list(chain.from_iterable(combinations(wanted, size) for size in range(1, len(wanted) + 1)))


def shown(made: Choices, number: int, jobs: tuple[str, ...]) -> list[str]:
    """The steps that `visit` in site_overrides/assets/undertrim/visit-steps.js shows for one car."""
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
