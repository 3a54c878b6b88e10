"""What a page keeps of a visit and says of its tray: every fastener out lies there until it is back, moved or bagged, whatever was passed over."""

import json
import random
from collections import Counter
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from in_node import Run
from undertrim.derive import cars
from undertrim.publish.facts.vehicle import vehicle
from undertrim.publish.packing import unpacked
from undertrim.publish.web import pages
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

SPACE = Workspace(Path(__file__).parents[2])
VEHICLES = SPACE.files([SPACE.records / "vehicles"])
each_vehicle = pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)

ROWS = """(all) => all.map(([data, jobs, car, chosen, at]) => {
  const steps = visit_selection.selection(data.plans, jobs, car).map((number) => data.steps[number]);
  const done = new Set(steps.length ? chosen.map((share) => steps[Math.floor(share * steps.length)].id) : []); // an opening that no way leads to has no steps
  const isDone = (step) => at === "end" || (at === "in order" ? false : done.has(step.id));
  const place = at === "end" ? steps.length : Math.floor(at * steps.length);
  const ordered = steps.map((_, k) => visit_tray.tray(steps, (step) => steps.indexOf(step) < k, k, car));
  return {
    ids: steps.map((step) => step.id), done: steps.filter(isDone).map((step) => step.id), place,
    rows: visit_tray.tray(steps, isDone, place, car), passed: visit_tray.passedOver(steps, isDone, place, car),
    unbalanced: ordered.flatMap((rows, k) => rows.filter((row) => row.over || row.now < 0).map((row) => [k, row])),
    looks: visit_tray.looks(steps, car).map((place) => steps[place].id),
  };
})"""


@cache
def answers(run: Run, path: Path) -> list[tuple[dict[str, Any], dict[str, str], dict[str, Any]]]:
    entry = SPACE.load(path)
    assert isinstance(entry.record, VehicleRecord)
    data = run("page_data.whole", unpacked(json.loads(str(pages.page_data(vehicle(entry))))), "page-data")
    chance = random.Random(entry.id)  # noqa: S311 - repeatable picks
    asked: list[list[Any]] = []
    for car in cars.assignments(entry.record):
        every = list(next(plan for plan in data["plans"] if plan["car"].items() <= car.items())["singles"])
        for _ in range(6):
            jobs = sorted(chance.sample(every, chance.randint(1, len(every))), key=every.index)
            asked.append(
                [data, jobs, car, [chance.random() for _ in range(40)], chance.choice(["end", chance.random()])]
            )
    found = run(ROWS, asked, "visit-selection", "visit-tray")
    return [(data, one[2], answer) for one, answer in zip(asked, found, strict=True)]


def moved(step: dict[str, Any], car: dict[str, str]) -> dict[str, Counter[str]]:
    """What a step adds to the tally, by sort, for a car."""
    sums: dict[str, Counter[str]] = {}
    for line in step["lines"]:
        if any(car.get(name) not in allowed for name, allowed in line["clauses"].items()):
            continue
        for count in line["counts"]:
            sums.setdefault(count["sort"], Counter()).update({fate: count[fate] for fate in ("out", "back", "moved", "bagged", "binned")})  # fmt: skip
    return sums


@each_vehicle
def test_the_tray_holds_what_is_out_and_nothing_else(run: Run, path: Path) -> None:
    for data, car, answer in answers(run, path):
        steps = {step["id"]: step for step in data["steps"]}
        now: Counter[str] = Counter()
        bagged: Counter[str] = Counter()
        for name in answer["done"]:
            for sort, count in moved(steps[name], car).items():
                now[sort] += count["out"] - count["back"] - count["moved"] - count["bagged"] - count["binned"]
                bagged[sort] += count["bagged"]
        rows = {row["sort"]: row for row in answer["rows"]}
        assert {sort: row["now"] for sort, row in rows.items() if row["now"]} == {sort: one for sort, one in now.items() if one}  # fmt: skip
        assert {sort: row["bagged"] for sort, row in rows.items() if row["bagged"]} == {sort: one for sort, one in bagged.items() if one}  # fmt: skip


