"""Conflicts: the fact they lead to, the cautious claim, what settles them."""

from typing import Any

import pytest

from making import from_data
from undertrim.derive.evidence import cautious
from undertrim.derive.evidence.conflicts import Dispute, Unsettled, disputes
from undertrim.derive.evidence.facts import Fact, fact_at
from undertrim.derive.evidence.readings import read, same
from undertrim.record.fields import document_of, root
from undertrim.record.source import Data

HOWS = {"e1": "measured", "e2": "told", "e3": "measured"}
EVIDENCE = {name: {"how": how, "on": "2026-03-02", "by": "rk"} for name, how in HOWS.items()}
BASE: dict[str, Any] = {
    "evidence": EVIDENCE,
    "restraint": {"wait": "3 min"},
    "parts": {
        "p": {
            "held_by": [{"clip": "push", "count": "4"}, {"bolt": "T50", "count": "2", "torque": "40 N.m"}],
            "tethers": {"plug": {"name": "Plug", "kind": "plug", "circuit": "restraint", "then": "leave"}},
        }
    },
    "openings": {"front-door": {"behind": ["p"], "room_to_grille": "unknown", "crash_sensor": "yes"}},
}


def dispute(about: str, *says: str, **extra: str) -> Dispute:
    claims = [{"says": text, "source": f"e{number}"} for number, text in enumerate(says, 1)]
    record = from_data({**BASE, "conflicts": {"c": {"about": about, "claims": claims, **extra}}})
    [found] = disputes(record)
    return found


@pytest.mark.parametrize(
    ("about", "fact"),
    [
        ("openings/front-door/depth/clear", Fact(("openings", "front-door", "depth", "clear"), "62 mm", "length")),
        ("openings/front-door/room_to_grille", Fact(("openings", "front-door", "room_to_grille"), "unknown", "length")),
        ("openings/front-door/crash_sensor", Fact(("openings", "front-door", "crash_sensor"), "yes")),
        ("parts/p/held_by/1/torque", Fact(("parts", "p", "held_by", 1, "torque"), "40 N.m", "torque")),
        ("parts/p/held_by/0/count", Fact(("parts", "p", "held_by", 0, "count"), "4")),
        ("parts/p/tethers/plug/circuit", Fact(("parts", "p", "tethers", "plug", "circuit"), "restraint")),
        ("vehicle/built/from", Fact(("vehicle", "built", "from"), "2014-01")),
        ("restraint/memory_keeper", Fact(("restraint", "memory_keeper"), "unknown")),
    ],
)
def test_keys_lead_to_the_fact(about: str, fact: Fact) -> None:
    assert fact_at(from_data(BASE), about) == fact


@pytest.mark.parametrize(
    "about",
    [
        "openings/front-door/depth",
        "openings/front-door/factory_spacer",
        "openings/front-door/id",
        "openings/nowhere/depth/clear",
        "openings/front-door/crash_sensor/more",
        "openings/front-door/depth/clear/value",
        "parts/p/held_by/2/torque",
        f"parts/p/held_by/{'9' * 5000}/torque",
        "parts/p/held_by/x/torque",
        "parts/p/held_by",
        "parts/p/held_by/0/drive",
        "vehicle/built/from_",
        "vehicle/built/from/year",
        "evidence/e1/how",
        "nowhere/at/all",
    ],
)
def test_what_is_no_single_fact(about: str) -> None:
    assert fact_at(from_data(BASE), about) is None


