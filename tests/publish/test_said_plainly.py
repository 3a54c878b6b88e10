"""What a person reads: times in their own units, names instead of ids, drawings that are of the thing itself."""

import json
from pathlib import Path

import pytest

from undertrim.derive.procedure import states
from undertrim.publish.facts import words
from undertrim.publish.pictures import small as pictures
from undertrim.publish.pictures.drawings import clips
from undertrim.record.model import Prep
from undertrim.words import say

ROOT = Path(__file__).parents[2]
SCHEMA = json.loads((ROOT / "schema/vehicle.schema.json").read_text(encoding="utf-8"))["$defs"]


@pytest.mark.parametrize(
    ("minutes", "said"),
    [(20 / 60, "20 s"), (1.5, "1 min 30 s"), (3, "3 min"), (80, "1 h 20 min"), (60, "1 h"), (61.25, "1 h 1 min 15 s")],
)
def test_a_time_is_said_to_the_second(minutes: float, said: str) -> None:
    assert say(words.minutes(minutes)) == said


def test_every_usual_preparation_with_a_way_back_has_a_plain_name_for_it() -> None:
    for prep in (prep for prep in states.usual().values() if states.undoing(prep)):
        assert say(states.way_back(prep))
        assert say(states.way_back(prep)) != say(states.called(prep))


def test_a_way_back_is_called_as_the_record_says() -> None:
    prep = Prep(id="battery", name="Battery off", sets={"battery": "off"}, how="Take the clamp off.")
    assert say(states.way_back(prep)) == "Battery back on"
    second = Prep(id="second", name="Second", sets={"battery": "off"}, how="x", restore_name="Second battery back on")
    assert states.way_back(second) == "Second battery back on"


@pytest.mark.parametrize("kind", ["clip", "scrivet", "hook", "bond", "rivet"])
def test_each_kind_of_clip_is_drawn_as_itself(kind: str) -> None:
    sorts = SCHEMA["fastener"]["properties"][kind]["enum"]
    names = [pictures.clip_name(kind, sort) for sort in sorts]
    assert "other" not in names
    assert len({clips.clip(name, "x") for name in names}) == len(sorts)


def test_each_kind_of_tether_is_drawn_as_itself() -> None:
    kinds = SCHEMA["tether"]["properties"]["kind"]["enum"]
    assert len({clips.clip(pictures.tether_name(kind), "x") for kind in kinds}) == len(kinds)


def step(side: str, on_side: str = "") -> dict[str, object]:
    lines = [{"kind": "clip", "fate": "out", "at": {"front": 1}}]
    return {"title": "Door panel", "side": side, "on_side": on_side, "fasteners": lines}


def test_the_front_edge_is_mirrored_by_side() -> None:
    left, right = pictures.panel(step("left")), pictures.panel(step("right"))
    assert left != right
    assert pictures.panel(step("", "left")) == left
