"""Every file, every rule, all problems in one run; and whatever a record holds, a problem and never an exception."""

import json
import re
from collections.abc import Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from rule_pages import BASE

from here import Here
from undertrim.check import runner
from undertrim.check.findings import Finding, Subject
from undertrim.check.register import COLLECTION_RULES, GEAR_RULES, RECORD_RULES
from undertrim.record.build import KEYED
from undertrim.record.copying import copied
from undertrim.record.problem import Level, Problem
from undertrim.record.source import Pointer, read, read_bytes, read_text
from undertrim.record.spreading import spread
from undertrim.record.store import Workspace, entry
from undertrim.words import message

ROOT = Path(__file__).parents[2]
PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")
RICH = (
    BASE.replace('car: "2016"', 'car: "2016, yes"')
    .replace("evidence:\n", 'evidence:\n  e2: {how: seen, on: 2026-03-09, by: tw, car: "2015, no"}\n')
    .replace("    replaced: yes\n", "    replaced: yes\n    after: [bezel]\n")
    .replace(
        "parts:\n",
        """variants:
  sound:
    ask: Is there an amplifier?
    choices: {plain: {label: No, tell: No badge}, loud: {label: Yes, tell: A badge}}
    source: e2
connectors:
  main:
    name: Main plug
    at: radio/main
    view: wires
    rows: 2
    columns: 4
    pins: {4: {colour: red/white, function: battery-feed, when: {sound: loud}}}
parts:
  cap: {name: Screw cap, release: unclip, held_by: [{clip: push, count: 2}]}
  bezel:
    name: Radio bezel
    release: pull
    held_by: [{clip: push, count: 4, at: {top: 2, bottom: 2}}, {screw: T20, count: 1, under: cap}]
    cautions: [{signal: NOTICE, hazard: Soft edge, consequence: It tears, avoid: Use a wide tool}]
""",
    )
)
GEAR = ROOT / "records/gear/speakers"


def check(text: str, kind: str = "vehicle", path: Path = PATH) -> tuple[Problem, ...]:
    return runner.check_entry(entry(path, kind, read_text(text, path)))


def said(problems: tuple[Problem, ...]) -> list[str]:
    return [f"{p.position.line}: {p.message} [{p.rule}]" for p in problems]


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


def places(data: Any, pointer: Pointer = ()) -> Iterator[Pointer]:
    if pointer:
        yield pointer
    steps = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    for step, inner in steps:
        yield from places(inner, (*pointer, step))


def put(data: Any, pointer: Pointer, value: Any) -> Any:
    changed = copied(data)
    inner = changed
    for step in pointer[:-1]:
        inner = inner[step]
    inner[pointer[-1]] = value
    return changed


def remove(data: Any, pointer: Pointer) -> Any:
    changed = copied(data)
    inner = changed
    for step in pointer[:-1]:
        inner = inner[step]
    del inner[pointer[-1]]
    return changed


def rename(data: Any, pointer: Pointer, name: str) -> Any:
    changed = copied(data)
    inner = changed
    for step in pointer[:-1]:
        inner = inner[step]
    entries = [(name if key == pointer[-1] else key, value) for key, value in inner.items()]
    inner.clear()
    inner.update(entries)
    return changed


def written(data: Any) -> str:
    """The data as YAML: JSON is YAML, each value on its own line and quoted."""
    return json.dumps(data, indent=1, ensure_ascii=False)


RICH_DATA = read_text(RICH, PATH).data


@pytest.mark.parametrize("junk", [None, ["x"], {"x": "y"}, "???"], ids=str)
def test_what_the_schema_refuses_is_told_by_the_schema_alone(junk: Any) -> None:
    for place in places(RICH_DATA):
        if len(place) == 1 or place == ("variants", "sound") or (place[-1] in KEYED and isinstance(junk, dict)):
            continue  # what is named is truly gone then, or nothing rests on 'e2' any more
        problems = check(written(put(RICH_DATA, place, junk)))
        if any(problem.rule == "schema" for problem in problems):
            assert {problem.rule for problem in problems} == {"schema"}, (place, said(problems))


# Random damage

