"""The standing of a record and what is in the way of a stamp."""

import copy
from typing import Any

import pytest

from making import made
from undertrim.derive.evidence.fingerprint import fingerprints
from undertrim.derive.evidence.obstacles import obstacles
from undertrim.derive.evidence.standing import Standing, Word, standing
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Pointer
from undertrim.words import sentence, way_out

GOOD: dict[str, Any] = {
    "evidence": {"e1": {"how": "measured", "on": "2026-03-02", "by": "rk"}},
    "restraint": {"wait": "3 min", "memory_keeper": "forbidden", "read_faults_first": "no"},
    "preps": {"battery": {"sets": {"battery": "off"}, "restore": "Join it.", "wait": {"time": "1 min", "why": "Unit"}}},
    "parts": {
        "p": {"tethers": {"bag": {"name": "Bag", "kind": "plug", "circuit": "restraint", "then": "leave"}}, "area": "dash"},
        "seat": {"held_by": [{"hook": "tab", "count": "2", "role": "seat"}, {"bolt": "T50", "count": "4", "role": "seat", "torque": "40 N.m"}]},
    },
    "openings": {"dash": {"behind": ["p"], "area": "dash"}, "front-door": {"behind": ["seat"], "crash_sensor": "no"}},
}  # fmt: skip


def changed(*path: Any, to: Any) -> dict[str, Any]:
    """GOOD with one thing put somewhere, or taken away with None."""
    data = copy.deepcopy(GOOD)
    inner: Any = data
    for step in path[:-1]:
        inner = inner.setdefault(step, {}) if isinstance(inner, dict) else inner[step]
    if to is None:
        del inner[path[-1]]
    else:
        inner[path[-1]] = to
    return data


def places(data: dict[str, Any]) -> list[Pointer]:
    record = made(data).record
    assert isinstance(record, VehicleRecord)
    found = obstacles(record)
    assert all(sentence(item.said) and way_out(item.said) for item in found)
    return [item.pointer for item in found]


def test_nothing_is_in_the_way_of_a_record_that_leaves_nothing_open() -> None:
    assert places(GOOD) == []


TORQUE = ("parts", "seat", "held_by", 1, "torque")
VOLTAGE = ("vehicle", "high_voltage")


@pytest.mark.parametrize(
    ("data", "wanted"),
    [
        (changed("restraint", to=None), ("parts", "p", "tethers", "bag")),
        (changed("restraint", "wait", to="unknown"), ("restraint", "wait")),
        (changed("restraint", "wait", to="none"), ("restraint", "wait")),
        (changed("restraint", "memory_keeper", to=None), ("restraint", "memory_keeper")),
        (changed("restraint", "read_faults_first", to="unknown"), ("restraint", "read_faults_first")),
        (changed("preps", "battery", "wait", "time", to="unknown"), ("preps", "battery", "wait", "time")),
        (changed("openings", "front-door", "crash_sensor", to=None), ("openings", "front-door", "crash_sensor")),
        (changed("openings", "front-door", "crash_sensor", to="unknown"), ("openings", "front-door", "crash_sensor")),
        (changed(*VOLTAGE, to="unknown"), VOLTAGE),
        (changed(*TORQUE, to="unknown"), TORQUE),
        (changed(*TORQUE, to=None), TORQUE),
        (changed("preps", "battery", "held_by", to=[{"nut": "hex 17 mm", "role": "wheel"}]), ("preps", "battery", "held_by", 0, "torque")),
        (changed("parts", "seat", "held_by", 1, "role", to="belt"), None),
        (changed("parts", "seat", "held_by", 1, to={"bolt": "T50", "role": "belt", "leave": "yes"}), None),
        (changed("parts", "seat", "held_by", 1, to={"bolt": "T50"}), None),
        (changed("after_battery", to={"checked_none": ["before"]}), ("after_battery",)),
        (changed("after_battery", to={"not_listed": "unknown", "checked_none": ["before"]}), ("after_battery",)),
        (changed("after_battery", to={"checked_none": ["before"], "after": {"clock": {"do": "Set it."}}}), None),
        (changed("openings", "front-door", "area", to="load-bay"), None),
        (changed("restraint", to={"fitted": "no", "wait": "none"}), None),
    ],
)  # fmt: skip
def test_one_thing_in_the_way(data: dict[str, Any], wanted: Pointer | None) -> None:
    assert places(data) == ([wanted] if wanted else [])


def test_without_a_restraint_block_what_shows_a_restraint_is_named() -> None:
    bare = changed("restraint", to=None)
    del bare["parts"]["p"]["tethers"]
    assert places(bare) == [("preps", "battery")]
    assert places({**bare, "areas": {"dash": {"restraints": ["Bag"]}}}) == [("areas", "dash")]
    del bare["preps"]
    assert places(bare) == [("openings",)]


def test_a_speaker_that_is_in_no_door_has_no_door_sensor() -> None:
    data = changed("openings", "front-door", "crash_sensor", to=None)
    data["openings"]["front-door"]["area"] = "load-bay"
    assert places(data) == []


def test_high_voltage_is_asked_for_each_thing_of_a_vehicle_that_has_it() -> None:
    data = {**changed("vehicle", "high_voltage", to="yes"), "areas": {"dash": {"high_voltage": "near"}}}
    assert places(data) == [("parts", "seat", "high_voltage"), ("openings", "front-door", "high_voltage")]
    data["parts"]["seat"]["high_voltage"] = "clear"
    data["openings"]["front-door"]["high_voltage"] = "unknown"
    assert places(data) == [("openings", "front-door", "high_voltage")]


@pytest.mark.parametrize(("by", "open_"), [({}, True), ({"settled_by": "e1"}, False), ({"settled_by": "e2"}, True)])
def test_an_open_conflict(by: dict[str, str], open_: bool) -> None:
    claims = [{"says": "62 mm", "source": "e1"}, {"says": "60 mm", "source": "e2"}]
    conflict = {"about": "openings/front-door/depth/clear", "claims": claims, **by}
    assert places({**GOOD, "conflicts": {"c": conflict}}) == ([("conflicts", "c")] if open_ else [])


def stamped(data: dict[str, Any]) -> dict[str, Any]:
    facts = fingerprints(made(data).source.data)
    return {**data, "verified": {"on": "2026-04-02", "by": "rk", "car": "2016", "facts": facts}}


def stands(data: dict[str, Any]) -> Standing:
    item = made(data)
    assert isinstance(item.record, VehicleRecord)
    return standing(item.record, item.source.data)


def test_the_words() -> None:
    assert stands(GOOD).word is Word.UNVERIFIED
    assert stands(stamped(GOOD)).word is Word.VERIFIED
    assert stands(stamped(changed("restraint", "wait", to="unknown"))).word is Word.UNVERIFIED


def test_an_edit_makes_it_stale() -> None:
    edited = {**stamped(GOOD), "restraint": {**GOOD["restraint"], "wait": "unknown"}}
    found = stands(edited)
    assert (found.word, found.changes.changed) == (Word.STALE, ("restraint",))
    assert [item.pointer for item in found.obstacles] == [("restraint", "wait")]


def test_what_is_no_fact_may_be_edited() -> None:
    data = stamped(GOOD)
    data["evidence"] = {**data["evidence"], "e2": {"how": "seen", "on": "2026-05-02", "by": "tw"}}
    assert stands(data).word is Word.VERIFIED
