"""A record in which facts differ between kinds of car: what is written once stands in its whole once for each."""

from pathlib import Path

from undertrim.record.model import VehicleRecord
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


def whole(text: str) -> Source:
    return spread(read_text(text, PATH))


def record(text: str) -> VehicleRecord:
    found = entry(PATH, "vehicle", read_text(text, PATH))
    assert isinstance(found.record, VehicleRecord), found.problems
    return found.record


def changed(old: str, new: str) -> str:
    assert (HEAD + BODY).count(old) == 1
    return (HEAD + BODY).replace(old, new)
