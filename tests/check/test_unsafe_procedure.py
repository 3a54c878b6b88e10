"""Which jobs are replayed, and what is left to other rules."""

from collections.abc import Sequence
from itertools import combinations
from pathlib import Path

import pytest
from fragments import findings, messages, subject
from hypothesis import HealthCheck, given, settings

from random_records import Case, records
from undertrim.check.findings import Subject
from undertrim.check.rules import unsafe_procedure
from undertrim.derive.procedure.planning import Planner
from undertrim.derive.procedure.steps import Step
from undertrim.derive.simulation import Fault, Replays, replay, replays
from undertrim.derive.simulation.replay import replay_in
from undertrim.derive.simulation.ways import Ways
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Source
from undertrim.record.store import Entry, Workspace

WORKSPACE = Workspace.holding(Path(__file__))
SHIPPED = WORKSPACE.files([WORKSPACE.records / "vehicles"])

BATTERY = "preps:\n  battery: {{name: Battery off, sets: {{battery: off}}{}, how: Do., restore: Undo.}}\n"
BOOT = "closures:\n  boot: {latch: electric, key: no}\n"
SPEAKER = "  {}: {{name: Door, kind: speaker, behind: [{}], hole: {{shape: round, diameter: 146 mm}}, depth: {{clear: 62 mm, datum: skin}}}}\n"


def test_a_good_record_passes() -> None:
    assert findings(unsafe_procedure, "demo: yes\n") == []


def test_a_fault_of_all_jobs_is_told_once() -> None:
    piece = (
        BOOT + BATTERY.format(", area: boot, needs: {ignition: off}") + "openings:\n" + SPEAKER.format("door", "radio")
    )
    [finding] = findings(unsafe_procedure, piece)
    assert finding.pointer == ("preps", "battery")
    assert finding.message.endswith(", for dash")


def test_a_fault_that_only_two_jobs_together_have_is_found() -> None:
    parts = "parts:\n  trim: {name: Trim, release: pull, needs: {ignition: on}}\n  radio: {name: R, release: slide, replaced: yes}\n"
    piece = BATTERY.format("") + parts + "openings:\n" + SPEAKER.format("door", "trim")
    [finding] = findings(unsafe_procedure, piece)
    assert finding.message.endswith("for door")


def test_what_is_reached_for_is_replayed_too() -> None:
    trim = "  trim: {name: Trim, release: pull, reached_for: camera cable, needs: {ignition: on}}\n"
    parts = "parts:\n" + trim + "  radio: {name: R, release: slide, replaced: yes}\n"
    alone, together = messages(unsafe_procedure, BATTERY.format("") + parts)
    assert alone.endswith(", for trim")
    assert together.endswith(", for dash + trim")


@pytest.mark.parametrize(
    "piece",
    [
        "parts:\n  radio: {name: R, release: slide, after: [radio], replaced: yes}\n",  # order-cycle
        "parts:\n  radio: {name: R, release: slide, needs: {parking-brake: off}, replaced: yes}\n",  # state-collision
        "parts:\n  radio: {name: R, release: slide, after: [liner], replaced: yes}\n  liner: {name: L, release: peel}\n",  # peel-without-seal
        "restraint: {fitted: no, wait: none}\nparts:\n  radio: {name: R, release: slide, replaced: yes, tethers:"
        " {bag: {name: Bag plug, kind: plug, circuit: restraint, then: to-gear}}}\n",  # wait-shorter-than-maker
    ],
)
def test_what_other_rules_say_is_left_to_them(piece: str) -> None:
    assert messages(unsafe_procedure, piece) == []


def test_a_fault_of_some_cars_names_them() -> None:
    variants = "variants:\n  radio: {ask: Which, choices: {plain: {label: P, tell: A}, map: {label: M, tell: B}}}\n"
    parts = "parts:\n  trim: {name: T, release: pull, needs: {ignition: on}, when: {radio: map}}\n  radio: {name: R, release: slide, after: [trim], replaced: yes}\n"
    [message] = messages(unsafe_procedure, variants + BATTERY.format("") + parts)
    assert message.endswith(", for dash where radio=map")


def test_a_battery_that_is_never_joined_again_is_told_at_its_preparation() -> None:
    piece = "preps:\n  battery: {name: Battery off, sets: {battery: off}, needs: {ignition: off}, how: Do.}\n"
    [finding] = findings(unsafe_procedure, piece)
    assert finding.pointer == ("preps", "battery")


