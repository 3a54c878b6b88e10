"""What the record of a new car says: sections by name, each thing as a record of format 2 has it."""

from collections.abc import Iterator
from typing import Any

from undertrim.record.beginning.car import NewCar
from undertrim.record.source import Data
from undertrim.resources import table
from undertrim.words import message, say

UNKNOWN = "unknown"
USUAL, TOLD = "usual", "e1"
"""Ids of evidence: that nobody looked, and that somebody described the car."""

_FLOOR, _RUN = "load-floor", "battery-to-load-floor"
_SIDES = ["left", "right"]


def sections(car: NewCar) -> dict[str, Data]:
    """All sections, in the order of a record."""
    # Long because it is one table: a line for each section.
    doors = [f"{door}-door" for door in car.doors]
    boot = ["boot"] if car.said["boot"] != "no" else []
    return {
        "vehicle": {**car.vehicle, "source": TOLD},
        "evidence": _evidence(car),
        "preps": {"battery": _battery()},
        "areas": {area: {"restraints": UNKNOWN} for area in ("dash", *doors, *boot)},
        "restraint": {"wait": UNKNOWN, "memory_keeper": UNKNOWN, "read_faults_first": UNKNOWN},
        "parts": dict(_parts(car)),
        "openings": dict(_openings(car)),
        "functions": {UNKNOWN: {"functions": list(table("questions")["functions"])}},
        "sound": {"factory": {"output": UNKNOWN, "least_load": UNKNOWN}},
        **({"runs": {_RUN: _run()}} if boot else {}),
        "after_battery": UNKNOWN,
    }


def _evidence(car: NewCar) -> dict[str, Data]:
    """Who described the car, and that nobody has looked at what is usual."""
    told: dict[str, Data] = {"how": car.how, "on": car.on, "by": car.by}
    told |= {"car": car.car} if car.car else {}
    told |= {"note": car.said["note"]} if "note" in car.said else {}
    return {TOLD: told, USUAL: {"how": USUAL, "on": car.on, "by": car.by, "note": _say("evidence-usual")}}


def _battery() -> Data:
    return {
        "name": _say("name-battery"),
        "needs": {"ignition": "off"},
        "sets": {"battery": "off"},
        "how": _say("how-battery"),
        "restore": _say("restore-battery"),
        "held_by": [{"nut": UNKNOWN, "count": "1"}],
        "source": USUAL,
    }


def _parts(car: NewCar) -> Iterator[tuple[str, Data]]:
    """The dash, each door as a group of its own for both sides, and the load floor."""
    rows = table("beginning")["parts"]
    of_dash = table("beginning")["dash"][car.said["dash"]]["parts"]
    yield "dash", {"parts": {name: _part(name, rows[name]) for name in of_dash}}
    of_door = [name for name in rows if name.startswith("door-")]
    for door in car.doors:
        parts = {f"{door}-{name}": _part(name, rows[name], f"{door}-") for name in of_door}
        yield f"{door}-door", {"each": _SIDES, "parts": parts}
    if car.said["boot"] != "no":
        cover = _part(f"{_FLOOR}-cover", rows[f"{_FLOOR}-cover"])
        yield f"{_FLOOR}-cover", {**cover, "area": "boot"}


def _part(name: str, row: dict[str, Any], door: str = "") -> dict[str, Data]:
    """One usual part, with a source of its own, since each is seen by itself; the parts of a door are named for it, and so is what they wait for."""
    part: dict[str, Data] = {"name": _say(f"name-{door}{name}")}
    part |= {"after": f"{door}{row['after']}"} if "after" in row else {}
    part |= {field: row[field] for field in ("needs", "release", "held_by") if row.get(field)}
    if "tethers" in row:
        part["tethers"] = {each: _tether(each, said) for each, said in row["tethers"].items()}
    return {**part, "how": _say(f"how-{name}"), "source": USUAL}


def _tether(name: str, row: dict[str, Any]) -> dict[str, Data]:
    tether: dict[str, Data] = {"name": _say(f"tether-{name}"), "kind": row["kind"]}
    tether |= {"serves": row["serves"]} if "serves" in row else {}
    return tether | ({"test": _say(f"test-{name}")} if row.get("test") else {})


def _openings(car: NewCar) -> Iterator[tuple[str, Data]]:
    """A place for a receiver, for a pair of speakers in each row of doors, and for an amplifier in the load floor."""
    behind = table("beginning")["dash"][car.said["dash"]]["behind"]
    face = {"width": UNKNOWN, "height": UNKNOWN}
    depth = {"depth": {"clear": UNKNOWN}}
    yield "dash", _opening("dash", "receiver", behind) | {"kit": UNKNOWN, "face": face} | depth
    for door in car.doors:
        speakers = _opening(f"{door}-door", "speaker", f"{door}-door-speaker")
        yield f"{door}-door", speakers | depth | {"crash_sensor": UNKNOWN}
    if car.said["boot"] != "no":
        space = {"width": UNKNOWN, "height": UNKNOWN, "depth": UNKNOWN}
        yield _FLOOR, _opening(_FLOOR, "amplifier", f"{_FLOOR}-cover") | {"space": space, "run": _RUN}


def _opening(name: str, kind: str, behind: str) -> dict[str, Data]:
    return {"name": _say(f"opening-{name}"), "kind": kind, "behind": behind, "source": TOLD}


def _run() -> Data:
    return {
        "name": _say("run"),
        "from": say(message("amplifier-shown/battery")),
        "to": _say("run-to"),
        "length": UNKNOWN,
    }


def _say(code: str) -> str:
    return say(message(f"beginning/{code}"))
