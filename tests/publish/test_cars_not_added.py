"""What a car has in one form or another is never added up: where the car is left open, numbers go from the least to the most."""

from typing import Any

import pytest

from differing import BODY, HEAD, record
from undertrim.derive.procedure.choices import choices
from undertrim.derive.procedure.planning import Planner
from undertrim.derive.visit.totals import of_record
from undertrim.publish.encoding import said
from undertrim.publish.facts import spans, totals
from undertrim.publish.printed.sheet.view import added
from undertrim.words import say

CLIPS = "{clip: push, count: [{when: {radio: map}, is: 4}, {when: {radio: plain}, is: 6}]}"


def kinds(body: str) -> Any:
    known = record(HEAD + body)
    return said(totals.of_cars(known, of_record(choices(Planner(known)))))


def test_clips_of_either_radio_are_not_added_up() -> None:
    found = kinds(BODY)
    assert [(entry["words"], entry["totals"]["fasteners"][0]["out"]) for entry in found] == [
        ("Map radio", 4),
        ("Plain radio", 6),
    ]
    shown = said(spans.spanned(found))
    assert [(row["sort"], row["counts"][:2]) for row in shown["rows"]] == [
        ("push clip", ["4 to 6"] * 2),
        ("T20 screw", [4, 0]),
    ]
    assert shown["time"].startswith("5 min to 7 min of taking apart and refitting, plus a wait"), shown["time"]


def test_the_sum_of_a_sheet_is_that_of_one_car() -> None:
    """Where the car with more clips has fewer screws, least and most of the sum are not those of the rows."""
    screws = BODY.replace(
        "count: 4, under: bezel", "count: [{when: {radio: map}, is: 5}, {when: {radio: plain}, is: 3}], under: bezel"
    )
    assert screws != BODY
    sheet = said(added([entry["totals"] for entry in kinds(screws)]))
    assert [row["counts"][0] for row in sheet["rows"]] == ["4 to 6", "3 to 5"]
    assert sheet["sums"][0] == 9


def test_a_tool_for_some_cars_says_so() -> None:
    other = BODY.replace(
        "{screw: T20, count: 4, under: bezel}",
        "{screw: [{when: {radio: map}, is: T20}, {when: {radio: plain}, is: T25}], count: 4, under: bezel}",
    )
    assert other != BODY
    tools = {tool["name"]: tool["some"] for tool in said(spans.spanned(kinds(other)))["tools"]}
    assert {name: some for name, some in tools.items() if "T2" in name} == {"T20 bit": True, "T25 bit": True}
    assert False in tools.values()


@pytest.mark.parametrize(("counts", "wanted"), [
    ([2], "2"), ([2, 2], "2"), ([2, 5], "2 to 5"), ([2, 0], "0 to 2"), ([None, 0], "unknown number"), ([None, 3], "0 to 3 and more"), ([None], "unknown number"),
])  # fmt: skip
def test_what_is_to_buy_goes_from_least_to_most(counts: list[int | None], wanted: str) -> None:
    each = [{"buy": [{"what": "clip", "part": "panel", "count": count}] if count != 0 else []} for count in counts]
    assert [say(one.number) for one in spans.buy(each)] == [wanted]
    assert [say(one.number) for one in spans.bought(each)] == [wanted]


def test_a_car_with_nothing_to_do_has_no_part_in_it() -> None:
    idle = {"minutes": 0, "untimed": 0, "tools": []}
    busy = {"minutes": 3, "untimed": 0, "tools": []}
    assert spans.working([{"totals": idle}, {"totals": busy}]) == [busy]
    assert spans.working([{"totals": idle}]) == [idle]


def test_a_wait_that_some_cars_have_is_told_with_their_time() -> None:
    each = [{"minutes": 5, "untimed": 0, "waits": waits, "time_text": str(waits)} for waits in ([], [180])]
    assert say(spans.time(each)) == (
        "5 min of taking apart and refitting; fitting and testing not counted, to "
        "5 min of taking apart and refitting, plus a wait of 3 min; fitting and testing not counted, by the kind of car"
    )
