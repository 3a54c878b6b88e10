"""What the page's script puts together from the choices is what the planner says, for every car and every set of openings."""

from itertools import chain, combinations
from pathlib import Path

import pytest
from hypothesis import HealthCheck, assume, given, settings

from making import record
from random_records import Case, records
from undertrim.derive import cars
from undertrim.derive.procedure import choices as module
from undertrim.derive.procedure.choices import Choices, choices
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.mixing import mixing, regular
from undertrim.derive.procedure.planning import Planner, Target, targets
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

WORKSPACE = Workspace.around(Path(__file__))
SHIPPED = WORKSPACE.files([WORKSPACE.records / "vehicles"])


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


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_every_visit_of_every_record_is_shown_as_planned(path: Path) -> None:
    about = WORKSPACE.load(path).record
    assert isinstance(about, VehicleRecord)
    assert_shown_as_planned(about)


def test_a_visit_that_shares_a_route_is_listed_by_itself() -> None:
    about = record("""
        parts:
          tray: {takes: 3 min}
          cup: {takes: 2 min}
          surround: {after_any: [{from-above: [tray], from-below: [cup]}]}
          grille: {each: [left, right], after: [tray]}
          panel: {}
        openings:
          dash: {behind: [surround]}
          top: {each: [left, right], behind: [grille]}
          door: {behind: [panel], crash_sensor: no}
    """)
    made = assert_shown_as_planned(about)
    listed = set(made.cars[0].sets)
    assert listed == {
        jobs
        for jobs in map(tuple, subsets_of("dash", "top@left", "top@right", "door"))
        if "dash" in jobs and {"top@left", "top@right"} & set(jobs)
    }
    assert "remove:cup" not in made.cars[0].sets["dash", "top@left", "door"]
    assert "remove:cup" in made.cars[0].singles["dash"]


def subsets_of(*names: str) -> list[tuple[str, ...]]:
    return list(chain.from_iterable(combinations(names, size) for size in range(1, len(names) + 1)))


def test_visits_that_do_not_mix_are_not_listed() -> None:
    about = record("""
        parts:
          tray: {takes: 3 min}
          cup: {takes: 2 min}
          surround: {after_any: [{from-above: [tray], from-below: [cup]}]}
          lamp-trim: {tethers: {lamp: {name: Lamp, kind: plug, circuit: restraint, then: rejoin}}}
          panel: {each: [left, right], after: [lamp-trim]}
        openings:
          dash: {behind: [surround]}
          door: {each: [left, right], behind: [panel]}
    """)
    made = assert_shown_as_planned(about)
    assert made.cars[0].sets == {}


def test_a_part_that_moves_in_one_visit_and_is_refitted_in_another() -> None:
    about = record("""
        parts:
          climate: {goes_to: dash}
          radio: {replaced: yes}
          centre: {replaced: yes, after: [climate]}
          cap: {}
        openings:
          dash: {behind: [radio]}
          middle: {behind: [centre]}
          foot: {behind: [cap]}
    """)
    made = assert_shown_as_planned(about)
    assert set(made.cars[0].sets) == {("dash", "middle"), ("dash", "middle", "foot")}


def test_a_factory_part_that_stays_out_in_one_visit_and_goes_back_in_another() -> None:
    about = record("""
        parts:
          radio: {replaced: yes}
          centre: {replaced: yes, after: [radio]}
          cap: {}
        openings:
          dash: {behind: [radio]}
          middle: {behind: [centre]}
          foot: {behind: [cap]}
    """)
    made = assert_shown_as_planned(about)
    assert "refit:radio" in made.cars[0].singles["middle"]
    assert set(made.cars[0].sets) == {("dash", "middle"), ("dash", "middle", "foot")}


def test_a_step_that_no_visit_has_is_left_out() -> None:
    about = record("""
        parts:
          tray: {takes: 9 min}
          cup: {takes: 2 min}
          surround: {after_any: [{from-above: [tray], from-below: [cup]}]}
          stray: {}
        openings:
          dash: {behind: [surround]}
    """)
    names = {step.id for step in choices(Planner(about)).steps}
    assert "remove:cup" in names
    assert not {"remove:tray", "remove:stray"} & names


