"""What an opening wants, and what to find out next, in order."""

from typing import Any

import pytest

from making import from_data
from undertrim.derive.measuring import KINDS, next_to_measure
from undertrim.derive.required_facts import lacking, required_facts
from undertrim.record.model import VehicleRecord
from undertrim.words import say

WHOLE: dict[str, Any] = {
    "bolts": {"pattern": "circle", "count": "4", "diameter": "160 mm"},
    "panel": {"width": "190 mm", "height": "186 mm"},
    "depth": {"clear": "62 mm", "datum": "skin", "over": "whole-travel", "obstruction": "metal", "leans": "none"},
    "channel": "front",
    "room_to_grille": "22 mm",
    "factory_spacer": "none",
    "impedance": "4 ohm",
    "crash_sensor": "no",
}
SOUND = {"only": {"output": "speaker", "least_load": "4 ohm"}}
DASH: dict[str, Any] = {
    "depth": {"clear": "170 mm", "datum": "face"},
    "clear_front": {"width": "232 mm", "height": "140 mm"},
}
RESTRAINT = {"wait": "2 min", "memory_keeper": "allowed", "read_faults_first": "no"}


def made(openings: dict[str, Any], **sections: Any) -> VehicleRecord:
    behind = {name: {"behind": ["radio"], **item} for name, item in openings.items()}
    whole = {"restraint": RESTRAINT, "sound": SOUND, "parts": {"radio": {}}, "openings": behind, **sections}
    return from_data({name: section for name, section in whole.items() if section is not None})


def names(name: str, **item: Any) -> list[str]:
    record = made({name: item})
    return [say(fact.name) for fact in lacking(record, record.openings[name])]


def words(record: VehicleRecord) -> list[str]:
    return [say(task.words) for task in next_to_measure(record)]


def test_a_whole_opening_lacks_nothing() -> None:
    assert names("front-door", **WHOLE) == []
    assert names("dash", **DASH) == []
    record = made({"front-door": WHOLE})
    assert len(required_facts(record, record.openings["front-door"])) == 10


def test_what_a_speaker_opening_lacks() -> None:
    everywhere = ["bolts", "panel", "depth", "depth leans", "room to grille", "factory spacer", "impedance", "channel"]
    assert names("shelf") == everywhere
    assert names("front-door") == [*everywhere, "crash sensor"]
    assert names("pod", area="boot", **{**WHOLE, "fed_through": "unknown"}) == ["fed through"]
    angle = {**WHOLE["bolts"], "angle": "unknown"}
    assert names("front-door", **{**WHOLE, "bolts": angle}) == ["bolts angle"]
    assert names("pod", area="rear-door", **{**WHOLE, "crash_sensor": "unknown"}) == ["crash sensor"]
    unknown = dict.fromkeys(("room_to_grille", "factory_spacer", "impedance"), "unknown")
    assert names("front-door", **{**WHOLE, **unknown}) == ["room to grille", "factory spacer", "impedance"]


def test_what_a_receiver_opening_lacks() -> None:
    face = {"width": "unknown", "height": "112 mm"}
    assert names("dash", face=face, depth={"clear": "unknown"}, kit="unknown") == [
        "face width",
        "depth",
        "clear front",
        "kit",
    ]
    assert names("dash", **DASH, face={"width": "182 mm", "height": "unknown"}) == ["face height"]
    assert names("dash", **{**DASH, "depth": {"clear": "170 mm"}}) == ["depth"]
    assert names("dash", **{**DASH, "clear_front": {"width": "unknown", "height": "140 mm"}}) == ["clear front"]


@pytest.mark.parametrize(
    ("name", "depth", "to_do"),
    [
        ("front-door", {"clear": "unknown"}, "measure the depth of 'Front door' from the door skin over the whole glass travel"),
        ("front-door", {"clear": "unknown", "over": "no-glass"}, "measure the depth of 'Front door' from the door skin"),
        ("shelf", {"clear": "unknown"}, "measure the depth of 'Shelf' from the face the speaker sits on"),
        ("shelf", {"clear": "60 mm"}, "find out from which face the depth of 'Shelf' was measured"),
        ("shelf", {"clear": "60 mm", "datum": "bracket"}, "see what ends the depth of 'Shelf', and write it as 'obstruction': until then it counts as glass"),
        ("shelf", {"clear": "60 mm", "datum": "bracket", "obstruction": "metal"}, None),
        ("shelf", {"clear": "60 mm", "datum": "bracket", "obstruction": "glass"}, None),
        ("shelf", {"clear": "60 mm", "datum": "bracket", "over": "no-glass"}, None),
        ("front-door", {"clear": "60 mm", "datum": "skin"}, "measure the depth of 'Front door' again, over the whole glass travel"),
        ("front-door", {"clear": "60 mm", "datum": "skin", "over": "glass-down"}, "measure the depth of 'Front door' again, over the whole glass travel"),
        ("front-door", {"clear": "60 mm", "datum": "skin", "over": "no-glass"}, None),
    ],
)  # fmt: skip
def test_what_to_do_about_a_depth(name: str, depth: dict[str, str], to_do: str | None) -> None:
    record = made({name: {**WHOLE, "depth": depth}})
    found = [say(fact.to_do) for fact in lacking(record, record.openings[name]) if fact.key == "depth"]
    assert found == ([to_do] if to_do else [])


