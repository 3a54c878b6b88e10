"""What is never joined: every pair of different functions has a reason, and the dangerous pairs have their own."""

import json
from itertools import chain, product

import pytest

from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.never import apart
from undertrim.resources import table, top
from undertrim.words import say

NAMES = list(functions().functions)
GROUNDS = ["ground", "camera-ground", "illumination-return", "wheel-buttons-return"]
SPEAKERS = [name for name in NAMES if name.split("-")[0] in ("front", "rear", "centre", "bass")]


def name(lead: str, car: str) -> str:
    found = apart(lead, car)
    assert found
    return found.name


def test_different_functions_always_have_a_reason() -> None:
    """The way counts between the two feeds alone."""
    for lead, car in product(NAMES, NAMES):
        found = apart(lead, car)
        assert (found is None) == (lead == car), (lead, car)
        if found:
            assert say(found.words)
            assert say(found.do)
            both = {name(lead, car), name(car, lead)}
            assert len(both) == 1 or both == {"switched-to-permanent", "permanent-to-switched"}, (lead, car)


@pytest.mark.parametrize("ground", GROUNDS)
def test_ground(ground: str) -> None:
    assert name("parking-brake", ground) == name(ground, "parking-brake") == "parking-brake-to-ground"
    for output in ("antenna-feed", "amplifier-turn-on", "camera-feed"):
        assert name(output, ground) == "output-to-ground"
    for speaker in SPEAKERS:
        expected = "speaker-minus-to-ground" if speaker.endswith("minus") else "speaker-to-ground"
        assert name(speaker, ground) == expected
    assert name("battery-feed", ground) == "supply-to-ground"


@pytest.mark.parametrize("supply", ["battery-feed", "switched-feed"])
def test_supplies(supply: str) -> None:
    for output in ("antenna-feed", "amplifier-turn-on", "camera-feed"):
        assert name(output, supply) == name(supply, output) == "output-to-supply"
    for speaker in SPEAKERS:
        assert name(speaker, supply) == "speaker-to-supply"


@pytest.mark.parametrize("data", ["data-high", "data-low", "data-single"])
def test_data(data: str) -> None:
    assert name("battery-feed", data) == name(data, "switched-feed") == "data-to-supply"
    assert name(data, "ground") == name("camera-ground", data) == "data-to-ground"


def test_the_way_between_the_feeds_counts() -> None:
    assert name("switched-feed", "battery-feed") == "switched-to-permanent"
    assert name("battery-feed", "switched-feed") == "permanent-to-switched"


def test_the_table_names_only_what_the_schema_has() -> None:
    data = table("joining")
    schema = json.loads((top("schema") / "vehicle.schema.json").read_text(encoding="utf-8"))["$defs"]
    groups, sides = (list(chain(*data[key].values())) for key in ("group", "side"))
    named = {*data["must_know"], *data["shared"], *data["usual"], *groups, *data["acts"]}
    named |= {function for row in data["acts"].values() for function in row.values()}
    assert named <= set(schema["functionName"]["enum"])
    acting = chain(*data["acts"].values())
    assert {*sides, *data["usual"].values(), *acting} <= set(schema["behaviour"]["enum"])
    assert len(sides) == len(set(sides))