def test_cars_that_differ_in_order_have_their_own_lists() -> None:
    about = record("""
        variants:
          dash: {ask: Which one, choices: {early: {label: Early}, late: {label: Late}}}
        parts:
          bezel: {after: [{part: tray, when: {dash: early}}]}
          tray: {after: [{part: bezel, when: {dash: late}}]}
          cap: {}
        openings:
          dash: {behind: [bezel, tray]}
          foot: {behind: [cap]}
    """)
    assert_shown_as_planned(about)


def test_with_many_openings_pairs_and_all_of_them_are_still_right(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "MOST_LISTED", 3)
    about = record("""
        parts:
          tray: {takes: 3 min}
          cup: {takes: 2 min}
          surround: {after_any: [{from-above: [tray], from-below: [cup]}]}
          grille: {each: [left, right], after: [tray]}
          panel: {}
        openings:
          dash: {behind: [surround]}
          top: {each: [left, right], behind: [grille]}
          foot: {behind: [panel]}
    """)
    made = choices(Planner(about))
    for chosen in subsets(targets(about)):
        jobs = tuple(map(str, chosen))
        planned = [step.id for step in Planner(about).plan(chosen, {}).steps]
        if len(jobs) in (1, 2, 4):
            assert shown(made, 0, jobs) == planned
        else:  # a longer way round, with everything the visit needs in it
            assert set(planned) <= set(shown(made, 0, jobs))


RESTRAINT = """
    variants:
      seats: {ask: Which one, choices: {plain: {label: Plain}, heated: {label: Heated}}}
    parts:
      lamp-trim: {tethers: {lamp: {name: Lamp, kind: plug, circuit: restraint, then: rejoin}}}
      frame: {after: [{part: lamp-trim, when: {seats: heated}}]}
      cap:
    openings:
      dash: {behind: [lamp-trim]}
      middle: {behind: [frame]}
      foot: {behind: [cap]}
"""


def test_a_part_that_goes_back_before_the_tests_in_some_cars_only() -> None:
    made = assert_shown_as_planned(record(RESTRAINT))
    assert ("dash", "middle", "foot") in made.cars[0].sets
    assert made.cars[1].sets == {}


def test_a_restraint_plug_on_a_part_that_moves_over_in_some_visits() -> None:
    assert_shown_as_planned(
        record("""
        parts:
          lamp-panel: {goes_to: dash, tethers: {lamp: {name: Lamp, kind: plug, circuit: restraint, then: rejoin}}}
          radio: {replaced: yes, after: [lamp-panel]}
          centre: {replaced: yes, after: [lamp-panel]}
          bracket: {after: [lamp-panel]}
          cap:
        openings:
          dash: {behind: [radio, bracket]}
          middle: {behind: [centre, bracket]}
          foot: {behind: [cap]}
    """)
    )


def test_a_part_without_sides_that_moves_over_at_the_first_side_fitted() -> None:
    assert_shown_as_planned(
        record("""
        parts:
          grille: {each: [left, right], goes_to: door}
          switch: {goes_to: door, after: [grille]}
          speaker: {each: [left, right], replaced: yes}
          radio: {replaced: yes}
        openings:
          door: {each: [left, right], behind: [speaker]}
          dash: {behind: [radio]}
    """)
    )


def test_what_every_visit_needs_anyway_does_not_make_routes_mix() -> None:
    about = record("""
        parts:
          tray: {takes: 3 min, tethers: {lamp: {name: Lamp plug, kind: plug}}}
          cup: {takes: 2 min, tethers: {lamp: {name: Lamp plug, kind: plug}}}
          surround: {after_any: [{from-above: [tray], from-below: [cup]}]}
          panel: {tethers: {windows: {name: Window plug, kind: plug}}}
        openings:
          dash: {behind: [surround]}
          door: {behind: [panel]}
    """)
    planner = Planner(about)
    assert regular(planner, {})
    assert mixing(planner.layout({})) == {"open:dash"}
