"""The other drive side: what changes sides, what stays, what must be asked; and who sits on which side."""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from making import from_data
from undertrim.derive.mirroring import OTHER, mirrored, side_on, side_words, unsaid
from undertrim.record.model import Side, VehicleRecord
from undertrim.words import say

SIDES: list[Side] = ["left", "right"]


def made(parts: dict[str, Any], **sections: Any) -> VehicleRecord:
    openings = {"dash": {"behind": ["radio"], "mirrors": "no"}}
    return from_data({"openings": openings, "parts": {"radio": {"mirrors": "no"}, **parts}, **sections})


def facts(record: VehicleRecord, drive_side: Side, part: str = "x") -> dict[str, str | None]:
    """What is known of one part, by fact."""
    return {
        " of ".join(filter(None, (fact.fact, say(fact.fastener)))): None if fact.there is None else say(fact.there)
        for fact in mirrored(record, drive_side)
        if fact.place == f"parts/{part}"
    }


def test_panel_fuse_box_and_battery_cover() -> None:
    record = made(
        {
            "pedal-panel": {"name": "Panel beside the pedals", "on_side": "left", "mirrors": "yes"},
            "fuse-box": {"name": "Fuse box", "on_side": "left", "mirrors": "no"},
            "battery-cover": {"name": "Battery cover", "on_side": "left", "mirrors": "unknown"},
        }
    )
    there = {fact.place: fact.there for fact in mirrored(record, "right") if fact.fact == "side"}
    assert there == {"parts/pedal-panel": "right", "parts/fuse-box": "left", "parts/battery-cover": None}
    asked = [fact.ask for fact in mirrored(record, "right") if fact.there is None]
    assert [say(ask) for ask in asked] == ["on which side is 'Battery cover'?"]
    assert say(side_words("left", "right")) == "left (passenger side)"


@pytest.mark.parametrize(
    ("side", "drive_side", "words"),
    [
        ("left", "left", "left (driver side)"),
        ("right", "left", "right (passenger side)"),
        ("left", "right", "left (passenger side)"),
        ("right", "right", "right (driver side)"),
    ],
)
def test_who_sits_there(side: Side, drive_side: Side, words: str) -> None:
    assert say(side_words(side, drive_side)) == words


@pytest.mark.parametrize(
    ("mirrors", "side", "direction", "edges"),
    [
        ("yes", "right", "left", "3 left, 1 right"),
        ("no", "left", "right", "1 left, 3 right"),
        ("unknown", None, None, None),
        (None, None, None, None),
    ],
)
def test_side_direction_and_edges_go_together(mirrors: str | None, side: Any, direction: Any, edges: Any) -> None:
    fasteners = [{"screw": "T20", "count": "4", "at": {"left": "1", "right": "3"}}]
    part = {"on_side": "left", "direction": "right", "held_by": fasteners, **({"mirrors": mirrors} if mirrors else {})}
    assert facts(made({"x": part}), "right") == {"side": side, "direction": direction, "edges of T20 screw": edges}
    as_recorded = {"side": "left", "direction": "right", "edges of T20 screw": "1 left, 3 right"}
    assert facts(made({"x": part}), "left") == as_recorded


def test_what_is_the_same_from_both_sides_is_no_fact() -> None:
    part = {
        "direction": "up",
        "held_by": [{"clip": "push", "count": "4", "at": {"left": "2", "right": "2"}}],
        "mirrors": "yes",
    }
    assert facts(made({"x": part}), "right") == {"place": "at the other side"}


def test_what_exists_on_both_sides_has_nothing_to_ask() -> None:
    part = {
        "each": ["left", "right"],
        "direction": "left",
        "held_by": [{"clip": "push", "count": "1", "at": {"left": "1"}}],
    }
    assert facts(made({"x": part}), "right") == {}
    assert unsaid(made({"x": part}), "right") == ()


def test_one_of_a_pair_has_a_side() -> None:
    assert facts(made({"x": {"each": ["right"], "mirrors": "yes"}}), "right") == {"side": "left"}