RAW = re.compile(
    r"\{'\w|\['\w|\[\{'|\bNone\b|<class|is not of type|is a required property|Additional propert|does not match|is not one of"
    r"|is too long$|is too short$|non-empty|is not valid under|has non-unique|\$defs|\$ref|urn:|while scanning|while parsing"
    r"|did not find|unexpected end of stream|Traceback"
)
JUNK: list[Any] = [
    None, "", " ", "x", "???", "é\u0301", "-1", "0", "9" * 400, "unknown", "none", "yes", "62 mm", "12 min", "1/0 in", "T20", "a: b", "# x",
    "\x1b[31m", "\n", "a\nb", "\u202e", "x" * 3000, "'", '"', "{}", "..", "a/b", "2016-13", "2026-02-30", [], {}, [None], [[]], {"": None},
    ["x"], ["x", "x"], {"x": "y"}, {"part": "radio"}, {"when": {}}, [{"screw": "T20"}], {"screw": {"screw": []}},
]  # fmt: skip
SEEDS: list[tuple[str, Any]] = [
    ("vehicle", RICH_DATA),
    ("vehicle", spread(read(ROOT / "records/vehicles/kelbrook/finch-2014-2018.yaml")).data),
    ("gear", read(GEAR / "sandmartin-bank-65.yaml").data),
    ("gear", read(next(iter((ROOT / "records/gear/harnesses").glob("*.yaml")))).data),
]
ALL_PLACES = [list(places(data)) for _, data in SEEDS]


@st.composite
def damaged(draw: st.DrawFn) -> tuple[str, Any, Any]:
    number = draw(st.sampled_from([0, 0, 0, 1, 2, 3]))
    kind, good = SEEDS[number]
    data = good
    for _ in range(draw(st.integers(1, 3))):
        there = list(places(data))
        if not there:
            break
        data = draw(damage(data, draw(st.sampled_from(there)), there))
    return kind, good, data


@st.composite
def damage(draw: st.DrawFn, data: Any, place: Pointer, there: list[Pointer]) -> Any:
    match draw(st.sampled_from(["junk", "text", "remove", "rename", "nest", "swap", "add"])):
        case "junk":
            return put(data, place, draw(st.sampled_from(JUNK)))
        case "text":
            return put(data, place, draw(st.text(max_size=50).filter(lambda text: not RAW.search(text))))
        case "remove":
            return remove(data, place)
        case "rename" if isinstance(place[-1], str):
            return rename(data, place, draw(st.sampled_from([place[-1] + "s", place[-1][1:], "x y", "", "minutes"])))
        case "nest":
            return put(data, place, {str(place[-1]): at(data, place)})
        case "swap":
            return put(data, place, copied(at(data, draw(st.sampled_from(there)))))
    holder = at(data, place)
    return put(data, (*place, "colour-of-it"), "red") if isinstance(holder, dict) else data


def at(data: Any, place: Pointer) -> Any:
    for step in place:
        data = data[step]
    return data


def sound(problem: Problem, text: str) -> bool:
    lines = text.split("\n")
    line, column = problem.position.line, problem.position.column
    return (
        1 <= line <= len(lines)
        and 1 <= column <= len(lines[line - 1]) + 1  # something empty may stand behind the last character
        and bool(problem.message)
        and problem.message.isprintable()
        and problem.hint.isprintable()
        and not problem.message[0].isupper()
        and not problem.message.endswith(".")
        and not RAW.search(problem.message)
        and not RAW.search(problem.hint)
        and problem.rule != runner.CRASH
    )


@settings(max_examples=250, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(damaged())
def test_damage_gives_problems_and_no_exception(case: tuple[str, Any, Any]) -> None:
    kind, _, data = case
    text = written(data)
    problems = check(text, kind)
    assert [problem for problem in problems if not sound(problem, text)] == []
    assert len(problems) < 200


@settings(max_examples=100, deadline=None)
@given(st.text(alphabet=st.sampled_from("ab:-?[]{}#&*!|>'\"%@`, \n\t\\~.<=\r\x1b\u2028é"), max_size=60))
def test_any_text_gives_problems_and_no_exception(text: str) -> None:
    lines = re.sub("\r\n?", "\n", text)
    assert [problem for problem in check(text) if not sound(problem, lines)] == []


@settings(max_examples=60, deadline=None)
@given(st.binary(max_size=80))
def test_any_bytes_give_problems_and_no_exception(raw: bytes) -> None:
    found = runner.check_entry(entry(PATH, "vehicle", read_bytes(raw, PATH)))
    assert found
    assert all(problem.rule in ("yaml", "schema") for problem in found)


def test_no_field_vanishes_under_another_name() -> None:
    for number, (kind, good) in enumerate(SEEDS[:1] + SEEDS[2:]):
        for place in places(good):
            if isinstance(place[-1], str):
                problems = check(written(rename(good, place, f"{place[-1]}_q")), kind)
                assert any(problem.rule == "schema" for problem in problems), (number, place)


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
    text = BASE.replace("{from: 2014-01, to: 2018-01}", built).replace('by: rk, car: "2016"', 'by: tw, car: "2018"')
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
