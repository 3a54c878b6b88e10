"""A visit that is planned for one car serves every car that is alike to it: each has the steps that it has when planned by itself."""

from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from making import record
from random_records import Case, records
from undertrim.derive import cars
from undertrim.derive.procedure.cheapest import TooTangled
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, Target, targets
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import Assignment, VehicleRecord
from undertrim.record.store import Workspace

WORKSPACE = Workspace.holding(Path(__file__))
SHIPPED = WORKSPACE.files([WORKSPACE.records / "vehicles"])


def assert_planned_as_alone(about: VehicleRecord) -> None:
    """Visits of one and of two targets, in every car, by one planner for all and by one for each."""
    shared, every = Planner(about), targets(about)
    for car in cars.assignments(about):
        for wanted in (*combinations(every, 1), *combinations(every, 2)):
            alone = planned(Planner(about), wanted, car)
            assert planned(shared, wanted, car) == alone
            assert not alone or shared.step_ids(wanted, car) == tuple(step.id for step in alone)


def planned(planner: Planner, wanted: tuple[Target, ...], car: Assignment) -> tuple[Step, ...]:
    """The steps; none where a target is out of reach."""
    try:
        return planner.plan(wanted, car).steps
    except (Unreachable, TooTangled):
        return ()


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_every_car_of_every_record_has_the_steps_it_has_alone(path: Path) -> None:
    about = WORKSPACE.load(path).record
    assert isinstance(about, VehicleRecord)
    assert_planned_as_alone(about)


@settings(deadline=None, max_examples=40, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much])
@given(records())
def test_every_car_of_a_random_record_has_the_steps_it_has_alone(case: Case) -> None:
    assert_planned_as_alone(case.record)


FOOT = """
    variants:
      radio: {ask: Which one, choices: {plain: {label: Plain}, map: {label: Map}}}
    parts:
      bezel: {when: {radio: map}}
      kick: {%s}
      seat-cap: {needs: {glass: down}, when: {radio: map}}
    openings:
      dash: {behind: [bezel, seat-cap]}
      foot: {behind: [kick]}
"""


def test_what_a_visit_does_not_come_to_makes_no_other_car_of_it() -> None:
    about = record(FOOT % "")
    planner, foot = Planner(about), [Target("foot")]
    plain, other = (planner.plan(foot, {"radio": radio}).steps for radio in ("plain", "map"))
    assert plain is other
    assert planner.plan([Target("dash")], {"radio": "map"}).steps != ()


def test_what_something_else_does_to_a_state_is_seen() -> None:
    about = record(FOOT % "needs: {glass: up}")
    assert_planned_as_alone(about)
