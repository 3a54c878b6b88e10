"""A visit as data: one car, or every kind of car that was left open."""

import re
from pathlib import Path
from typing import Any

import pytest

from making import plan, record
from undertrim.derive.jobs import BadRequest, car, wanted
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.visit import totals
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts.totals import shown
from undertrim.publish.facts.visit import visit
from undertrim.publish.terminal.plan import plan_text
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import say

WORKSPACE = Workspace.holding(Path(__file__))
SHIPPED = WORKSPACE.files([WORKSPACE.records / "vehicles"])

ABOUT = record("""
    vehicle: {drive_side: [left, right]}
    restraint: {wait: 3 min}
    variants:
      radio: {ask: Which radio has it, choices: {plain: {label: Plain radio, tell: Number keys}, map: {label: Map radio}}}
    parts:
      vent-trim:
        takes: 2 min
        tethers: {lamp: {name: Airbag lamp plug, kind: plug, circuit: restraint, then: leave}}
      brace: {when: {radio: map}, after: [vent-trim], held_by: [{screw: T20, count: 2}], takes: 1 min}
      radio:
        replaced: yes
        after: [vent-trim, brace]
        held_by:
          - {screw: hex 7/32 in, count: 4}
          - {screw: T15, count: 1, when: {radio: map}}
        tethers:
          main: {name: Main plug, kind: plug}
          map: {name: Map antenna, kind: coax, when: {radio: map}, then: park}
        takes: 4 min
      panel:
        each: [left, right]
        cautions: [{signal: NOTICE, when: {drive-side: right}, hazard: Thin edge., consequence: It breaks., avoid: Go slowly.}]
    openings:
      dash: {behind: [radio]}
      front-door: {each: [left, right], behind: [panel], crash_sensor: no}
      wood: {behind: [panel], when: {radio: map}, crash_sensor: no}
""")


def see(*names: str, about: VehicleRecord = ABOUT, **choices: str) -> Published:
    fixed = {name.replace("_", "-"): choice for name, choice in choices.items()}
    return visit(about, "brindleway/otter-2014-2018", wanted(about, names), car(about, fixed))


def find(made: Published, name: str) -> dict[str, Any]:
    step: dict[str, Any] = next(step for step in made["steps"] if step["id"] == name)
    return step


def test_one_car_has_the_steps_of_its_plan() -> None:
    made = see("dash", radio="map", drive_side="left")
    assert [step["id"] for step in made["steps"]] == [
        step.id for step in plan(ABOUT, "dash", radio="map", drive_side="left").steps
    ]
    assert made["open_variants"] == []
    assert all(step["when"] == "" for step in made["steps"])


def test_a_step_carries_what_a_tech_needs() -> None:
    step = find(see("dash", radio="map", drive_side="left"), "remove:radio")
    assert {key: step[key] for key in ("id", "kind", "part", "side", "section", "minutes")} == {
        "id": "remove:radio", "kind": "remove", "part": "radio", "side": "", "section": "remove", "minutes": 4,
    }  # fmt: skip
    assert [(line["text"], line["tool"]) for line in step["fasteners"]] == [
        ("4 × hex 7/32 in screws", "socket 7/32 in"),
        ("1 × T15 screw", "T15 bit"),
    ]
    assert [(line["id"], line["act"]) for line in step["tethers"]] == [("main", "undo"), ("map", "undo")]
    assert [c["signal"] for c in find(see("dash", radio="map"), "remove:vent-trim")["cautions"]] == ["WARNING"]


def test_lines_of_other_cars_are_left_out() -> None:
    step = find(see("dash", radio="plain"), "remove:radio")
    assert [line["sort"] for line in step["fasteners"]] == ["hex 7/32 in"]
    assert [line["id"] for line in step["tethers"]] == ["main"]


def test_a_variant_left_open_is_covered_and_marked() -> None:
    made = see("dash", drive_side="left")
    assert [(item["id"], [choice["id"] for choice in item["choices"]]) for item in made["open_variants"]] == [
        ("radio", ["plain", "map"])
    ]
    brace = find(made, "remove:brace")
    assert (brace["when"], brace["clauses"]) == ("Map radio", {"radio": ["map"]})
    assert find(made, "remove:radio")["when"] == ""
    lines = find(made, "remove:radio")["fasteners"]
    assert [(line["sort"], line["when"]) for line in lines] == [("hex 7/32 in", ""), ("T15", "Map radio")]