@each_vehicle
def test_who_ticks_every_step_in_order_has_nothing_left_over_at_any_moment(run: Run, path: Path) -> None:
    for _, _, answer in answers(run, path):
        assert answer["unbalanced"] == []
        if answer["place"] == len(answer["ids"]):
            assert all(row["now"] == row["over"] == 0 for row in answer["rows"])


@each_vehicle
def test_what_is_passed_over_is_named(run: Run, path: Path) -> None:
    for data, car, answer in answers(run, path):
        steps = {step["id"]: step for step in data["steps"]}
        before = answer["ids"][: answer["place"]]
        expected = [
            place
            for place, name in enumerate(before)
            if name not in answer["done"]
            and any(one["out"] or one["back"] or one["moved"] for one in moved(steps[name], car).values())
        ]
        assert answer["passed"] == expected


@each_vehicle
def test_the_tray_is_looked_into_before_each_battery_is_joined_and_the_last_part_goes_on(run: Run, path: Path) -> None:
    for data, _, answer in answers(run, path):
        steps = {step["id"]: step for step in data["steps"]}
        joined = [name for name in answer["ids"] if any(turn[0] == "battery" and turn[2] == "on" for turn in steps[name]["turns"])]  # fmt: skip
        assert set(joined) <= set(answer["looks"])
        refits = [name for name in answer["ids"] if steps[name]["section"] == "refit" and steps[name]["lines"]]
        assert len(set(answer["looks"]) - set(joined)) <= 1
        if refits:
            assert set(answer["looks"]) & (set(refits) | set(joined))


STORE = """(asked) => {
  const kept = new Map();
  globalThis.localStorage = new Proxy({
    getItem: (key) => kept.has(key) ? kept.get(key) : null, setItem: (key, value) => { kept.set(key, String(value)); }, removeItem: (key) => { kept.delete(key); },
  }, { ownKeys: () => [...kept.keys()], getOwnPropertyDescriptor: (_, key) => ({ value: kept.get(key), enumerable: true, configurable: true }) });
  return (%s)(asked);
}"""
VISIT = {"id": "0123456789abcdef", "vehicle": "kelbrook/finch-2014-2018", "title": "Finch", "name": "red", "text": "jobs=dash", "language": "en", "began": 5, "changed": 9, "steps": 3, "done": {"a": 7}, "waits": {}, "notes": {"a": "n"}, "spoilt": {"a": {"clip": 1}}, "report": {"who": "rk"}}  # fmt: skip


def stored(run: Run, program: str, asked: Any) -> Any:
    return run(STORE % program, asked, "visits")


def test_a_visit_that_is_kept_is_the_same_again(run: Run) -> None:
    program = "(one) => { visits.keep(one); return [visits.byName(one.id), visits.every(), visits.forget(one.id), visits.every()]; }"
    assert stored(run, program, VISIT) == [VISIT, [VISIT], VISIT, []]


@pytest.mark.parametrize(
    "spoilt",
    [
        "nothing", "", "[]", "null", "{}", json.dumps({**VISIT, "id": "../x"}), json.dumps({**VISIT, "vehicle": "https://elsewhere"}), json.dumps({**VISIT, "vehicle": "a/b/../../c"}), json.dumps({**VISIT, "text": 3}),
    ],
)  # fmt: skip
def test_what_is_no_visit_is_none(run: Run, spoilt: str) -> None:
    assert run("(text) => visits.fromText(text)", spoilt, "visits") is None


def test_of_a_visit_what_is_no_such_thing_counts_as_nothing(run: Run) -> None:
    odd = {**VISIT, "done": {"a": 7, "b": "x", "c": -1, "d": 1e300}, "notes": {"a": 5}, "spoilt": {"a": {"clip": "two"}, "b": 3}, "report": [], "name": 7, "waits": None, "steps": "many"}  # fmt: skip
    read = run("(text) => visits.fromText(text)", json.dumps(odd), "visits")
    assert read == {**VISIT, "done": {"a": 7}, "notes": {}, "spoilt": {}, "report": {}, "name": "", "waits": {}, "steps": 0}  # fmt: skip


MEANT = """([kept, current, text]) => {
  kept.forEach((one) => { visits.keep(one); });
  if (current) visits.takeUp(visits.byName(current));
  const got = visits.meant("kelbrook/finch-2014-2018", "Finch", text);
  return [kept.some((one) => one.id === got.id) ? got.id[0] : "another", got.text, visits.every().length];
}"""


