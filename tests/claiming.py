"""A record and claims files about it, in a workspace of their own."""

import json
from pathlib import Path
from typing import Any

import pytest

from undertrim import cli

HOME = Path("records/vehicles/brindleway")
FILE = HOME / "otter-2014-2018.yaml"
ADDRESS = "brindleway/otter-2014-2018"
RECORD = """format: 2
demo: yes

# Seen twice.
vehicle:
  make: Brindleway
  model: Otter
  built: {from: 2014-01, to: 2018-01}
  came_with: {bodies: hatchback, drive_side: left, high_voltage: no}
  source: e1

variants:
  radio: {ask: "Which radio is in the dash?", choices: {plain: [Plain radio, Six number keys], map: [Map radio, A MAP key]}}

cars:
  white: {year: 2016, is: {radio: map}}

evidence:
  e1: {how: measured, on: 2026-03-02, by: rk, car: white, with: Calliper 0.05 mm}  # twice
  e2: {how: seen, on: 2026-03-03, by: tw, car: {year: 2015, is: {radio: plain}}}

preps:
  battery:
    state: {sets: {battery: off}}
    how: Undo the clamp.
    restore: Put the clamp back.
    held_by: {nut: hex 10 mm, count: 1}
    source: e1

restraint: {wait: unknown, memory_keeper: unknown, read_faults_first: unknown}

parts:
  radio:
    area: dash
    release: [slide, 3 min, replaced]
    held_by: {screw: T20, count: 4}
    source: [e1, e2]
  front-door-speaker:
    where: {area: front-door, each: [left, right]}
    release: [unscrew, 2 min, replaced]
    held_by: {screw: T20, count: 4}
    source: e1

openings:
  dash:
    kind: [receiver, kit needed]
    behind: radio
    sizes: {face: [182 mm, 112 mm]}
    depth:
      - {when: {radio: map}, clear: 165 mm}  # to the beam
      - {when: {radio: plain}, clear: unknown}
    source: [e1, e2]
  front-door:
    kind: [speaker, front, 6.5 in, 4 ohm]
    behind: front-door-speaker
    sizes: {hole: [round, 146 mm], bolts: [circle, 4, 160 mm]}
    depth: {clear: unknown, datum: skin, over: whole-travel}
    crash_sensor: unknown
    source: e1

functions:
  unknown: {functions: [reverse, speed]}

sound:
  factory: {output: unknown}

after_battery: unknown
"""
SHARED = {
    "claims": 1,
    "vehicle": ADDRESS,
    "by": "zz",
    "on": "2026-11-20",
    "how": "measured",
    "with": "Calliper 0.05 mm",
    "car": {"year": 2015, "is": {"radio": "plain"}},
}


def lay(folder: Path) -> None:
    """Put the record into a folder."""
    (folder / HOME).mkdir(parents=True)
    (folder / FILE).write_text(RECORD, encoding="utf-8")


def claims(*answers: dict[str, Any], **shared: Any) -> Path:
    file = Path("found.json")
    file.write_text(json.dumps({**SHARED, **shared, "answers": list(answers)}), encoding="utf-8")
    return file


def run(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str, str]:
    code = cli.main(["take", *map(str, words)])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def says(about: str, value: str, **more: Any) -> dict[str, Any]:
    return {"about": about, "says": value, **more}


def lines() -> list[str]:
    """What stands in the record now and did not."""
    return [line.strip() for line in FILE.read_text(encoding="utf-8").splitlines() if line not in RECORD.splitlines()]
