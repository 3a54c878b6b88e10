"""Claims are compared as values, not as they are typed; the record as it is reckoned holds the cautious ones."""

import pytest

from making import from_data
from undertrim.derive.evidence.conflicts import Dispute, disputes
from undertrim.derive.evidence.disputed import disputed, open_disputes, reckoned
from undertrim.record.model import Blank, VehicleRecord

BASE = {
    "evidence": {"e1": {"how": "measured", "on": "2026-03-02", "by": "rk"}, "e2": {"how": "told", "on": "2026-03-02", "by": "rk"}},
    "restraint": {"wait": "30 min"},
    "areas": {"dash": {"restraints": ["Passenger airbag", "Knee airbag"]}},
    "parts": {"p": {"held_by": [{"screw": "hex 7 mm", "count": "4", "torque": "5 N.m"}]}},
    "openings": {"front-door": {"behind": ["p"], "crash_sensor": "yes", "room_to_grille": "2 3/16 in"}},
    "connectors": {
        "plug": {
            "name": "Plug", "view": "wires", "rows": "2", "columns": "8", "blanks": ["2", "10"],
            "pins": {"4": {"function": "switched-feed", "colour": "yellow", "supply": "12 V", "gauge": "1.5 mm2"}},
        }
    },
    "functions": {"reverse": {"by": "wire"}},
}  # fmt: skip


def record(about: str, *says: str) -> VehicleRecord:
    claims = [{"says": text, "source": f"e{number}"} for number, text in enumerate(says, 1)]
    return from_data({**BASE, "conflicts": {"c": {"about": about, "claims": claims}}})


def dispute(about: str, *says: str) -> Dispute:
    (found,) = disputes(record(about, *says))
    return found


PIN = "connectors/plug/pins/4"
SAME = [
    ("restraint/wait", "30 min", "1800 s"),
    (f"{PIN}/colour", "yellow", "YE"),
    (f"{PIN}/supply", "12 V", "12.0 V"),
    (f"{PIN}/gauge", "1.5 mm2", "1.50 mm²"),
    ("openings/front-door/room_to_grille", "2 3/16 in", "55.5625 mm"),
    ("openings/front-door/room_to_grille", "2 3/16 in", "55.6 mm"),
    ("openings/front-door/crash_sensor", "yes", "Yes"),
    ("connectors/plug/blanks", "2, 10", "[10, 2]"),
    ("parts/p/held_by/0/screw", "hex 7 mm", "Hex 7mm"),
    ("parts/p/held_by/0/count", "4", "04"),
    ("restraint/wait", "unknown", "Unknown"),
]
APART = [
    ("restraint/wait", "30 min", "1801 s"),
    (f"{PIN}/colour", "yellow", "YE/RD"),
    (f"{PIN}/colour", "yellow/red", "red/yellow"),
    (f"{PIN}/supply", "12 V", "12.2 V"),
    ("openings/front-door/room_to_grille", "64 mm", "64.2 mm"),
    ("openings/front-door/room_to_grille", "2 3/16 in", "54 mm"),
    ("connectors/plug/blanks", "2, 10", "2, 11"),
    ("parts/p/held_by/0/screw", "hex 7 mm", "hex 8 mm"),
    ("restraint/wait", "unknown", "2 min"),
]


@pytest.mark.parametrize(("about", "one", "other"), SAME)
def test_one_value_in_other_words_is_no_conflict(about: str, one: str, other: str) -> None:
    found = dispute(about, one, other)
    assert found.agreed
    assert not found.open
    assert open_disputes(record(about, one, other)) == ()


@pytest.mark.parametrize(("about", "one", "other"), APART)
def test_two_values_are_a_conflict(about: str, one: str, other: str) -> None:
    assert dispute(about, one, other).open


@pytest.mark.parametrize(
    ("about", "one", "other"),
    [(*SAME[0][:1], "1800 s", "2 min"), (f"{PIN}/colour", "YE", "red"), ("connectors/plug/blanks", "10 2", "3")],
)
def test_the_value_of_the_record_is_known_among_the_claims(about: str, one: str, other: str) -> None:
    assert dispute(about, one, other).stands


def test_a_fact_is_asked_for_by_its_keys_and_by_what_is_above_it() -> None:
    made = record(f"{PIN}/supply", "12 V", "6 V")
    assert disputed(made, *PIN.split("/"), "supply") is not None
    assert disputed(made, *PIN.split("/")) is None
    assert len(open_disputes(made, "connectors", "plug")) == 1
    assert open_disputes(made, "connectors", "plu") == ()


@pytest.mark.parametrize(
    ("about", "one", "other", "value"),
    [
        ("restraint/wait", "30 min", "1 h", 3600.0),
        (f"{PIN}/supply", "12 V", "6 V", Blank.UNKNOWN),
        ("parts/p/held_by/0/count", "4", "6", Blank.UNKNOWN),
        ("functions/reverse/by", "wire", "data", "unknown"),
        (f"{PIN}/function", "switched-feed", "reverse", "switched-feed"),
    ],
)
def test_the_reckoned_record_has_the_cautious_value(about: str, one: str, other: str, value: object) -> None:
    (found,) = open_disputes(reckoned(record(about, one, other)))
    assert found.fact is not None
    held: object = reckoned(record(about, one, other))
    for key in found.fact.pointer:
        held = held[key] if isinstance(held, dict | tuple) else getattr(held, str(key))  # type: ignore[index]
    assert getattr(held, "value", held) == value if isinstance(value, float) else held == value