def kept(letter: str, text: str, changed: int, **more: Any) -> dict[str, Any]:
    return {**VISIT, "id": letter * 16, "text": text, "changed": changed, **more}


UNBEGUN: dict[str, Any] = {"done": {}, "notes": {}, "spoilt": {}, "report": {}, "name": ""}


@pytest.mark.parametrize(
    ("given", "current", "text", "expected"),
    [
        ([], "", "jobs=dash", ["another", "jobs=dash", 0]),
        ([kept("a", "jobs=dash", 1), kept("b", "jobs=dash", 2)], "a" * 16, "jobs=dash", ["a", "jobs=dash", 2]),
        ([kept("a", "jobs=dash", 1), kept("b", "jobs=dash", 2)], "", "", ["b", "jobs=dash", 2]),
        ([kept("a", "jobs=dash", 1), kept("b", "jobs=rear", 2)], "b" * 16, "jobs=dash", ["a", "jobs=dash", 2]),
        # a link from elsewhere does not change what is under way, but does what is only chosen
        ([kept("a", "jobs=dash", 1)], "a" * 16, "jobs=rear", ["another", "jobs=rear", 1]),
        ([kept("a", "jobs=dash", 1, **UNBEGUN)], "a" * 16, "jobs=rear", ["a", "jobs=rear", 1]),
        ([kept("a", "jobs=dash", 1, vehicle="kelbrook/other-1990-1995")], "", "", ["another", "", 1]),
    ],
)
def test_which_visit_an_address_means(run: Run, given: Any, current: str, text: str, expected: list[Any]) -> None:
    assert stored(run, MEANT, [given, current, text]) == expected


def test_two_devices_at_one_visit_have_done_what_either_has(run: Run) -> None:
    program = "([mine, other]) => { visits.keep(mine); visits.takeOver(other); return visits.byName(mine.id); }"
    mine, other = {**VISIT, "done": {"a": 1}, "changed": 20, "name": "mine"}, {**VISIT, "done": {"b": 2}, "changed": 10, "name": "other"}  # fmt: skip
    for first, second in ((mine, other), (other, mine)):
        assert stored(run, program, [first, second]) == {**mine, "done": {"a": 1, "b": 2}}


def test_a_change_keeps_what_another_tab_changed(run: Run) -> None:
    program = """(one) => { visits.keep(one); visits.change(one, (kept) => { kept.done.b = 8; }); visits.change(one, (kept) => { kept.notes.c = "later"; }); const { changed, ...rest } = visits.byName(one.id); return rest; }"""  # `one` is what a tab has known since before
    expected = {**VISIT, "done": {"a": 7, "b": 8}, "notes": {"a": "n", "c": "later"}}
    del expected["changed"]
    assert stored(run, program, VISIT) == expected


def test_a_visit_goes_through_an_address(run: Run) -> None:
    program = """async ([one, page]) => {
      const address = await visit_passed.addressOf(one, page);
      const got = await visit_passed.arrived("#" + address.split("#")[1]);
      return [address.split("#")[0], address.length < 900, got, visits.byName(one.id), await visit_passed.arrived("#take=AAAA"), await visit_passed.arrived("#steps"),
              await visit_passed.addressOf({ ...one, notes: Object.fromEntries(Array.from({ length: 999 }, (_, k) => ["s" + k, String(Math.sin(k))])) }, page)];
    }"""
    wrapped = program.replace("async (", "(async (").rstrip() + ")"
    found = run(STORE % wrapped, [VISIT, "file:///site/vehicles/a/b.html?jobs=dash#steps"], "visit-passed", "visits")
    assert found == ["file:///site/vehicles/a/b.html", True, VISIT, VISIT, None, None, ""]


@pytest.mark.parametrize(
    ("seconds", "face"),
    [(0, "0:00"), (9.9, "0:09"), (59, "0:59"), (60, "1:00"), (750, "12:30"), (3723, "1:02:03"), (-4, "0:00")],
)
def test_the_face_of_the_clock(run: Run, seconds: float, face: str) -> None:
    assert run("(value) => clock_face.clockFace(value)", seconds, "clock-face") == face
