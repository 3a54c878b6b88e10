"""Joint tables and plugs as text and as data."""

import json
from typing import Any

from joining import ADDRESS, SPEAKERS, car, harness, leads, shelf
from undertrim.derive.wiring.groups import joints
from undertrim.derive.wiring.row import State
from undertrim.publish.facts.car_wiring import car_wiring
from undertrim.publish.facts.joint import STATES
from undertrim.publish.facts.joint import joints as joints_data
from undertrim.publish.terminal.wiring import joint_text, plugs_text
from undertrim.words import say

PINS = """
1: {colour: red, function: battery-feed, behaves: steady, fuse: 15 A, gauge: 1.5 mm2}
2: {colour: pink, function: switched-feed, note: Live with the key on.}
6: {colour: orange, function: illumination, behaves: dimmed-ground}
10: {colour: white, function: front-left-plus}
11: {function: front-left-minus}
12: {colour: blue/white, function: amplifier-turn-on, when: {sound: amplified}}
"""
MORE = """
variants:
  sound: {ask: Which, choices: {plain: {label: No amplifier, tell: No badge}, amplified: {label: An amplifier, tell: A badge}}}
functions:
  ground: {by: unknown}
  parking-brake: {by: wire, behaves: closes-to-ground, note: At the lever.}
  speed: {by: data}
  reverse: {by: absent}
"""
SET = leads("""
battery: {function: battery-feed, colour: yellow, fuse: 10 A}
switched: {function: switched-feed, colour: red}
ground: {function: ground, colour: black}
lamps: {function: illumination, colour: orange/white, behaves: dimmed-plus}
brake: {function: parking-brake, colour: light green, behaves: closes-to-ground}
speed: {function: speed, colour: violet}
reverse: {function: reverse, colour: violet/white}
left-plus: {function: front-left-plus, colour: white}
line: {function: front-left-plus, colour: white, level: line}
""")
HARNESS = harness("""
1: {function: battery-feed, colour: yellow}
2: {function: switched-feed, colour: red}
6: {function: illumination, colour: orange/white}
9: {function: speed, colour: violet}
10: {function: front-left-plus, colour: white}
""")


def data(**chosen: str) -> Any:
    about = car(PINS, MORE, SPEAKERS)
    found = joints(about, ADDRESS, about.openings["dash"], SET, shelf(SET, HARNESS), chosen=chosen)
    return joints_data(about, ADDRESS, SET, found)


def test_every_state_is_worded_and_counted() -> None:
    assert list(STATES) == list(State)
    for table in data()["tables"]:
        assert list(table["counts"]) == [state.value for state in State]
        assert sum(table["counts"].values()) == len(table["rows"])
        assert {row["state_words"] for row in table["rows"]} <= set(map(say, STATES.values()))


def test_a_row_as_data() -> None:
    rows = {row["id"]: row for row in data(sound="plain")["tables"][0]["rows"]}
    lamps = rows["lead-lamps"]
    assert lamps["reasons"][0]["name"] == "dimmed-on-ground-side"
    assert (lamps["car"][0]["address"], lamps["car"][0]["colour"]["iec"], lamps["car"][0]["behaves"]) == (
        "radio-main/6",
        "OG",
        "dimmed-ground",
    )
    assert (lamps["contacts"][0]["address"], lamps["contacts"][0]["colour"]["iec"]) == ("radio-main/6", "OG/WH")
    assert (lamps["lead"]["id"], lamps["lead"]["colour"]["words"]) == ("lamps", "orange with white tracer")
    assert rows["lead-left-plus"]["lead"]["level"] == "speaker"
    assert rows["lead-battery"]["lead"]["level"] == ""
    assert rows["lead-brake"]["car"][0]["words"] == "by wire elsewhere"
    assert rows["pin-radio-main-11"]["lead"] is None
    assert json.loads(json.dumps(rows)) == rows


def test_groups_say_which_cars_they_are_for() -> None:
    tables = data()["tables"]
    assert [table["cars"] for table in tables] == [[{"sound": "plain"}], [{"sound": "amplified"}]]
    text = joint_text(data())
    assert "For: No amplifier" in text
    assert "For: An amplifier" in text
    assert "In every car asked for:" in joint_text(data(sound="plain"))


def test_the_table_is_worked_down_exceptions_first() -> None:
    text = joint_text(data(sound="plain"))
    heads = [
        line.split(" (")[0].strip()
        for line in text.splitlines()
        if line[:3].strip() and line.startswith("  ") and " (" in line
    ]
    order = [words for words in map(say, STATES.values()) if any(head.startswith(words) for head in heads)]
    assert [head for head in heads if head in map(say, STATES.values())] == order
    assert order[0] == "NEVER connect"
    assert all(len(line) <= 100 for line in text.splitlines())
    assert text.endswith("The maker's information, local codes and licensed practice come first.\n")
    assert "\N{NO-BREAK SPACE}" not in text
    assert "\N{NON-BREAKING HYPHEN}" not in text


def test_what_a_row_says() -> None:
    text = " ".join(joint_text(data(sound="plain")).split())
    assert "the car dims its lamps on the ground side, and the lead wants plus (dimmed-on-ground-side)" in text
    assert (
        "[ ] parking brake brake: light green - by wire elsewhere - car: At the lever. > join to the switch wire only"
        in text
    )
    assert "extra contact radio-main/9 (speed) of Pellworth Knot: nothing is recorded of this position" in text
    assert "contacts of the car that no adapter has: radio-main/11 (front left −)" in text
    assert "comes as data, and nothing here makes a wire of it" in text


def test_every_row_has_a_box_and_every_lead_its_line() -> None:
    found = data(sound="plain")
    text = joint_text(found)
    assert text.count("[ ] ") == len(found["tables"][0]["rows"])
    for lead in SET.facts.leads:
        assert text.count(f"  {lead}: ") == 1


def test_plugs_pin_by_pin_and_functions_by_source() -> None:
    found = car_wiring(car(PINS, MORE, SPEAKERS), ADDRESS, {})
    addresses = [pin["address"] for plug in found["plugs"] for pin in plug["pins"]]
    assert addresses == [f"radio-main/{pin}" for pin in (1, 2, 6, 10, 11, 12)]
    text = plugs_text(found)
    assert "radio-main/1       battery feed         red, steady, fuse 15 A, 1.5 mm2" in text
    assert "colour not recorded" in text
    assert "[An amplifier]" in text
    assert "By wire elsewhere:\n  parking brake: At the lever.\n" in text
    assert "Unknown: look it up or meter it:\n  ground\n" in text
    assert "As data: needs an interface:\n  speed\n" in text
    assert "Absent:\n  reverse\n" in text
    assert "Sound: speaker" in text
    assert all(len(line) <= 100 for line in text.splitlines())


def test_a_chosen_car_has_its_own_pins_alone() -> None:
    found = car_wiring(car(PINS, MORE, SPEAKERS), ADDRESS, {"sound": "plain"})
    assert "radio-main/12" not in [pin["address"] for pin in found["plugs"][0]["pins"]]
    amplified = car_wiring(car(PINS, MORE, SPEAKERS), ADDRESS, {"sound": "amplified"})
    assert amplified["plugs"][0]["pins"][-1]["when"] == ""