def test_facts_for_one_drive_side_are_respected() -> None:
    both = {"vehicle": {"drive_side": ["left", "right"]}}
    brace = {"x": {"when": {"drive-side": "right"}, "on_side": "left"}}
    assert facts(made(brace, **both), "right") == {"side": "left"}
    assert facts(made(brace, **both), "left") == {}
    screws = [
        {"screw": "T20", "count": "1", "at": {"left": "1"}, "when": {"drive-side": "right"}},
        {"screw": "PH2", "count": "1", "at": {"left": "1"}, "when": {"drive-side": "left"}},
        {"screw": "T30", "count": "1", "at": {"left": "1"}},
    ]
    held = made({"x": {"held_by": screws, "mirrors": "yes"}}, **both)
    there = facts(held, "right")
    assert there.pop("place") == "at the other side"
    assert there == {"edges of T20 screw": "1 left, 0 right", "edges of T30 screw": "0 left, 1 right"}


def test_the_first_drive_side_is_the_one_facts_were_taken_on() -> None:
    record = made({"x": {"on_side": "left", "mirrors": "yes"}}, vehicle={"drive_side": ["right", "left"]})
    assert facts(record, "right") == {"side": "left"}
    assert facts(record, "left") == {"side": "right"}


def test_silence_and_a_known_place_differ() -> None:
    record = made({"a": {}, "b": {"mirrors": "unknown"}, "c": {"mirrors": "yes"}, "d": {"mirrors": "no"}})
    assert unsaid(record, "right") == ("parts/a",)
    assert unsaid(record, "left") == ()
    found = [facts(record, "right", part).get("place", "silent") for part in "abcd"]
    assert found == ["silent", None, "at the other side", "at the same place"]


def test_texts_of_what_changes_sides_are_read_again() -> None:
    part = {
        "how": "Pull the left edge.",
        "refit_how": "Begin upright.",
        "held_by": [{"screw": "T20", "count": "1", "note": "Right below the lamp."}],
        "tethers": {"lamp": {"name": "Lamp", "kind": "plug", "how": "Press it."}},
    }
    asked = [fact for fact in mirrored(made({"x": {**part, "mirrors": "yes"}}), "right") if fact.fact == "text"]
    assert [(fact.recorded, fact.there) for fact in asked] == [
        ("Pull the left edge.", None),
        ("Right below the lamp.", None),
    ]
    assert say(asked[0].ask) == "'X' changes sides: is 'left' still true in this text?"
    for mirrors, drive_side in (("no", "right"), ("unknown", "right"), ("yes", "left")):
        assert "text" not in facts(made({"x": {**part, "mirrors": mirrors}}), drive_side)  # type: ignore[arg-type]


things = st.fixed_dictionaries(
    {"on_side": st.sampled_from(SIDES), "mirrors": st.sampled_from(["yes", "no"])},
)


@given(st.lists(things, min_size=1, max_size=4), st.sampled_from(SIDES))
def test_mirroring_twice_returns_what_is_known(items: list[dict[str, Any]], first: Side) -> None:
    record = made({f"p{number}": item for number, item in enumerate(items)}, vehicle={"drive_side": [first]})
    there = _read_for(record, OTHER[first])
    back = _read_for(there, first)
    sides = {name: part.on_side for name, part in record.parts.items()}
    assert {name: part.on_side for name, part in back.parts.items()} == sides
    for number, item in enumerate(items):
        moved = there.parts[f"p{number}"].on_side != item["on_side"]
        assert moved == (item["mirrors"] == "yes")


def _read_for(record: VehicleRecord, drive_side: Side) -> VehicleRecord:
    """The record as if its facts had been taken on the other drive side."""
    parts = {name: replace(part, on_side=side_on(record, part, drive_side)) for name, part in record.parts.items()}
    return replace(record, vehicle=replace(record.vehicle, drive_side=(drive_side,)), parts=parts)
