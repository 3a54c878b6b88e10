"""What the page's script puts together from the choices is what the planner says, for every car and every set of openings."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, assume, given, settings

from making import record
from page_script import assert_shown_as_planned, shown, subsets
from random_records import Case, records
from undertrim.derive.procedure import choices as module
from undertrim.derive.procedure.choices import choices
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

WORKSPACE = Workspace.holding(Path(__file__))
SHIPPED = WORKSPACE.files([WORKSPACE.records / "vehicles"])


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
