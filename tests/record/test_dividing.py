"""A fact may be a list of values, each with its cars: the whole then has what is around it once for each kind of car."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from undertrim.check import looking
from undertrim.derive import jobs
from undertrim.derive.procedure.planning import Planner
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Position
from undertrim.record.source import Source, read_text
from undertrim.record.spreading import spread
from undertrim.record.store import entry

PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")
HEAD = """format: 2
demo: yes
vehicle:
  make: Brindleway
  model: Otter
  built: {from: 2014-01, to: 2018-01}
  drive_side: left
  high_voltage: no
variants:
  radio: {ask: "Which radio?", choices: {map: {label: Map radio, tell: A MAP key}, plain: {label: Plain radio, tell: Six keys}}}
  sound: {ask: "Which sound?", choices: {amplified: {label: Amplified, tell: A badge}, bare: {label: Bare, tell: No badge}}}
evidence:
  e1: {how: measured, on: 2026-03-02, by: rk, car: {year: 2016, is: {radio: unknown, sound: unknown}}, with: Calliper 0.05 mm}
  e2: {how: seen, on: 2026-03-02, by: rk, car: {year: 2016, is: {radio: unknown, sound: unknown}}}
"""
BODY = """parts:
  bezel:
    area: dash
    release: pull
    held_by: {clip: push, count: [{when: {radio: map}, is: 4}, {when: {radio: plain}, is: 6}]}
    takes: [{when: {radio: map}, is: 2 min}, {when: {radio: plain}, is: 1 min}]
    source: e2
  radio:
    area: dash
    after: bezel
    release: unscrew
    held_by: {screw: T20, count: 4, under: bezel}
    tethers: {main: [Main plug, plug, sound]}
    replaced: yes
    takes: 3 min
    source: e2
openings:
  dash:
    kind: receiver
    behind: radio
    face: [{when: {radio: map}, width: 182 mm, height: 146 mm}, {when: {radio: plain}, width: 182 mm, height: 112 mm}]
    kit: needed
    depth: {clear: 170 mm, datum: face, obstruction: plastic, to: Duct}
    source: e1
connectors:
  main:
    at: radio/main
    view: wires
    rows: 1
    columns: 4
    latch: top
    numbering: rows
    source: e2
    pins:
      1: [red, battery-feed, steady]
      2: [yellow, wheel-buttons, resistance]
      3: [black, ground]
      4: [{when: {sound: amplified}, colour: blue/white, function: amplifier-turn-on}, {when: {sound: bare}, is: [orange, illumination, dimmed-plus]}]
ladders:
  wheel: {pin: main/2, return: main/3, tolerance: 5 %, buttons: {mute: 1 kohm}, source: e1}
conflicts:
  depth: {about: openings/dash/depth/clear, claims: [[170 mm, e1], [165 mm, e2]]}
"""
LINES = len(HEAD.splitlines())


def whole(text: str) -> Source:
    return spread(read_text(text, PATH))


def record(text: str) -> VehicleRecord:
    found = entry(PATH, "vehicle", read_text(text, PATH))
    assert isinstance(found.record, VehicleRecord), found.problems
    return found.record


def at(data: Any, place: str) -> Any:
    for step in place.split("/"):
        data = data[int(step) if step.isdecimal() and isinstance(data, list) else step]
    return data


@pytest.mark.parametrize(
    ("place", "value"),
    [
        ("openings/dash-map/face/height", "146 mm"),
        ("openings/dash-plain/face/height", "112 mm"),
        ("openings/dash-map/when", {"radio": "map"}),
        ("openings/dash-plain/not_in", [{"radio": "map"}]),
        ("openings/dash-plain/depth/clear", "170 mm"),
        ("openings/dash-plain/area", "dash"),
        ("openings/dash-plain/name", "Dash (Plain radio)"),
        ("parts/bezel-map/name", "Bezel"),
        ("parts/bezel-map/takes", "2 min"),
        ("parts/bezel-plain/held_by", [{"clip": "push", "count": "6"}]),
        ("parts/radio/after", ["bezel-map", "bezel-plain"]),
        ("parts/radio/held_by/0/under", "bezel-map"),
        ("parts/radio/held_by/1/when", {"radio": "plain"}),
        ("connectors/main-amplified/pins/4/function", "amplifier-turn-on"),
        ("connectors/main-bare/pins/4", {"colour": "orange", "function": "illumination", "behaves": "dimmed-plus"}),
        ("connectors/main-bare/at", "radio/main"),
        ("ladders/wheel-bare/pin", "main-bare/2"),
        ("ladders/wheel-bare/return", "main-bare/3"),
        ("ladders/wheel-amplified/when", {"sound": "amplified"}),
        ("conflicts/depth-plain/about", "openings/dash-plain/depth/clear"),
    ],
)
def test_each_kind_of_car_has_its_own(place: str, value: Any) -> None:
    assert at(whole(HEAD + BODY).data, place) == value


def test_only_what_differs_stands_twice_and_nothing_is_wrong() -> None:
    found = whole(HEAD + BODY).data
    assert list(found["parts"]) == ["bezel-map", "bezel-plain", "radio"]
    assert list(found["openings"]) == ["dash-map", "dash-plain"]
    assert list(found["ladders"]) == ["wheel-amplified", "wheel-bare"]
    assert "when" not in found["parts"]["radio"]
    assert entry(PATH, "vehicle", read_text(HEAD + BODY, PATH)).problems == ()


def changed(old: str, new: str) -> str:
    assert (HEAD + BODY).count(old) == 1
    return (HEAD + BODY).replace(old, new)


@pytest.mark.parametrize(
    ("old", "new", "wanted"),
    [
        ("height: 112 mm}", "height: 112 m}", (21, 105, "schema/quantity")),
        ("{radio: plain}, is: 1 min", "{radio: map}, is: 1 min", (6, 40, "spread/two-values")),
    ],
)
def test_a_mistake_in_a_value_leads_to_where_it_was_typed(old: str, new: str, wanted: tuple[int, int, str]) -> None:
    found = entry(PATH, "vehicle", read_text(changed(old, new), PATH)).problems
    print([(p.position.line - LINES, p.position.column, p.said.code) for p in found])
    line, column, code = wanted
    assert any((p.position.line - LINES, p.position.column, p.said.code) == (line, column, code) for p in found)
