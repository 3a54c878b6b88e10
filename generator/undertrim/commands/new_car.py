"""Begins the record of a car: what is asked of it in shop words, and what is written."""

import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from undertrim.check import starting
from undertrim.check.starting import Fresh
from undertrim.commands import prompts
from undertrim.commands.gathering import Gathering, Saying, names, nested_all
from undertrim.commands.usage import Usage
from undertrim.derive.questions.blocks import BlockField, fields
from undertrim.publish.build.day import today
from undertrim.record import claims
from undertrim.record.beginning import NewCar
from undertrim.record.claims import NewVehicle
from undertrim.record.fields import root
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import printable
from undertrim.record.store import Entry, Workspace
from undertrim.words import Message, message, say

_NEW, _BY = ("new_vehicle",), ("by",)
_ASKED = ("make", "model", "built", "bodies", "drive_side", "high_voltage", "dash", "doors", "boot")
_ALSO = ("tell", "gearboxes", "forty_eight_volt", "note")
"""What may be said behind the command or in a file; nobody is asked for it."""
_NOW = "now"
_MONTH = re.compile(
    r"(?P<year>(?:19|20)\d\d)(?:-(?P<month>0?[1-9]|1[0-2]))?|(?P<before>0?[1-9]|1[0-2])[/.](?P<after>(?:19|20)\d\d)"
)


def questions() -> list[BlockField]:
    """What is asked of every car, and who says so."""
    asked = list(fields("claim", root("claim/newVehicle"), _NEW, dict.fromkeys(_ASKED, True)))
    by = fields("claim", root("claim"), (), {"by": True})
    months = {"built/from": ("first", _first), "built/to": ("last", _after)}
    named = [
        replace(one, named=months[one.name][0], reads=months[one.name][1]) if one.name in months else one
        for one in asked
    ]
    return [*named, *(replace(one, named="by") for one in by)]


def saying() -> Saying:
    """The questions as a shop would ask them."""
    labels: dict[str, Callable[[str], Message]] = {
        "bodies": lambda word: message(f"body/{word}"),
        "drive_side": lambda word: message(f"drive-side/{word}"),
        "dash": lambda word: message("new/unknown" if word == "unknown" else f"new/dash-{word}"),
        "doors": lambda word: message(f"areas/{word}-door"),
        "high_voltage": lambda word: message(f"new/{word}"),
        "boot": lambda word: message(f"new/{word}"),
    }
    elsewhere = {"by": message("ask/by"), "drive_side": message("drive-side/ask")}
    names_of = [one.name for one in questions() if one.name not in elsewhere]
    return Saying(elsewhere | {name: message(f"new/ask-{name}") for name in names_of}, labels)


def _first(typed: str) -> str:
    """The month that somebody says a car was built from; what is none stays as it is typed."""
    return _written(typed, 1, 0)


def _after(typed: str) -> str:
    """The month after the last one that somebody says, as a record has it."""
    return _written(typed, 12, 1)


def _written(typed: str, otherwise: int, later: int) -> str:
    year, month = _month(typed)
    count = year * 12 + (month or otherwise) - 1 + later
    return f"{count // 12:04}-{count % 12 + 1:02}" if year else typed


def _month(typed: str) -> tuple[int, int]:
    """Year and month; 0 for a month that is not said, and for both where it is none."""
    if typed.strip().casefold() == _NOW:
        return today().year, today().month
    found = _MONTH.fullmatch(typed.strip())
    return (int(found["year"] or found["after"]), int(found["month"] or found["before"] or 0)) if found else (0, 0)


def asked(pairs: dict[str, str], *, asks: bool) -> NewCar:
    """The car by what was typed behind the command, and what somebody answers. Raises Usage and Stopped."""
    gathering = Gathering(pairs, asks)
    wanted, also = questions(), list(fields("claim", root("claim/newVehicle"), _NEW, dict.fromkeys(_ALSO, False)))
    gathering.refuse_unknown(names([*wanted, *also]))
    gathering.of(wanted, saying())
    said = dict(replace(gathering, asks=False).of(also))
    who = str(said.pop(_BY))
    only_years = any(not _month(gathering.typed[name])[1] for name in ("first", "last"))
    return NewCar(nested_all(said, _NEW), who, today().isoformat(), only_years=only_years)


def of_file(path: Path) -> NewCar:
    """The car that a claims file describes. Raises Usage."""
    file = claims.read(path)
    for problem in file.problems:
        raise Usage(message("new/wrong", name=f"{printable(str(path))}:{problem.position.line}", said=problem.said))
    if file.new is None:
        raise Usage(message("new/no-car", path=printable(str(path))))
    return described(file.new)


def described(new: NewVehicle) -> NewCar:
    """The car as a claims file describes it: who looked at one has seen it."""
    return NewCar(new.said, new.by, new.on, "seen" if new.car else "told", new.car)


def begin(place: Workspace, car: NewCar, like: Entry | None, *, another: bool) -> Fresh | Message:
    """The record for it, or why there is none; nothing is written."""
    found = starting.known(place, car.facts)
    if found and (found[0].same or not another):
        return found[0].said
    if (path := place.own("vehicles", car.path)).exists():
        return message("copy/there", path=printable(str(place.shown(path))))
    return starting.like(place, car, like) if like else starting.fresh(place, car)


def like_which(place: Workspace) -> str:
    """The record that somebody at the terminal says it is like; empty for none. Raises Stopped."""
    return prompts.text(say(message("new/ask-like")), lambda said: _no_record(place, said.strip()))


def _no_record(place: Workspace, name: str) -> str:
    try:
        if name:
            vehicle_file(place, name)
    except NotFound as error:
        return say(error.said)
    return ""


def sister(place: Workspace, name: str) -> Entry:
    """The record that a new one is to begin with. Raises Usage."""
    try:
        found = place.load(vehicle_file(place, name))
    except NotFound as error:
        raise Usage(error.said) from error
    if not isinstance(found.record, VehicleRecord):
        raise Usage(message("copy/broken", path=printable(str(found.source.path))))
    return found


def other_names() -> dict[str, str]:
    """What people call the questions besides."""
    misnamed = root("claim/newVehicle").schema["misnamed"]
    return {**misnamed, "side": "drive_side", "from": "first", "to": "last", "hybrid": "high_voltage"}
