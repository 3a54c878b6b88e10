"""What has a `side` may say a fact for each: the whole then has it once for each side, as it has what differs between cars."""

from typing import Any

import pytest

from differing import BODY, HEAD, PATH, record, whole
from undertrim.check import one_file
from undertrim.record.source import read_text
from undertrim.record.store import entry

DOOR = """parts:
  door-panel:
    area: front-door
    each: [left, right]
    release: pull
    held_by: {clip: push, count: [{side: left, is: 7}, {side: right, is: 6}]}
    takes: 2 min
    source: e2
  door-speaker:
    area: front-door
    each: [left, right]
    after: door-panel
    release: unscrew
    held_by: {screw: T20, count: 4}
    tethers: {speaker: [Speaker plug, plug, sound]}
    replaced: yes
    takes: 2 min
    source: e2
openings:
  door:
    kind: [speaker, front, 6.5 in, 4 ohm]
    behind: door-speaker
    hole: {shape: round, diameter: 146 mm}
    depth: {clear: 64 mm, datum: skin, over: whole-travel, obstruction: glass, to: Glass}
    crash_sensor: no
    source: e1
connectors:
  speaker:
    at: door-speaker/speaker
    end: speaker
    view: wires
    rows: 1
    columns: 2
    latch: [{when: {sound: amplified}, is: top}, {when: {sound: bare}, is: bottom}]
    numbering: rows
    source: e2
    pins:
      1: [{side: left, is: [brown/white, front-left-plus]}, {side: right, is: [brown/grey, front-right-plus]}]
      2: {colour: brown, function: [{side: left, is: front-left-minus}, {side: right, is: front-right-minus}]}
"""


def told(text: str) -> list[str]:
    """The codes of all that is wrong in the form of the record."""
    found = one_file.look(entry(PATH, "vehicle", read_text(text, PATH))).problems
    return [code for problem in found if (code := problem.said.code).startswith(("spread/", "schema/"))]


def plugs() -> dict[str, Any]:
    return dict(whole(HEAD + DOOR).data["connectors"])


def test_a_plug_stands_once_for_each_side_and_kind_of_car() -> None:
    made = plugs()
    assert list(made) == [f"speaker-{sound}-{side}" for sound in ("amplified", "bare") for side in ("left", "right")]
    right = made["speaker-bare-right"]
    assert (right["side"], right["when"], right["latch"]) == ("right", {"sound": "bare"}, "bottom")
    assert right["pins"] == {
        "1": {"colour": "brown/grey", "function": "front-right-plus"},
        "2": {"colour": "brown", "function": "front-right-minus"},
    }
    assert told(HEAD + DOOR) == []


def test_a_fastener_counts_for_each_side() -> None:
    held = record(HEAD + DOOR).parts["door-panel"].held_by
    assert [(one.side, one.count) for one in held] == [("left", 7), ("right", 6)]


def test_the_side_of_a_form_stands_where_its_value_was_typed() -> None:
    found = whole(HEAD + DOOR)
    line, column = next(
        (number, text.index("left}") + 1)
        for number, text in enumerate((HEAD + DOOR).splitlines(), 1)
        for text in [text.replace("side: left, is: 7", "side: left}, is: 7")]
        if "is: 7" in text
    )
    position = found.position(("parts", "door-panel", "held_by", 0, "side"))
    assert (position.line, position.column) == (line, column)


SEVEN = "{side: left, is: 7}"


@pytest.mark.parametrize(
    ("old", "new", "wanted"),
    [
        (SEVEN, "{side: middle, is: 7}", ["spread/side-no-word"]),
        (f"{SEVEN}, ", "", ["spread/one-value"]),
        (SEVEN, "{side: right, is: 7}", ["spread/two-values"]),
        (SEVEN, "{side: left, is: 7, note: x}", ["spread/beside-is"]),
        ("release: pull", "release: [{side: left, is: pull}, {side: right, is: slide}]", ["spread/cannot-differ-by-side"] * 2),
        ("clip: push, count", "clip: push, side: right, count", ["spread/side-no-word"]),
    ],
)  # fmt: skip
def test_a_mistake_is_one_sentence(old: str, new: str, wanted: list[str]) -> None:
    assert (HEAD + DOOR).count(old) == 1
    assert told((HEAD + DOOR).replace(old, new)) == wanted


def test_what_is_named_side_but_no_value_by_side_stays_as_it_is() -> None:
    text = (HEAD + BODY).replace("count: 4, under: bezel}", "count: 4, side: left, under: bezel}")
    assert [one["side"] for one in whole(text).data["parts"]["radio"]["held_by"]] == ["left", "left"]
