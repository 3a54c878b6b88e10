"""The page says what is not known yet, and on which side a thing is in each drive side."""

import re
from typing import Any

from making import made
from undertrim.publish.encoding import Published
from undertrim.publish.facts.vehicle import vehicle
from vehicle_pages import all_pages

SOUND = {"sound": {"ask": "Which?", "choices": {"plain": {"label": "Plain sound"}, "full": {"label": "Full sound"}}}}
RESTRAINT = {"wait": "2 min", "memory_keeper": "allowed", "read_faults_first": "no"}


def facts(parts: dict[str, Any] | None = None, openings: dict[str, Any] | None = None, **sections: Any) -> Published:
    whole = {"radio": {"replaced": "yes"}, **(parts or {})}
    front = {"width": "232 mm", "height": "140 mm"}
    dash = {"behind": list(whole), "depth": {"clear": "170 mm", "datum": "face"}, "clear_front": front}
    sound = {"only": {"output": "speaker", "least_load": "4 ohm"}}
    places = {"dash": dash, **(openings or {})}
    return vehicle(made({"restraint": RESTRAINT, "sound": sound, "parts": whole, "openings": places, **sections}))


def section(found: Published, name: str) -> str:
    """The text of one section of the page, without tags."""
    page = all_pages(found)
    match = re.search(rf'<section id="{name}".*?</section>', page, re.DOTALL)
    assert match
    return " ".join(re.sub(r"<[^>]*>", " ", match[0]).split())


def place(found: Published, step: str) -> list[tuple[str, str]]:
    (item,) = [item for item in found["steps"] if item["id"] == step]
    return [(entry["text"], entry["when"]) for entry in item["place"]]


def test_the_page_counts_and_names_what_is_missing() -> None:
    shelf = {"shelf": {"behind": ["radio"], "when": {"sound": "full"}}}
    found = facts(
        openings=shelf, variants=SOUND, duties={"chime": {"kept_by": "unknown"}, "clock": {"kept_by": "unknown"}}
    )
    assert found["coverage"]["share"] == "3/4 = 75 %"
    assert (len(found["coverage"]["next"]), found["coverage"]["more"]) == (5, 6)
    text = section(found, "unknown")
    assert text.startswith("What is not known yet Kinds of car and openings with an answer: 3/4 = 75 %.")
    assert "Nobody has recorded whether Shelf is in: Plain sound." in text
    assert "look for 'Shelf' in a car with Plain sound" in text.replace("&#39;", "'")
    assert text.endswith("And 6 more.")


def test_the_page_says_when_nothing_is_missing() -> None:
    assert "1/1 = 100 %. Nothing is known to be unknown. Answer what" in section(facts(), "unknown")


def test_it_stands_before_the_evidence() -> None:
    page = all_pages(facts())
    assert page.index('id="wiring"') < page.index('id="unknown"') < page.index('id="evidence"')


def test_a_side_is_said_for_each_drive_side() -> None:
    parts = {
        "fuse-box": {"on_side": "left", "mirrors": "no"},
        "panel": {"on_side": "left", "mirrors": "yes"},
        "cover": {"on_side": "left", "mirrors": "unknown"},
        "brace": {"on_side": "left", "when": {"drive-side": "right"}},
        "tray": {},
    }
    found = facts(parts, vehicle={"drive_side": ["left", "right"]})
    left, right = "Left-hand drive", "Right-hand drive"
    assert place(found, "remove:fuse-box") == [("left (driver side)", left), ("left (passenger side)", right)]
    assert place(found, "remove:panel") == [("left (driver side)", left), ("right (driver side)", right)]
    assert place(found, "remove:cover") == [("left (driver side)", left), ("side not known: look on both", right)]
    assert place(found, "remove:brace") == [("left (passenger side)", "")]
    assert place(found, "remove:tray") == []
    text = section(found, "steps")
    assert f"Where: left (driver side) {left} left (passenger side) {right}" in text


def test_one_drive_side_needs_no_condition() -> None:
    found = facts({"fuse-box": {"on_side": "left"}}, vehicle={"drive_side": ["right"]})
    assert place(found, "remove:fuse-box") == [("left (passenger side)", "")]
    assert "Where: left (passenger side)" in section(found, "steps")


def test_a_preparation_has_a_side_and_its_wait_has_none() -> None:
    battery = {
        "sets": {"battery": "off"},
        "restore": "Join it.",
        "on_side": "right",
        "wait": {"time": "3 min", "why": "Rest"},
    }
    radio = {"radio": {"replaced": "yes", "after": ["battery"]}}
    found = facts(radio, {"dash": {"behind": ["radio"]}}, preps={"battery": battery})
    assert place(found, "prepare:battery") == [("right (passenger side)", "")]
    assert place(found, "wait:battery") == []
