"""The fuzzer finds what is planted, and a short run of it, always the same, finds nothing."""

import random
from dataclasses import replace
from typing import Any

import pytest
import shrinking
import text_changes
import tree_changes
import trials
from mutants import Case, Mutant, as_file, cut, mutant, originals, pool

from fuzz import Tally, try_case
from undertrim.check import reports
from undertrim.check.register import RECORD_RULES
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.printed import pdf
from undertrim.publish.web import pages
from undertrim.record.source import read_bytes

SEED = 7
CASES = 32


def plain(kind: str = "vehicle") -> Mutant:
    """The shortest shipped record of a kind, not spoilt."""
    original = min((item for item in originals() if item.kind == kind), key=lambda item: len(item.text))
    return Mutant(original.path, as_file(original.data), "")


def broken(*_: Any, **__: Any) -> Any:
    raise KeyError("planted")


def test_a_short_run_finds_nothing() -> None:
    tally = Tally()
    for number in range(CASES):
        tally.add(case := Case(SEED, number), try_case(case))
    assert tally.faults == {}
    assert tally.cases == CASES
    assert 4 < tally.passed < CASES - 4  # else it looks at nothing but the schema, or spoils nothing


def test_a_case_is_the_same_each_time_and_differs_from_the_next() -> None:
    made = [mutant(Case(SEED, number)) for number in (1, 1, 2)]
    assert made[0] == made[1] != made[2]
    assert mutant(Case(SEED + 1, 1)) != made[0]


def test_a_record_as_shipped_passes() -> None:
    assert [trials.tried(plain(kind)) for kind in ("vehicle", "gear")] == [trials.Tried(True, None)] * 2


def test_a_crash_of_a_rule_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    rule = RECORD_RULES["file-name"]
    monkeypatch.setattr(rule, "check", broken)
    found = trials.tried(plain()).found
    assert found is not None
    assert (found.stage, "file-name" in found.what) == ("check", True)


@pytest.mark.parametrize(
    ("stage", "module", "name"),
    [
        ("check of all", trials, "across"),
        ("report", reports, "github"),
        ("plan", trials, "plan_text"),
        ("fit", trials, "fit_text"),
        ("wiring", trials, "plugs_text"),
        ("joint", trials, "joint_text"),
        ("facts", facts, "vehicle"),
        ("page", pages, "vehicle"),
        ("sheet", pdf, "render"),
    ],
)
def test_a_crash_of_a_stage_is_found(stage: str, module: Any, name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, name, broken)
    found = trials.tried(plain(), dear=True).found
    assert found is not None
    assert (found.stage, found.what.partition(" ")[0]) == (stage, "KeyError")


def test_gear_that_stops_a_vehicle_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("trials.shelf_facts.of_vehicle", broken)
    found = trials.tried(plain("gear"), dear=True).found
    assert found is not None
    assert found.stage == "a vehicle beside it"


def test_what_takes_too_long_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(trials, "HANG", 0.0)
    found = trials.tried(plain()).found
    assert found is not None
    assert found.what == "takes too long"


def test_a_fault_is_counted_each_time_and_new_once() -> None:
    tally, found = Tally(), trials.Tried(False, trials.Found("check", "KeyError at here.py:1"))
    assert [tally.add(Case(1, number), found) for number in range(3)] == [True, False, False]
    assert list(tally.often.values()) == [3]


def test_a_mutant_shrinks_to_what_fails() -> None:
    small = shrinking.smaller(plain(), lambda one: b"high_voltage" in one.content, seconds=60)
    data = read_bytes(small.content, small.path).data
    assert list(data) == ["vehicle"]
    assert list(data["vehicle"]) == ["high_voltage"]


def test_a_text_that_is_no_yaml_shrinks_by_lines() -> None:
    lines = b"".join(b"k%d: x\n" % number for number in range(60))
    small = shrinking.smaller(
        replace(plain(), content=lines + b"nobody knows [\n"), lambda one: b"[" in one.content, seconds=60
    )
    assert small.content == b"nobody knows [\n"


@pytest.mark.parametrize("change", dict.fromkeys(text_changes.CHANGES), ids=lambda change: change.__name__)
def test_each_change_of_text_changes_something(change: text_changes.Change) -> None:
    text, other = originals()[0].text, originals()[-1].text
    draws = (random.Random(number) for number in range(20))  # noqa: S311 - draws, no secrets
    assert any(change(text, other, draw) != text for draw in draws)


@pytest.mark.parametrize("change", dict.fromkeys(tree_changes.CHANGES), ids=lambda change: change.__name__)
def test_each_change_of_data_changes_something_and_never_the_original(
    change: tree_changes.Change, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tree_changes, "CHANGES", (change,))
    original = originals()[-1]
    before = as_file(original.data)
    draws = (random.Random(number) for number in range(20))  # noqa: S311 - draws, no secrets
    made = [tree_changes.changed(original.data, pool(original.kind), draw, 1)[0] for draw in draws]
    assert any(as_file(data) != before for data in made)
    assert as_file(original.data) == before


def test_every_opening_of_the_shipped_vehicles_is_cut_out_and_passes_by_itself() -> None:
    openings = [name for item in originals() if item.kind == "vehicle" for name in item.data["openings"]]
    cuttings = [item for item in cut() if item.kind == "vehicle"]
    assert [next(iter(item.data["openings"])) for item in cuttings] == [name for name in openings for _ in range(2)]
    assert [item.data["format"] for item in cuttings] == ["1", "2"] * len(openings)
    assert sum(len(item.text) for item in cuttings) / len(cuttings) < 15_000
