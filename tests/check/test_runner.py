"""Every file, every rule, all problems in one run; one mistake is one problem, and a rule that crashes stops no other."""

from collections.abc import Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from rich_record import GEAR, PATH, RICH, check, said
from rule_pages import BASE

from here import Here
from undertrim.check import runner
from undertrim.check.findings import Finding, Subject
from undertrim.check.register import COLLECTION_RULES, GEAR_RULES, RECORD_RULES
from undertrim.record.problem import Level
from undertrim.record.store import Workspace
from undertrim.words import message

# What follows from what is broken


def test_the_rich_record_is_good() -> None:
    assert said(check(RICH)) == []


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("    release: pull\n", "", "'release' is missing from 'bezel'"),
        ("release: pull", "release: pul", "'pul' is not a known release"),
        ("name: Radio bezel", "name:", "'name' is blank"),
        ("  bezel:\n", "  Bezel:\n", "'Bezel' is not a valid id"),
        ("name: Screw cap, ", "", "'name' is missing from 'cap'"),
        ("{how: measured, ", "{", "'how' is missing from 'e1'"),
        ("evidence:\n", "evidance:\n", "'evidance' is not a field of vehicle record"),
        ("source: e2", "sorce: e2", "'sorce' is not a field of variant"),
        ("source: e2", "source: [e2, {e: 3}]", "id must be text, not a mapping"),
        ("variants:\n", "variant:\n", "'variant' is not a field of vehicle record"),
        ("{label: Yes, tell: A badge}", "{tell: A badge}", "'label' is missing from 'loud'"),
        ("kind: plug", "kind: plugg", "'plugg' is not a known kind"),
        ("tethers:\n", "tether:\n", "'tether' is not a field of part"),
        ("count: 4, at", "cuont: 4, at", "'cuont' is not a field of fastener"),
        ("count: 4, at", "count: x, at", "count must be a whole number, not 'x'"),
        ("screw: T20, count: 1, under", "screw: X9, count: 1, under", "'X9' cannot be read as a drive"),
        ("avoid: Use a wide tool", "avod: Use a wide tool", "'avod' is not a field of caution"),
        ("behind: [radio]", "behind: [radio, ~]", "entry 2 of 'behind' is blank"),
        ("after: [bezel]", "after: [{prat: bezel}]", "'prat' is not a field of prerequisite"),
        ("sets: {battery: off}", "sets: {battery: of}", "'of' is not a known battery"),
        ("make: Brindleway", "make: [Brindleway]", "make must be text, not a list"),
        ("to: 2018-01", "to: 2018-13", "'2018-13' is not a valid month"),
    ],
)
def test_one_mistake_gives_one_problem(old: str, new: str, message: str) -> None:
    assert RICH.count(old) >= 1, old
    [problem] = check(RICH.replace(old, new, 1))
    assert (problem.rule, problem.message) == ("schema", message)


def test_a_mistake_does_not_hide_those_elsewhere() -> None:
    text = RICH.replace("name: Screw cap", "nmae: Screw cap").replace("{screw: T20, count: 4}", "{screw: T20}")
    assert [p.rule for p in check(text)] == ["schema", "fastener-without-count"]
    text = (
        RICH.replace("name: Main plug\n", "nmae: Main plug\n")
        .replace("evidence: ", "")
        .replace("source: e2", "source: e9")
    )
    assert "named-but-absent" in [p.rule for p in check(text)]


# Crashes, workspaces, many files


def crashing(level: Level = Level.ERROR) -> Any:
    def fail(_: object) -> Iterator[Finding]:
        raise RuntimeError("boom\n\x1b[31m " + "z" * 900)

    return SimpleNamespace(LEVEL=level, check=fail, check_gear=fail, check_all=fail)