THREE = "openings:\n" + "".join(
    SPEAKER.format(door, trim) for door, trim in (("front", "front-trim"), ("rear", "rear-trim"))
)
TRIMS = (
    "parts:\n  front-trim: {name: Front, release: pull}\n  rear-trim: {name: Rear, release: pull}\n"
    "  radio: {name: R, release: slide, replaced: yes}\n"
)


def _replayed(piece: str, monkeypatch: pytest.MonkeyPatch) -> list[tuple[str, ...]]:
    """What the procedures that are replayed end with: the ids of the openings that are tested in each."""
    replayed = []

    def counted(ways: Ways, steps: Sequence[Step]) -> list[Fault]:
        tested = (step.part for step in steps if step.kind == "install")
        replayed.append(tuple(dict.fromkeys(tested)))
        return replay_in(ways, steps)

    monkeypatch.setattr(replays, "replay_in", counted)
    about = subject(piece)
    assert list(unsafe_procedure.check(about)) == []
    return replayed


def test_each_procedure_is_replayed_once(monkeypatch: pytest.MonkeyPatch) -> None:
    assert _replayed("demo: yes\n", monkeypatch) == [("dash",)]


def test_pairs_are_left_out_where_each_alone_and_all_at_once_are_safe(monkeypatch: pytest.MonkeyPatch) -> None:
    found = _replayed(TRIMS + THREE, monkeypatch)
    assert found == [("dash",), ("front",), ("rear",), ("dash", "front", "rear")]


@pytest.mark.parametrize(
    "more",
    [
        "preps:\n  one: {name: One, sets: {seat: forward}, how: Do.}\n  two: {name: Two, sets: {seat: forward}, how: Do.}\n",
        "preps:\n  key: {name: Key, sets: {ignition: on}, how: Do., restore: Undo.}\n",
    ],
)
def test_pairs_are_replayed_where_a_state_is_set_in_two_ways(more: str, monkeypatch: pytest.MonkeyPatch) -> None:
    assert ("front", "rear") in _replayed(more + TRIMS + THREE, monkeypatch)


def test_pairs_of_what_is_reached_without_gear_are_replayed(monkeypatch: pytest.MonkeyPatch) -> None:
    reached = TRIMS.replace("Front, release: pull", "Front, release: pull, reached_for: a cable")
    found = _replayed(reached + THREE, monkeypatch)
    assert ("rear",) in found
    assert found.count(("rear",)) == 2
    assert ("dash", "rear") not in found


def test_cars_that_are_alike_to_a_procedure_share_its_replay(monkeypatch: pytest.MonkeyPatch) -> None:
    variants = "variants:\n  radio: {ask: Which, choices: {plain: {label: P, tell: A}, map: {label: M, tell: B}}}\n"
    differing = TRIMS.replace("Front, release: pull", "Front, release: pull, when: {radio: map}")
    found = _replayed(variants + differing + THREE, monkeypatch)
    assert [found.count((name,)) for name in ("dash", "front", "rear")] == [1, 2, 1]


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_what_is_left_out_of_shipped_records_is_safe(path: Path) -> None:
    about = WORKSPACE.load(path)
    assert isinstance(about.record, VehicleRecord)
    assert_safe_where_left_out(Subject(about, about.record))


@settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much])
@given(records())
def test_what_is_left_out_of_random_records_is_safe(case: Case) -> None:
    entry = Entry(Path("x.yaml"), "vehicle", Source.empty(Path("x.yaml")), (), case.record)
    assert_safe_where_left_out(Subject(entry, case.record))


def assert_safe_where_left_out(about: Subject) -> None:
    """Two jobs that are not replayed together have no fault together, in any car; and what is shared between cars is the same in each."""
    names = tuple(about.record.jobs)
    shared = Replays(about.record)
    for car in about.cars:
        alone_or_all = (*combinations(names, 1), names)
        outcomes = {job: unsafe_procedure._outcome(about, job, car, shared) for job in alone_or_all}
        sure = unsafe_procedure._sure(about, car, outcomes, names)
        for job, outcome in outcomes.items():
            assert not outcome.planned or outcome.faults == replay(about.record, car, outcome.steps), job
        for job in combinations(sorted(sure), 2):
            steps = Planner(about.record).plan([target for target in about.targets if target.job in job], car).steps
            assert replay(about.record, car, steps) == []