@pytest.mark.parametrize(
    ("about", "says", "wanted"),
    [
        ("restraint/wait", ["2 min", "180 s"], "180 s"),
        ("restraint/wait", ["2 min", "unknown"], "unknown"),
        ("restraint/wait", ["none", "1 min"], "1 min"),
        ("openings/front-door/depth/clear", ["64 mm", "2 1/2 in"], "2 1/2 in"),
        ("openings/front-door/depth/clear", ["64 mm", "61 mm", "62 mm"], "61 mm"),
        ("openings/front-door/room_to_grille", ["20 mm", "deep"], "unknown"),
        ("openings/front-door/hole/diameter", ["146 mm", "14.5 cm"], "14.5 cm"),
        ("openings/front-door/crash_sensor", ["no", "yes"], "yes"),
        ("openings/front-door/crash_sensor", ["no", "unknown"], "unknown"),
        ("openings/front-door/crash_sensor", ["no", "perhaps"], "unknown"),
        ("openings/front-door/high_voltage", ["clear", "near"], "near"),
        ("openings/front-door/high_voltage", ["inside", "near"], "inside"),
        ("openings/front-door/impedance", ["2 ohm", "4 ohm"], "4 ohm"),
        ("parts/p/held_by/1/torque", ["40 N.m", "45 N.m"], "unknown"),
        ("parts/p/tethers/plug/circuit", ["ordinary", "restraint"], "restraint"),
        ("restraint/memory_keeper", ["allowed", "forbidden"], "forbidden"),
        ("vehicle/high_voltage", ["no", "yes"], "yes"),
        ("parts/p/held_by/0/count", ["4", "6"], "unknown"),
        ("openings/front-door/bolts/diameter", ["150 mm", "152 mm"], "unknown"),
    ],
)
def test_the_cautious_claim(about: str, says: list[str], wanted: str) -> None:
    kind = (fact_at(from_data(BASE), about) or Fact((), "")).kind
    kind = kind or ("length" if "mm" in says[0] else "resistance" if "ohm" in says[0] else "")
    assert cautious.choose(cautious.order(about), [read(text, kind) for text in says]) == wanted
    assert cautious.choose(cautious.order(about), [read(text, kind) for text in reversed(says)]) == wanted


def test_every_order_is_about_a_field_of_the_schema_and_gives_a_reason() -> None:
    for known in cautious.orders():
        node = _node(known.about)
        assert node is not None, known.about
        assert known.reason
        assert known.extreme in ("", "smallest", "largest")
        assert bool(known.extreme) <= ("quantity" in node or known.about.endswith("/face/*"))
        assert set(known.words) in (set(), set(node.get("enum", ())))
        assert known.safety or known.words or known.extreme


def _node(about: str) -> Data:
    steps = about.split("/")
    node = root(document_of(tuple(steps)))
    for step in steps:
        below = node.child(step) or node.child("dash") or node.child("boot") or node.child("width") or node.child(0)
        if below is None:
            return None
        node = below
    return node.schema


@pytest.mark.parametrize(
    ("one", "other", "kind", "alike"),
    [
        ("64 mm", "6.4 cm", "length", True),
        ("64 mm", "64.2 mm", "length", False),
        ("3 min", "180 s", "time", True),
        ("unknown", "unknown", "time", True),
        ("unknown", "3 min", "time", False),
        ("yes", " yes ", "", True),
    ],
)
def test_two_readings_of_one_value(one: str, other: str, kind: str, alike: bool) -> None:
    assert same(read(one, kind), read(other, kind)) is alike


def test_quantities_of_two_kinds_are_never_one_value() -> None:
    assert not same(read("3 s", "time"), read("3 mm", "length"))


DEPTH = "openings/front-door/depth/clear"


@pytest.mark.parametrize(
    ("says", "by", "reason"),
    [
        (["62 mm", "60 mm"], "e1", None),
        (["60 mm", "62 mm"], "e1", Unsettled.NOT_STANDING),
        (["60 mm", "62 mm"], "e2", Unsettled.NOT_MEASURED),
        (["62 mm", "60 mm"], "e3", Unsettled.NO_CLAIM),
        (["62 mm", "60 mm"], "e4", Unsettled.ABSENT),
    ],
)
def test_what_settles_it(says: list[str], by: str, reason: Unsettled | None) -> None:
    found = dispute(DEPTH, *says, settled_by=by)
    assert found.unsettled == reason
    assert found.settled is (reason is None)


def test_nothing_settles_an_open_one() -> None:
    found = dispute(DEPTH, "62 mm", "60 mm")
    assert (found.unsettled, found.settled, found.stands, found.holds_cautious) == (None, False, True, False)


def test_a_conflict_that_leads_nowhere_has_no_value() -> None:
    found = dispute("openings/front-door/impedance", "2 ohm", "4 ohm", settled_by="e1")
    assert (found.fact, found.stands, found.settled) == (None, False, False)
