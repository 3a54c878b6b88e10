"""What a test has joined first, and what is tried and measured at the end: for every job, pair and car, of shipped and random records."""

from collections.abc import Iterator
from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import HealthCheck, assume, given, settings

from making import ids, plan, record, step
from random_records import Case, records
from undertrim.derive import cars
from undertrim.derive.procedure import closing, purposes, running
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import replay
from undertrim.record import schema
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.resources import table
from undertrim.words import Items, say

WORKSPACE = Workspace.holding(Path(__file__))
SHIPPED = WORKSPACE.files([WORKSPACE.records / "vehicles"])


def visits(about: VehicleRecord) -> Iterator[tuple[dict[str, str], tuple[Step, ...]]]:
    """Every job, every pair and all at once, for every car."""
    planner, every = Planner(about), targets(about)
    for car in cars.assignments(about):
        for chosen in (*combinations(every, 1), *combinations(every, 2), every):
            yield dict(car), planner.plan(chosen, car).steps


def contradictions(steps: tuple[Step, ...]) -> list[str]:
    return [
        f"{item.id}: {caution.hazard}"
        for item in steps
        for caution in item.cautions
        for state, value in caution.state
        if item.state[state] != value
    ]


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_no_caution_contradicts_the_state_beside_it(path: Path) -> None:
    about = WORKSPACE.load(path).record
    assert isinstance(about, VehicleRecord)
    for _, steps in visits(about):
        assert contradictions(steps) == []


@settings(deadline=None, max_examples=25, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much])
@given(records())
def test_no_caution_of_a_random_record_contradicts_its_state_and_all_replays(case: Case) -> None:
    try:
        planner, every = Planner(case.record), targets(case.record)
        for car in cars.assignments(case.record):
            steps = planner.plan(every, car).steps
            assert contradictions(steps) == []
            assert [fault for fault in replay(case.record, car, steps) if fault.kind in OURS] == []
    except Unreachable:
        assume(False)


OURS = (
    "caution-state", "state-shown", "seat-loose", "restraint-loose", "restraint-live", "test-unjoined", "test-without-window",
    "try-before-refit", "untried", "lamp-unwatched",
)  # fmt: skip
"""What the planner answers for, whatever a record says: the others a random record can bring about by itself."""


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_everything_that_is_joined_is_tried_once_after_it(path: Path) -> None:
    about = WORKSPACE.load(path).record
    assert isinstance(about, VehicleRecord)
    for _, steps in visits(about):
        joined = {
            (s.part, s.side, line.tether.id): n
            for n, s in enumerate(steps)
            for line in s.tethers
            if line.act == "rejoin"
        }
        tries = [(s.part, s.side, line.tether.id) for s in steps for line in s.tethers if line.act == "try"]
        assert len(tries) == len(set(tries))
        for place, at in joined.items():
            part = about.parts[place[0]]
            if part.tethers[place[2]] in tuple(purposes.wiring(part, {})):
                assert place in tries
                assert at < next(n for n, s in enumerate(steps) if s.kind == "try" and (s.part, s.side) == place[:2])


def test_the_purposes_of_the_schema_are_those_of_the_table() -> None:
    serves = schema.load("vehicle")["$defs"]["tether"]["properties"]["serves"]["items"]["enum"]
    assert serves == list(table("purposes")["purpose"])
    assert all(purposes.purpose(name).try_ or purposes.purpose(name).restraint for name in serves)


AMPLIFIER = """
    parts:
      amplifier: {tethers: {out: {name: Speaker plug, kind: plug}, rod: {name: Rod, kind: rod}}}
      heater: {tethers: {heat: {name: Heater plug, kind: plug, serves: [climate]}}}
      trim: {after: [amplifier, heater]}
    openings:
      side: {behind: [trim], area: cab-rear, depth: {clear: 60 mm, over: OVER}}
"""


def test_a_plug_of_which_nothing_is_known_is_joined_before_a_test_and_what_serves_something_else_is_not() -> None:
    names = ids(record(AMPLIFIER.replace("OVER", "no-glass")), "side")
    assert names.index("join:amplifier") < names.index("power:on") < names.index("refit:amplifier")
    assert "join:heater" not in names
    made = plan(record(AMPLIFIER.replace("OVER", "no-glass")), "side")
    assert [line.act for line in step(made, "refit:amplifier").tethers] == ["joined", "rejoin"]
    assert [line.act for line in step(made, "refit:heater").tethers] == ["rejoin"]
    assert names.index("test:amplifier:rod") > names.index("refit:amplifier")


def test_a_window_is_moved_only_where_one_moves() -> None:
    names = {
        over: ids(record(AMPLIFIER.replace("OVER", over)), "side")
        for over in ("no-glass", "whole-travel", "glass-down")
    }
    assert ["test:side:window" in found for found in names.values()] == [False, True, True]
    door = "parts: {panel: {}}\nopenings: {door: {behind: [panel], area: front-door}}"
    assert "test:door:window-if-any" in ids(record(door), "door")
    assert "test:door:window-if-any" not in ids(record(door.replace("front-door", "boot")), "door")


def test_the_words_of_a_try_are_the_records_own_else_those_of_its_purpose() -> None:
    about = record("""
        rest: {current: 22 mA, asleep_after: 25 min}
        parts:
          panel:
            tethers:
              own: {name: Own, kind: plug, serves: [windows], test: Fold the mirror.}
              usual: {name: Usual, kind: plug, serves: [hazard]}
              unsaid: {name: Unsaid, kind: plug}
        openings:
          door: {behind: [panel]}
    """)
    made = plan(about, "door")
    words = {line.tether.id: say(closing.words(line.tether)) for line in step(made, "try:panel").tethers}
    assert words["own"] == "Fold the mirror."
    assert words["usual"] == say(purposes.purpose("hazard").try_ or "")
    assert "not recorded" in words["unsaid"]
    rest = step(made, "measure:rest")
    assert not rest.unknown
    text = say(Items(rest.text, "spaced"))
    assert "25 min" in text
    assert "22 mA" in text
    assert step(plan(record("parts: {panel: {}}\nopenings: {door: {behind: [panel]}}"), "door"), "measure:rest").unknown


def test_states_of_a_step_that_differ_are_all_said() -> None:
    assert running.agreed([{"battery": "on"}, {"battery": "off"}]) == {"battery": "off or on"}


def test_a_seat_beside_which_something_else_is_bolted_is_not_loose() -> None:
    about = record("""
        parts:
          striker: {area: cab-rear, held_by: [{bolt: T50, count: 2, role: seat}]}
          seat: {area: seat, held_by: [{bolt: T50, count: 2, role: seat, leave: yes}]}
          chair: {held_by: [{bolt: T50, count: 2, role: seat}]}
        openings:
          dash: {behind: [striker, seat, chair]}
    """)
    loose = {name: purposes.seat_loose(part, {}) for name, part in about.parts.items()}
    assert loose == {"striker": False, "seat": False, "chair": True}
