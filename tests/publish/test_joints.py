"""The joints of a vehicle with every lead set in stock, as data. Expectations are worked by hand."""

from typing import Any

import pytest

from joining import ADDRESS, SPEAKERS, car, gear, harness, leads, shelf
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Gear
from undertrim.derive.wiring.row import State
from undertrim.publish.encoding import said
from undertrim.publish.facts.joints import SIGNS, joints
from undertrim.publish.printed.sheet import glyphs
from undertrim.words import say

Data = dict[str, Any]
PINS = """
1: {colour: red, function: battery-feed, note: Live at all times.}
2: {colour: brown, function: ground}
6: {colour: orange, function: illumination, when: {sound: amplified}}
"""
VARIANTS = """
variants:
  sound: {ask: Which, choices: {plain: {label: No amplifier, tell: No badge}, amplified: {label: An amplifier, tell: A badge}}}
  trim: {ask: Which, choices: {cloth: {label: Cloth, tell: Cloth}, hide: {label: Hide, tell: Hide}}}
functions:
  speed: {by: absent, when: {trim: cloth}}
  reverse: {by: absent, when: {trim: hide}}
"""
SET = leads(
    """
battery: {function: battery-feed, colour: yellow, note: Through its own fuse.}
ground: {function: ground, colour: black}
lamps: {function: illumination, colour: orange}
"""
)
OTHER = leads("ground: {function: ground, colour: black}", model="Twine")
RECEIVER = gear(
    "receiver",
    """
body: {width: 178 mm, height: 50 mm}
chassis_depth: 165 mm
outputs: [speaker]
needs: [battery-feed, ground]
lead_set: pellworth-cord
""",
    model="Brae",
)
KNOT = harness("1: {function: battery-feed, colour: yellow, note: Keep it from the bracket.}")


def found(*stock: Gear, pins: str = PINS) -> list[Data]:
    return list(said(joints(Vehicle(car(pins, VARIANTS, SPEAKERS), ADDRESS, shelf(*stock), clearances()))))


def test_each_lead_set_in_stock_has_its_joint_and_the_receivers_that_come_with_it() -> None:
    made = found(SET, OTHER, RECEIVER)
    assert [(one["opening"], one["leads"], one["receivers"]) for one in made] == [
        ("dash", "pellworth-cord", ["Pellworth Brae"]),
        ("dash", "pellworth-twine", []),
    ]


def test_without_lead_sets_or_an_opening_for_a_receiver_there_is_none() -> None:
    assert found() == []


def test_cars_are_named_without_the_variants_that_make_no_difference() -> None:
    # Four kinds of car; the wire of the lamps depends on the sound, nothing in this set on the trim.
    tables = found(SET)[0]["tables"]
    assert [say(table["cars_words"]) for table in tables] == ["No amplifier", "An amplifier"]
    assert [len(table["cars"]) for table in tables] == [2, 2]


def test_one_table_for_all_cars_names_none() -> None:
    assert [say(table["cars_words"]) for table in found(OTHER, pins="2: {function: ground}")[0]["tables"]] == [""]


def test_cars_that_are_no_full_grid_are_all_named() -> None:
    # The lamps depend on both: one table for three of the four kinds.
    pins = PINS.replace("{sound: amplified}", "{sound: amplified, trim: hide}")
    assert [say(table["cars_words"]) for table in found(SET, pins=pins)[0]["tables"]] == [
        "No amplifier, Cloth or No amplifier, Hide or An amplifier, Cloth",
        "An amplifier, Hide",
    ]


def test_a_row_has_the_notes_of_all_its_ends_once() -> None:
    rows = {row["id"]: row for row in found(SET, KNOT)[0]["tables"][0]["rows"]}
    assert rows["lead-battery"]["notes"] == [
        "car: Live at all times",
        "Pellworth Knot: Keep it from the bracket",
        "lead: Through its own fuse",
    ]
    assert rows["lead-ground"]["notes"] == []


def test_counts_are_in_words_exceptions_first() -> None:
    # The lamps are unknown in one car and their behaviour in the other; brown goes to black by hand; the harness has the usual colour.
    for table in found(SET, KNOT)[0]["tables"]:
        assert table["counts_words"] == "1 unknown: meter it; 1 same function, misleading colour; 1 joined"


@pytest.mark.parametrize("state", State)
def test_every_state_has_a_sign_that_prints(state: State) -> None:
    assert glyphs.text(SIGNS[state]) == SIGNS[state]
    assert len(SIGNS[state]) == 1


def test_the_sign_of_what_must_never_be_joined_is_its_own() -> None:
    assert [state for state, sign in SIGNS.items() if sign == SIGNS[State.NEVER]] == [State.NEVER]
    assert [state for state, sign in SIGNS.items() if sign == SIGNS[State.JOINED]] == [State.JOINED]
