"""Asks `undertrim meter` about one record that may be changed."""

import json
from pathlib import Path
from typing import Any

import pytest

from undertrim.cli import main

OTTER = "otter-2014-2018"
RECORD = "records/vehicles/brindleway/otter-2014-2018.yaml"
TEXT = """\
format: 1
demo: yes
vehicle:
  make: Brindleway
  model: Otter
  built: {from: 2014-01, to: 2018-01}
  drive_side: [left]
  high_voltage: no
variants:
  radio:
    ask: Which radio is in the dash?
    choices:
      plain: {label: Plain radio, tell: Six number keys}
      map: {label: Map radio, tell: A key marked MAP}
parts:
  radio:
    name: Radio
    release: pull
    tethers:
      radio-main: {name: Main radio plug, kind: plug}
openings:
  dash:
    name: Dash
    kind: receiver
    behind: [radio]
    kit: needed
    face: {width: 182 mm, height: 112 mm}
    depth: {clear: 170 mm}
connectors:
  radio-main:
    name: Main radio plug
    at: radio/radio-main
    view: wires
    rows: 2
    columns: 8
    blanks: ["14"]
    pins:
      3: {colour: white, function: front-left-plus}
      4: {colour: yellow, function: battery-feed}
      5: {colour: blue, function: antenna-feed, supply: 8 V}
      13: {colour: pink, function: switched-feed}
      15: {colour: light green, function: wheel-buttons, when: {radio: map}}
after_battery: {checked_none: [before, after]}
"""


def laid_down(folder: Path) -> Path:
    """One record, free to be changed."""
    file = folder / RECORD
    file.parent.mkdir(parents=True)
    file.write_text(TEXT, encoding="utf-8")
    return folder


def run(workspace: Path, *arguments: str, readings: tuple[str, ...] = ()) -> int:
    typed = [part for text in readings for part in ("--reading", text)]
    return main(["meter", *arguments, *typed, "--in", str(workspace)])


def text(workspace: Path, capsys: pytest.CaptureFixture[str], *arguments: str, readings: tuple[str, ...] = ()) -> str:
    assert run(workspace, *arguments, readings=readings) == 0
    return " ".join(capsys.readouterr().out.split())


def data(workspace: Path, capsys: pytest.CaptureFixture[str], *arguments: str, readings: tuple[str, ...] = ()) -> Any:
    assert run(workspace, *arguments, "--format", "json", readings=readings) == 0
    return json.loads(capsys.readouterr().out)


def edit(workspace: Path, old: str, new: str) -> None:
    file = workspace / RECORD
    before = file.read_text(encoding="utf-8")
    assert old in before
    file.write_text(before.replace(old, new, 1), encoding="utf-8")
