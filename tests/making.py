"""Makes small vehicle records in memory from YAML, with what every record needs filled in."""

import textwrap
from dataclasses import replace
from pathlib import Path
from typing import Any

from undertrim.derive.jobs import wanted
from undertrim.derive.procedure.planning import Planner, Procedure
from undertrim.derive.procedure.steps import Step
from undertrim.record.model import DOORS, VehicleRecord
from undertrim.record.source import read_text
from undertrim.record.store import Entry, entry

PATH = Path("records", "vehicles", "brindleway", "otter-2014-2018.yaml")
VEHICLE = {
    "make": "Brindleway",
    "model": "Otter",
    "built": {"from": "2014-01", "to": "2018-01"},
    "drive_side": ["left"],
    "high_voltage": "no",
}
SPEAKER = {"hole": {"shape": "round", "diameter": "146 mm"}, "depth": {"clear": "62 mm", "datum": "skin"}}
RECEIVER = {
    "kit": "needed",
    "face": {"width": "182 mm", "height": "112 mm"},
    "depth": {"clear": "170 mm"},
}
AMPLIFIER = {
    "space": {"width": "380 mm", "height": "90 mm", "depth": "290 mm"},
    "run": "to-boot",
}
USUAL: dict[str, dict[str, Any]] = {
    "receiver": RECEIVER,
    "speaker": SPEAKER,
    "amplifier": AMPLIFIER,
    "tweeter": {"mount": "unknown", "feed": "unknown"},
}
"""What each kind of opening must have."""


def record(*pieces: str) -> VehicleRecord:
    """The record that the pieces make: sections as in a file. Names, ways of release and dimensions may be left out."""
    source = read_text("".join(map(textwrap.dedent, pieces)), PATH)
    assert not source.problems, source.problems
    return from_data(source.data)


def from_data(data: dict[str, Any]) -> VehicleRecord:
    """The same for data as read from YAML, every scalar as text."""
    item = made(data)
    assert isinstance(item.record, VehicleRecord)
    return item.record


def made(data: dict[str, Any]) -> Entry:
    """The whole entry; the schema must have nothing against it."""
    whole = {
        "format": "1",
        "demo": "yes",
        "after_battery": {"checked_none": ["before", "after"]},
        **data,
        "vehicle": {**VEHICLE, **data.get("vehicle", {})},
        "preps": _filled(data.get("preps", {}), how="Do it."),
        "parts": _filled(data["parts"], release="lift"),
        "openings": {name: _opening(name, item or {}) for name, item in data["openings"].items()},
    }
    item = entry(PATH, "vehicle", replace(read_text("", PATH), data=whole))
    assert not item.problems, [problem.message for problem in item.problems]
    return item


def _filled(section: dict[str, Any], **usual: str) -> dict[str, Any]:
    return {name: {"name": _name(name), **usual, **(item or {})} for name, item in section.items()}


def _opening(name: str, item: dict[str, Any]) -> dict[str, Any]:
    kind = item.get("kind", "receiver" if name == "dash" else "speaker")
    usual = USUAL[kind]
    area = {"area": name if name in DOORS else "boot"} if kind == "speaker" else {}
    return {"name": _name(name), "kind": kind, **area, **usual, **item}


def _name(name: str) -> str:
    return name.replace("-", " ").capitalize()


def plan(about: VehicleRecord, *jobs: str, **car: str) -> Procedure:
    """The procedure for jobs, as typed on the command line, at a car; `_` in a variant's name is a hyphen."""
    choices = {name.replace("_", "-"): choice for name, choice in car.items()}
    return Planner(about).plan(wanted(about, jobs), choices)


def ids(about: VehicleRecord, *jobs: str, **car: str) -> list[str]:
    """The ids of its steps."""
    return [step.id for step in plan(about, *jobs, **car).steps]


def at_work(about: VehicleRecord, *jobs: str, **car: str) -> list[str]:
    """The ids of its steps on parts and preparations alone: no installs, tests or power."""
    kinds = ("prepare", "wait", "remove", "move", "refit", "restore")
    return [step.id for step in plan(about, *jobs, **car).steps if step.kind in kinds]


def step(procedure: Procedure, name: str) -> Step:
    """One step by its id."""
    return next(item for item in procedure.steps if item.id == name)