def test_a_variant_that_makes_no_difference_to_the_job_is_not_asked() -> None:
    assert [item["id"] for item in see("dash")["open_variants"]] == ["radio"]
    assert [item["id"] for item in see("front-door@left")["open_variants"]] == ["drive-side"]


def test_a_caution_for_other_cars_is_left_out() -> None:
    assert [c["signal"] for c in find(see("front-door@left", drive_side="left"), "remove:panel@left")["cautions"]] == []
    assert [c["signal"] for c in find(see("front-door@left"), "remove:panel@left")["cautions"]] == ["NOTICE"]


def test_cars_that_come_to_the_same_stand_together() -> None:
    made = see("dash")
    assert [entry["cars"] for entry in made["cars"]] == [
        [{"radio": "plain", "drive-side": side} for side in ("left", "right")],
        [{"radio": "map", "drive-side": side} for side in ("left", "right")],
    ]
    for entry in made["cars"]:
        own = plan(ABOUT, "dash", **{name.replace("-", "_"): choice for name, choice in entry["cars"][0].items()})
        assert entry["totals"] == said(shown(totals.of(own.steps)))


def test_blockers_are_those_of_the_job() -> None:
    about = record("""
        parts: {radio: {}, panel: {}}
        openings:
          dash: {behind: [radio]}
          door: {behind: [panel], crash_sensor: yes}
    """)
    about_sensor = [item["title"] for item in see("dash", about=about)["blockers"] if "sensor" in item["title"]]
    assert about_sensor == []
    assert any("sensor" in item["title"] for item in see("door", about=about)["blockers"])


def test_the_route_taken_is_named() -> None:
    about = record("""
        parts:
          tray: {takes: 9 min}
          cup: {takes: 1 min}
          surround: {after_any: [{from-above: [tray], from-below: [cup]}]}
        openings:
          dash: {behind: [surround]}
    """)
    assert see("dash", about=about)["routes"] == [
        {"part": "surround", "route": "from-below", "of": ["from-above", "from-below"], "car": {}}
    ]


def test_an_opening_that_no_such_car_has_is_refused() -> None:
    with pytest.raises(BadRequest) as caught:
        see("wood", "dash", radio="plain")
    assert say(caught.value.said) == "no car with Plain radio has 'Wood'"
    assert "remove:panel@left" in [step["id"] for step in see("wood")["steps"]]


TURNED = record("""
    variants:
      dash: {ask: Which one, choices: {early: {label: Early}, late: {label: Late}}}
    parts:
      bezel: {after: [{part: tray, when: {dash: early}}]}
      tray: {after: [{part: bezel, when: {dash: late}}]}
      glovebox:
    openings:
      dash: {behind: [bezel, tray]}
      low: {behind: [glovebox]}
""")


def test_cars_whose_steps_stand_in_no_common_order_must_be_told_apart() -> None:
    with pytest.raises(BadRequest) as caught:
        see("dash", about=TURNED)
    assert say(caught.value.said).endswith("no common order: say which it is with --variant dash=...")
    assert [step["id"] for step in see("dash", about=TURNED, dash="late")["steps"] if step["kind"] == "remove"] == [
        "remove:bezel",
        "remove:tray",
    ]
    assert "remove:glovebox" in [step["id"] for step in see("low", about=TURNED)["steps"]]


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_every_visit_left_open_keeps_the_order_of_every_car(path: Path) -> None:
    entry = WORKSPACE.load(path)
    about = entry.record
    assert isinstance(about, VehicleRecord)
    planner = Planner(about)
    for chosen in ([target] for target in targets(about)):
        made = visit(about, entry.address, chosen, {})
        names = [step["id"] for step in made["steps"]]
        assert len(names) == len(set(names))
        for kinds in made["cars"]:
            for one in kinds["cars"]:
                own = [step.id for step in planner.plan(chosen, one).steps]
                assert own == [name for name in names if name in own]
        printed = plan_text(made)
        numbered = [found.groups() for found in re.finditer(r"^ *(\d+)\. (.+)$", printed, re.MULTILINE)]
        assert [int(number) for number, _ in numbered] == list(range(1, len(names) + 1))
        for (_, line), step in zip(numbered, made["steps"], strict=True):
            assert line.startswith(f"{step['verb']} {step['title']}".strip())
