"""What may be typed is shown: on the page, or by what it changes there or on a terminal.

Texts and sizes are marked, all at once, and their marks looked for. Every other field is changed or left out where a record uses
it, and something that is shown must change with it. A field that only holds others is spoken for by these.
"""

from typing import Any

import pytest
from changing import changes_something
from marking import in_answers, marks, on_pages, on_sheets, texts

import typed
from undertrim.derive.fit.stock import Stocked
from undertrim.publish.facts.gear_card import card
from undertrim.publish.facts.words import fastener_detail
from undertrim.record.model import Fastener
from undertrim.record.model.kinds.receiver import ReceiverGear
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear
from undertrim.record.model.kinds.tweeter import TweeterGear
from undertrim.words import say

KIND = "decides which other fields there are, and they are shown"
UNSHOWN = {
    "vehicle.format": "says how the record is read; no other is known yet",
    "gear.format": "says how the record is read; no other is known yet",
    "opening.kind": KIND,
    "gear.kind": KIND,
    "hole.shape": KIND,
    "bolts.pattern": KIND,
    "verified.taken": "changes what is said of things that are taken from another record, which the record of seldom fields does not",
    "verifiedPart.taken": "the same",
    "verifiedPart.facts": "is held against the facts, and what differs from them is named: `test_verify_parts.py`",
    "afterBattery.not_listed": "the step that says so stands there also where nothing is said, which is an error: `battery_lists.py`",
    "photo.marks.at": "where a dot stands, which is no text: `test_photos_shown.py` asks for it",
    "gear.source": "stands on the page of the gear: `test_gear_tried.py`",
    "gear.alters": "told of what goes between; the one ring that alters a car goes into none that is shipped",
}
"""Fields that are not probed, each with the reason."""
UNPRINTED = dict.fromkeys(
    ("photo.shows", "photo.marks.label", "gear.nominal", "gear.terminals", "tried.hit"),
    "belongs to a photograph or to gear, and on paper only the sheet of a visit has those: `test_visit_sheet.py`",
)
"""Texts that no sheet has, each with the reason."""
FIELDS = [
    name
    for name, uses in typed.uses().items()
    if name not in UNSHOWN and not all(typed.holds_fields(use.node) for use in uses)
]


def test_texts_stand_on_page_and_sheet_and_sizes_on_a_page_or_change_it() -> None:
    """In one test, since all of them are read from the same pages. Texts of gear are on a page, or where gear is ranked."""
    marked = {name: marks()[name] for name in FIELDS if name in marks()}
    shown = {
        name: on_pages() | (in_answers() if name.startswith(("gear.", "lead.", "tried.")) else set()) for name in marked
    }
    unseen = [name for name, found in marked.items() if not found & shown[name]]
    assert [name for name in unseen if name in texts() or not changes_something(name)] == []
    assert {name for name in marked.keys() & texts() if not marked[name] & on_sheets()} == UNPRINTED.keys()


@pytest.mark.parametrize("field", [name for name in FIELDS if name not in marks()])
def test_what_is_typed_changes_what_is_shown(field: str) -> None:
    assert changes_something(field)


def test_what_is_not_probed_is_a_field() -> None:
    assert UNSHOWN.keys() <= typed.uses().keys()


@pytest.mark.parametrize("kind", [ReceiverGear, SpeakerGear, SpacerGear, TweeterGear])
def test_the_size_people_say_is_on_the_card_of_each_kind_that_has_one(kind: Any) -> None:
    about = card(Stocked("it", kind("Pellworth", "It", nominal="6.5 in")))
    assert about
    assert "known as 6.5 in" in say(about).casefold()


def test_gear_that_alters_the_car_says_so() -> None:
    ring = SpacerGear("Pellworth", "Ring", alters=("blow-out",))
    about = card(Stocked("ring", ring))
    assert about
    assert say(about) == "Pellworth Ring: Alters the car: blow out."


def test_the_spot_of_a_fastener_is_said_beside_its_edges() -> None:
    whole = say(fastener_detail(Fastener("screw", "T20", count=1, at={"top": 1}, where="pull-cup")))
    assert whole == "1 top, in the pull cup"


@pytest.mark.parametrize("role", ["seat", "belt", "wheel"])
def test_what_holds_a_life_is_said_beside_its_fastener(role: str) -> None:
    """By itself, since its role changes what is asked for elsewhere too."""
    whole = say(fastener_detail(Fastener("bolt", "T50", count=4, role=role)))
    assert f"holds a {role}" in whole
    assert whole != say(fastener_detail(Fastener("bolt", "T50", count=4)))