def test_a_rule_that_crashes_is_named_and_the_others_go_on(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(RECORD_RULES, "a-bad-rule", crashing())
    problems = check(RICH.replace("{screw: T20, count: 4}", "{screw: T20}"))
    assert [p.rule for p in problems] == ["crash", "fastener-without-count"]
    crash = problems[0]
    assert crash.message.startswith("the rule 'a-bad-rule' failed here: RuntimeError: boom??[31m zzz")
    assert len(crash.message) < 300
    assert crash.hint == "this is our fault, not the record's: report it with the record"
    assert crash.level is Level.ERROR


def test_a_rule_that_fails_half_way_keeps_nothing_back_from_others(monkeypatch: pytest.MonkeyPatch) -> None:
    def half(_: Subject) -> Iterator[Finding]:
        yield Finding(("vehicle",), message("rules/unused-part/nothing-needs", part="x"))
        raise KeyError("x")

    monkeypatch.setitem(RECORD_RULES, "a-bad-rule", SimpleNamespace(LEVEL=Level.WARNING, check=half))
    assert [p.rule for p in check(RICH)] == ["crash"]


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Workspace:
    (tmp_path / PATH).parent.mkdir(parents=True)
    (tmp_path / PATH).write_text(BASE, encoding="utf-8")
    (tmp_path / "records/gear/speakers").mkdir(parents=True)
    for path in GEAR.glob("*.yaml"):
        if b"tried:" not in path.read_bytes():  # names vehicles that are not here
            (tmp_path / "records/gear/speakers" / path.name).write_bytes(path.read_bytes())
    monkeypatch.chdir(tmp_path)
    return Workspace.holding(tmp_path)


def test_collection_and_gear_rules_may_crash_too(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(COLLECTION_RULES, "a-bad-rule", crashing())
    assert [p.rule for p in runner.check(place).problems] == ["crash"]
    monkeypatch.delitem(COLLECTION_RULES, "a-bad-rule")
    monkeypatch.setitem(GEAR_RULES, "a-bad-rule", crashing())
    report = runner.check(place)
    assert {p.rule for p in report.problems} == {"crash"}
    assert len(report.problems) == report.records - 1


def overlapping(place: Workspace, built: str = "{from: 2016-01, to: 2020-01}") -> Path:
    path = place.root / PATH.with_stem("otter-2016-2020")
    text = (
        BASE.replace("takes: 3 min", "takes: 4 min")
        .replace("{from: 2014-01, to: 2018-01}", built)
        .replace('by: rk, car: "2016"', 'by: tw, car: "2018"')
    )
    path.write_text(text, encoding="utf-8")
    return path


def rules(report: runner.Report) -> list[tuple[str, str]]:
    return [(problem.file.stem, problem.rule) for problem in report.problems]


def test_overlaps_are_found_with_the_neighbours_of_what_is_asked_for(place: Workspace) -> None:
    other = overlapping(place)
    both = [(PATH.stem, "overlapping-records"), (other.stem, "overlapping-records")]
    assert rules(runner.check(place)) == both
    assert rules(runner.check(place, [other])) == both
    assert runner.check(place, [other]).records == 1


def test_neighbours_are_not_put_through_the_rules(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    looked: list[str] = []

    def note(subject: Subject) -> Iterator[Finding]:
        looked.append(subject.entry.id)
        yield from ()

    monkeypatch.setitem(RECORD_RULES, "a-note", SimpleNamespace(LEVEL=Level.ERROR, check=note))
    other = overlapping(place)
    runner.check(place, [other], crew=Here())
    assert looked == [other.stem]


def test_an_allow_hides_what_a_collection_rule_says(place: Workspace) -> None:
    other = overlapping(place)
    text = other.read_text(encoding="utf-8")
    other.write_text(text.replace("  built:", "  # allow overlapping-records: two plants\n  built:"), encoding="utf-8")
    assert rules(runner.check(place)) == [(PATH.stem, "overlapping-records")]
    (place.root / PATH).unlink()
    [problem] = runner.check(place).problems
    assert problem.message == "this allow of 'overlapping-records' hides nothing"


@pytest.mark.parametrize("fault", ["bodies: van", "phase: Late One", "tell: [x]", "follws: x"])
def test_a_record_whose_vehicle_is_broken_gives_no_false_overlap(place: Workspace, fault: str) -> None:
    other = overlapping(place)
    text = other.read_text(encoding="utf-8")
    other.write_text(text.replace("  high_voltage:", f"  {fault}\n  high_voltage:", 1), encoding="utf-8")
    assert {rule for _, rule in rules(runner.check(place))} <= {"schema", "yaml"}


def test_a_record_that_cannot_be_read_is_not_called_absent(place: Workspace) -> None:
    other = overlapping(place, "{from: 2018-01, to: 2020-01}")
    other = other.rename(other.with_stem("otter-2018-2020"))
    text = other.read_text(encoding="utf-8")
    other.write_text(text.replace("  high_voltage:", f"  follows: {PATH.stem}\n  high_voltage:", 1), encoding="utf-8")
    assert runner.check(place).problems == ()
    first = place.root / PATH
    first.write_text(BASE.replace("make: Brindleway", "make:"), encoding="utf-8")
    assert rules(runner.check(place)) == [(PATH.stem, "schema")]
    first.unlink()
    assert rules(runner.check(place)) == [(other.stem, "gap-after-neighbour")]


def test_workers_give_the_same_report_as_one_process(place: Workspace) -> None:
    for number in range(70):
        text = BASE.replace("model: Otter", f"model: Otter {number}")
        if number % 7 == 0:
            text = text.replace("{screw: T20, count: 4}", "{screw: T20}")
        if number % 11 == 0:
            text = text.replace("takes: 3 min", "taks: 3 min # allow fastener-without-count: x")
        if number % 13 == 0:
            text += "a: ["
        (place.root / PATH.parent / f"otter-{number}-2014-2018.yaml").write_text(text, encoding="utf-8")
    seen: list[tuple[int, int]] = []
    parallel = runner.check(place, (), lambda done, total: seen.append((done, total)))
    serial = runner.check(place, crew=Here())
    assert parallel == serial
    assert parallel.errors >= 18
    assert seen == [(number, parallel.records) for number in range(1, parallel.records + 1)]
