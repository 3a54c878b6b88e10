"""The printed sheet of a whole vehicle says each thing once: what is alike, what goes back as it came off, and cautions, each before what it guards."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from undertrim.publish.facts import told
from undertrim.publish.printed.sheet import guarded, said_once, steps, view, way_back
from undertrim.publish.printed.sheet.pictures import Pictures
from undertrim.words import say
from wired import VEHICLES, made, stem

Data = dict[str, Any]
PLOVER = next(path for path in VEHICLES if path.stem.startswith("plover"))
HOT: Data = {"signal": "WARNING", "hazard": "Hot.", "consequence": "Burns.", "avoid": "Wait.", "when": ""}
LIVE: Data = {**HOT, "signal": "DANGER", "hazard": "Live."}
SCREWS = "Undo the four screws at its rim, from the top down."


def step(**changed: Any) -> Data:
    plain = {
        "cautions": [],
        "when": "",
        "state_words": "battery on",
        "tethers": [],
        "fasteners": [],
        "conflicts": [],
        "kits": [],
    }
    return {**made(PLOVER)["steps"][0], **plain, **changed}


def rows(*given: Data) -> list[Data]:
    """The rows of these steps, in the order of the sheet."""
    facts = {**made(PLOVER), "steps": list(given), "plans": []}
    return [row for section in view(facts, "", "a4", date(2026, 5, 4))["sections"] for row in section["steps"]]


def on_side(side: str, **changed: Any) -> Data:
    lid = {"id": f"remove:lid@{side}", "kind": "remove", "side": side, "title": f"Lid, {side}", "text": [SCREWS]}
    return step(**{**lid, **changed})


def test_what_both_sides_share_is_a_line_that_leads_to_the_first() -> None:
    """All that differs is told again."""
    found = rows(on_side("left"), on_side("right"), on_side("right", text=[SCREWS + " Wait."]))
    assert [[line["as"] for line in row["led"]] for row in found] == [[], ["as step 1"], []]
    assert [row["text"] for row in (found[0], found[2])] == [[SCREWS], [SCREWS + " Wait."]]
    assert found[1]["led"][0]["title"] == "Lid, right"


def test_lines_that_follow_each_other_are_one_row_unless_something_stands_before_one() -> None:
    plain = [on_side("left"), *[on_side("right")] * 3]
    assert [len(row["led"]) for row in rows(*plain)] == [0, 3]
    for between in ({"cautions": [LIVE]}, {"state_words": "battery off"}):
        assert [len(row["led"]) for row in rows(*plain[:2], on_side("right", **between), plain[3])][:2] == [0, 1]


def test_the_same_fitting_elsewhere_leads_to_the_first_but_no_other_part_does() -> None:
    fit, other = (step(id=f"install:{name}:offer", kind="install", side="", title=name, text=[SCREWS]) for name in "ab")
    assert [bool(row["led"]) for row in rows(fit, other)] == [False, True]
    off, next_off = (step(id=f"remove:{name}", kind="remove", side="", title=name, text=[SCREWS]) for name in "ab")
    assert [bool(row["led"]) for row in rows(off, next_off)] == [False, False]


def fastener(**changed: Any) -> Data:
    plain = {
        "fate": "out",
        "fate_words": "out",
        "later": "",
        "later_words": "",
        "kind": "screw",
        "text": "4 × T20 screws",
        "detail": "2 top",
    }
    return {**plain, "hidden_by": "", "torque": "", "head": None, "sort": "T20", "when": "", **changed}


def test_what_goes_back_as_it_came_off_leads_there_with_its_torque_and_the_rest_stays() -> None:
    out = step(
        id="remove:lid",
        kind="remove",
        part="lid",
        fasteners=[fastener(), fastener(text="1 × nut", torque="torque 6 N·m")],
    )
    back = [
        fastener(fate="back", fate_words="back in"),
        fastener(fate="back", fate_words="back in", text="1 × nut", torque="torque 6 N·m"),
        fastener(fate="new", fate_words="fit new ones", text="2 × clips"),
    ]
    found = rows(out, step(id="refit:lid", kind="refit", part="lid", fasteners=back))[1]["items"]
    assert [(item["lead"], item["act"], item["rest"]) for item in found] == [
        ("4 × T20 screws, 1 × nut (torque 6 N·m)", "back in", "as at step 1"),
        ("2 × clips", "fit new ones", "2 top"),
    ]
    longer = [fastener(fate="back", fate_words="back in", detail="2 bottom")]
    told_again = rows(out, step(id="refit:lid", kind="refit", part="lid", fasteners=longer))[1]["items"]
    assert [(item["act"], item["rest"]) for item in told_again] == [("back in", "2 bottom")]


def test_a_caution_stands_in_full_once_with_its_reach_then_as_a_mark_and_later_short() -> None:
    far: list[list[Data]] = [[], [], [], []]
    found = rows(*(step(cautions=cautions) for cautions in ([HOT], [HOT], [], [HOT], *far, [HOT], [HOT])))
    told_at = {
        row["number"]: [(c["hazard"], c["short"], c["reach"]) for c in row["cautions"]]
        for row in found
        if row["cautions"]
    }
    assert told_at == {1: [("Hot.", "", "Steps 1 to 4.")], 9: [("Hot.", "In full before step 1.", "Steps 9 to 10.")]}
    assert {row["number"]: row["guarded"] for row in found if row["guarded"]} == {
        2: [{"signal": "WARNING", "step": 1}], 4: [{"signal": "WARNING", "step": 1}], 10: [{"signal": "WARNING", "step": 9}],
    }  # fmt: skip


def test_danger_is_in_full_wherever_it_begins() -> None:
    found = rows(*(step(cautions=cautions) for cautions in ([LIVE], [], [], [], [], [LIVE])))
    assert [c["short"] for row in found for c in row["cautions"]] == ["", ""]


@pytest.mark.parametrize("path", VEHICLES, ids=stem)
def test_every_caution_stands_before_each_step_that_it_guards(path: Path) -> None:
    """At the step itself, or by a mark of its signal word that leads to an earlier step where it does; and somewhere before that in full."""
    told_steps = way_back.shortened(made(path)["steps"])
    plain = list(guarded.guarded(list(steps.rows({**made(path), "steps": told_steps}, Pictures())), told_steps))
    before = {row["number"]: {told.wording(caution): caution for caution in row["cautions"]} for row in plain}
    guarding = [(number, caution) for number, one in enumerate(told_steps, start=1) for caution in one["cautions"]]
    assert guarding
    for number, caution in guarding:
        wording = told.wording(caution)
        marks = [mark["step"] for mark in plain[number - 1]["guarded"] if mark["signal"] == caution["signal"]]
        (place,) = [at for at in {number, *marks} if at <= number and wording in before[at]]
        short = say(before[place][wording]["short"])
        assert caution["signal"] != "DANGER" or not short
        full = int(short.rstrip(".").split()[-1]) if short else place
        assert full <= place
        assert before[full][wording]["short"] == ""


@pytest.mark.parametrize("path", VEHICLES, ids=stem)
def test_no_step_no_mark_and_no_fastener_is_lost_on_the_way(path: Path) -> None:
    facts = made(path)
    found = [row for section in view(facts, "", "a4", date(2026, 5, 4))["sections"] for row in section["steps"]]
    assert [number for row in found for number in numbers(row)] == list(range(1, len(facts["steps"]) + 1))
    at = {number: row for row in found for number in numbers(row)}
    for number, one in enumerate(facts["steps"], start=1):
        row = at[number]
        leads = {line["as"] for line in row["led"] if line["number"] == number}
        told_by = at[int(leads.pop().split()[-1])] if leads else row
        whole = " ".join(item["lead"] for item in told_by["items"])
        assert told_by["number"] <= number
        for line in one["fasteners"]:
            assert line["text"] in whole
        for line in one["tethers"]:
            assert line["name"] in whole


def numbers(row: Data) -> Iterator[int]:
    """The steps of a row."""
    yield from (line["number"] for line in row["led"]) if row["led"] else (row["number"],)


def test_jobs_are_told_by_those_that_do_not_need_a_step_where_these_are_few() -> None:
    targets = made(PLOVER)["targets"]
    ids = [target["id"] for target in targets]
    found = rows(*(step(targets=ids[:count]) for count in (len(ids), len(ids) - 1, 1)))
    assert [row["marks"] for row in found] == ["all", f"all but {targets[-1]['mark']}", targets[0]["mark"]]


def test_a_shorter_line_is_not_led_elsewhere() -> None:
    assert not any(row["led"] for row in rows(on_side("left", text=["Lift."]), on_side("right", text=["Lift."])))
    assert said_once.told_once([], []) == []