def test_the_most_useful_first() -> None:
    # Long because what is not known of its car, and what is asked for, stand in it a line each.
    variants = {
        "sound": {
            "ask": "Which sound?",
            "choices": {"plain": {"label": "Plain sound"}, "full": {"label": "Full sound"}},
        }
    }
    openings = {
        "shelf": {**WHOLE, "impedance": "unknown", "when": {"sound": "full"}},
        "front-door": {**WHOLE, "crash_sensor": "unknown", "room_to_grille": "unknown"},
    }
    record = made(
        openings,
        restraint={"wait": "unknown", "memory_keeper": "allowed", "read_faults_first": "no"},
        vehicle={"high_voltage": "unknown", "drive_side": ["left", "right"]},
        variants=variants,
        parts={"radio": {"on_side": "left", "mirrors": "unknown"}},
        functions={"mute": {"by": "unknown", "when": {"sound": "full"}}, "speed": {"by": "data"}},
        sound={
            "plain": {"output": "speaker", "least_load": "4 ohm"},
            "full": {"when": {"sound": "full"}, "output": "line", "amplifier": "Under the seat"},
        },
        duties={"chime": {"kept_by": "unknown"}, "clock": {"kept_by": "none"}},
    )
    assert words(record) == [
        "look up the maker's wait between battery off and touching restraint wiring",
        "look up whether the door of 'Front door' holds a crash pressure sensor",
        "look up whether the vehicle has a high-voltage system",
        "look for 'Shelf' in a car with Plain sound: record it, or write 'not_in'",
        "read or measure the impedance of the factory speaker of 'Shelf'",
        "measure the room from the mounting face of 'Front door' to the inside of its grille",
        "look up the least load that the factory amplifier allows (Full sound)",
        "find out what switches the factory amplifier on (Full sound)",
        "find out how the car provides 'mute': by wire, by data or not at all (Full sound)",
        "find out what becomes of 'chime' when the factory unit goes",
        "find out in right-hand drive: on which side is 'Radio'?",
    ]
    kinds = [task.kind for task in next_to_measure(record)]
    assert kinds == sorted(kinds, key=KINDS.index)
    assert set(kinds) == set(KINDS)


def test_a_text_to_read_again_is_nothing_to_find_out() -> None:
    radio = {"on_side": "left", "mirrors": "yes", "how": "Pull the left edge."}
    assert words(made({"dash": DASH}, parts={"radio": radio}, vehicle={"drive_side": ["left", "right"]})) == []


def test_what_drives_the_speakers_is_asked_for() -> None:
    """Without a sound system at all, and where what the radio sends is not known."""
    assert words(made({"front-door": WHOLE}, sound=None)) == [
        "find out what the factory radio sends to the speakers, and the least load it allows"
    ]
    unknown = made({"front-door": WHOLE}, sound={"only": {"output": "unknown", "least_load": "unknown"}})
    assert [task.place for task in next_to_measure(unknown)] == ["sound/only/output", "sound/only/least_load"]


def test_nothing_is_left_of_a_record_that_says_all() -> None:
    assert words(made({"front-door": WHOLE})) == []


@pytest.mark.parametrize(
    ("restraint", "places"),
    [
        (None, ["wait", "memory_keeper", "read_faults_first"]),
        ({"wait": "unknown", "memory_keeper": "unknown", "read_faults_first": "yes"}, ["wait", "memory_keeper"]),
        ({"wait": "none", "fitted": "no"}, []),
        ({"wait": "2 min"}, ["memory_keeper", "read_faults_first"]),
    ],
)
def test_what_is_unknown_of_the_restraint(restraint: dict[str, str] | None, places: list[str]) -> None:
    data = {"restraint": restraint} if restraint else {}
    record = from_data(
        {"parts": {"radio": {}}, "openings": {"dash": {"behind": ["radio"], **DASH}}, "sound": SOUND, **data}
    )
    assert [task.place for task in next_to_measure(record)] == [f"restraint/{name}" for name in places]


def test_how_near_the_high_voltage_comes_is_asked_once_for_an_area() -> None:
    record = made(
        {"dash": {"area": "dash", **DASH}, "shelf": {**WHOLE, "high_voltage": "near"}},
        vehicle={"high_voltage": "yes"},
        areas={"seat": {"high_voltage": "clear"}, "floor": {"high_voltage": "unknown"}},
        parts={
            "radio": {"area": "dash"},
            "seat": {"area": "seat"},
            "mat": {"area": "floor"},
            "cap": {},
            "lid": {"area": "seat", "high_voltage": "unknown"},
        },
    )
    assert words(record) == [
        f"look up how near the high voltage comes to {what}"
        for what in ("the area 'dash'", "the area 'floor'", "'Cap'", "'Lid'")
    ]
    assert next_to_measure(record)[0].place == "areas/dash/high_voltage"
