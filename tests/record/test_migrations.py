"""A record moved to the next format says what it said, with its comments and its order; where that cannot be, the file stays."""

# Long because a whole record of format 1 stands in it, with all that is moved.

import json
import random
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from undertrim.check import one_file
from undertrim.record import migrations
from undertrim.record.examples import typed
from undertrim.record.migrations import CannotMove, same, side_by_side
from undertrim.record.migrations.marked import comments
from undertrim.record.source import Source, read_text
from undertrim.record.spreading import spread
from undertrim.record.store import Workspace, entry

ROOT = Path(__file__).parents[2]
PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")
OLD = """# top
format: 1  # the first
demo: yes
vehicle:
  make: Brindleway
  model: Otter
  built: {from: 2014-01, to: 2018-01}
  model_years: {first: 2014, last: 2017}  # as people say
  bodies: [hatchback]
  drive_side: [left]
  high_voltage: no

# who saw it
evidence:
  e1: {how: measured, on: 2026-03-02, by: rk, car: "2016, left-hand drive", with: Calliper 0.05 mm}
  e2: {how: seen, on: 2026-03-02, by: rk, car: "2016, left-hand drive"}
  e3: {how: seen, on: 2026-03-05, by: rk, car: {year: 2017, side: left}}

parts:
  # the console first
  lid:
    name: Lid
    area: console
    release: lift
    held_by:
      - {clip: push, count: 2}
    source: e1
  # all of the door
  handle-cap:
    name: "Cap, in the handle"
    area: front-door
    each: [left, right]
    release: lift
    held_by:
      # seen from below
      - {clip: snap-in, count: 1}
    how: |
      Lift it at its lower end.

      Keep it.
    source: e1

  door-panel:
    name: Door panel   # as printed
    area: front-door
    each: [left, right]
    after: [handle-cap]
    release: lift
    direction: up
    takes: 2 min
    held_by:
      - {clip: push, count: 5, at: {front: 2, rear: 3}}
      - clip: metal
        count: 2  # counted twice
        at: {top: 2}
    tethers:
      windows: {name: "Window switch, plug", kind: plug, serves: [windows]}
    source: e2
openings:
  front-door:
    name: Speakers
    kind: speaker
    area: front-door
    each: [left, right]
    behind: [door-panel]
    hole: {shape: round, diameter: 146 mm}
    depth: {clear: 64 mm}
    source: e1
  middle:
    name: Middle speaker
    kind: speaker
    area: front-door
    behind: [door-panel]
    hole: {shape: round, diameter: 146 mm}
    depth: {clear: 64 mm}
functions:
  mute: {by: absent, source: e2}
  reverse: {by: unknown}
after_battery:
  after:
    clock: {do: "Set it: hours first."}
# the end
"""


def old(text: str = OLD) -> Source:
    return read_text(text, PATH)


def moved(text: str = OLD) -> str:
    return migrations.moved(old(text)).text


def whole(text: str) -> Any:
    return spread(read_text(text, PATH)).data


def test_a_record_says_each_thing_once_and_the_same() -> None:
    text = moved()
    assert whole(text) == old().data
    assert comments(text) == comments(OLD)
    for line in (
        "  bodies: hatchback\n",
        "        release: [lift, up, 2 min]\n",
        '  car-2016: "2016, left-hand drive"\n',
        "by: rk, car: car-2016}",
        "car: {year: 2017, side: left}",
        "    held_by: {clip: push, count: 2}\n",
        '        name: "Cap, in the handle"\n',
        "      door-panel:\n        # as printed\n        after: handle-cap\n",
        "          - {clip: push, at: {front: 2, rear: 3}}\n          - clip: metal\n            # counted twice\n            at: {top: 2}\n",
        '        tethers: {windows: ["Window switch, plug", plug, windows]}\n',
        "    each: none\n    behind: door-panel\n",
        "  mute: [absent, e2]\n  reverse: unknown\n",
        '  after: {clock: "Set it: hours first."}\n',
    ):
        assert line in text, line


def test_what_stands_above_a_part_goes_with_it() -> None:
    assert "  front-door:\n    each: [left, right]\n    parts:\n      # all of the door\n      handle-cap:\n" in moved()


def test_nothing_that_is_left_out_is_said_twice() -> None:
    origin = spread(read_text(moved(), PATH)).origin
    assert origin is not None
    assert origin.twice == ()


@pytest.mark.parametrize("end", ["\r\n", "\n"])
def test_line_ends_stay(end: str) -> None:
    text = moved(OLD.replace("\n", end))
    assert text.replace(end, "").count("\r") == 0
    assert text.replace(end, "\n") == moved()


def test_what_follows_and_was_not_said_is_told() -> None:
    without = OLD.replace("  model_years: {first: 2014, last: 2017}  # as people say\n", "").replace(
        "push, count: 5, at", "push, at"
    )
    found = migrations.moved(old(without))
    assert found.added == (("vehicle", "model_years"), ("parts", "door-panel", "held_by", 0, "count"))


def test_a_car_that_looks_like_a_name_gets_one() -> None:
    text = moved(OLD.replace('car: "2016, left-hand drive"}', "car: otter}"))
    assert "  car: otter\n" in text
    assert whole(text)["evidence"]["e2"]["car"] == "otter"


def test_a_record_in_brackets_is_moved_too() -> None:
    text = typed(old().data)
    assert whole(moved(text)) == read_text(text, PATH).data


def test_the_newest_format_stays() -> None:
    text = moved()
    assert moved(text) == text
    assert migrations.format_of(read_text(text, PATH)) == migrations.NEWEST == 2


@pytest.mark.parametrize(
    ("spoil", "why"),
    [
        (lambda text: text.replace("e2: {how: seen", "e2: {how: told"), "the new text would not say the same at 'evidence/e2/how'"),
        (lambda text: text.replace("  # the console first\n", ""), "a comment would be lost or change its place"),
        (lambda text: text.replace("reverse: unknown", "mute: unknown"), "the new text would not be read as a record"),
        (lambda text: text.replace("  mute: [absent, e2]\n  reverse: unknown", "  reverse: unknown\n  mute: [absent, e2]"), "the new text would not say the same at 'functions'"),
        (lambda text: text.replace("count: 2}", "count: 2, note: x}"), "the new text would not say the same at 'parts/lid/held_by/0/note'"),
    ],
)  # fmt: skip
def test_a_text_that_says_something_else_is_refused(spoil: Any, why: str) -> None:
    text = spoil(moved())
    assert text != moved()
    with pytest.raises(CannotMove, match=f"^{why}$"):
        same.checked(old(), read_text(text, PATH))


# Whatever is written, in whatever layout


@cache
def wholes() -> list[Any]:
    """The shipped records that say all they have themselves; what takes from another one is no record of format 1."""
    place = Workspace(ROOT)
    loaded = [place.load(path) for path in place.files([place.records / "vehicles"])]
    return [found.source.data for found in loaded if not found.sisters]


def laid_out(value: Any, draw: random.Random, depth: int = 0) -> str:
    """A value in blocks or brackets, with comments here and there."""
    margin = "  " * depth
    if not isinstance(value, dict | list) or not value or (depth > 1 and draw.random() < 0.4):
        return f" {typed(value)}{'  # aside' if draw.random() < 0.03 else ''}\n"
    lines = ["\n"]
    entries = value.items() if isinstance(value, dict) else ((None, item) for item in value)
    for key, inner in entries:
        if draw.random() < 0.03:
            lines.append(f"{margin}# above {draw.randrange(99)}\n")
        lines.append(
            f"{margin}{typed(key)}:{laid_out(inner, draw, depth + 1)}" if key is not None else _item(inner, draw, depth)
        )
    return "".join(lines)


def _item(value: Any, draw: random.Random, depth: int) -> str:
    return f"{'  ' * depth}-{laid_out(value, draw, depth + 1)}"


def fewer(data: Any, draw: random.Random) -> Any:
    """A record with some of its parts and sections, and parts that differ from their neighbours."""
    kept = {key: value for key, value in data.items() if key != "verified"}
    kept["parts"] = {key: dict(part) for key, part in data["parts"].items() if draw.random() < 0.7} or data["parts"]
    for part in kept["parts"].values():
        for name in ("area", "each", "source", "takes", "when"):
            if draw.random() < 0.1:
                part.pop(name, None)
    return kept


@settings(max_examples=8, deadline=None, phases=(Phase.generate,))
@given(st.integers(0, 10**9))
def test_any_record_in_any_layout_says_the_same_afterwards(seed: int) -> None:
    draw = random.Random(seed)  # noqa: S311 - a draw, no secret
    data = fewer(draw.choice(wholes()), draw)
    text = laid_out(data, draw).lstrip("\n")
    before = read_text(text, PATH)
    assert (before.problems, before.data) == ((), data)
    found = migrations.moved(before)
    assert set(map(repr, same._differences(data, whole(found.text), ()))) == {
        repr((place, True)) for place in found.added
    }
    assert comments(found.text) == comments(text)


@pytest.mark.parametrize("data", wholes(), ids=lambda data: data["vehicle"]["model"])
def test_a_shipped_record_goes_to_format_1_and_back(data: Any) -> None:
    text = laid_out(data, random.Random(1)).lstrip("\n")  # noqa: S311
    after = read_text(migrations.moved(read_text(text, PATH)).text, PATH)
    assert spread(after).data == data
    one, other = (one_file.look(entry(PATH, "vehicle", source)).problems for source in (read_text(text, PATH), after))
    told = [{(p.rule, p.message) for p in found if p.rule != "said-twice"} for found in (one, other)]
    assert told[0] == told[1]


def test_only_the_text_around_a_change_is_touched() -> None:
    before, after = OLD.splitlines(), moved().splitlines()
    same_lines = [line.strip() for line in after if line.strip() in {old.strip() for old in before}]
    assert len(same_lines) > len(before) * 0.6
    assert replace(old(), text="").text == ""
    assert json.dumps(whole(moved())["parts"]["handle-cap"]["how"]) == '"Lift it at its lower end.\\n\\nKeep it.\\n"'


def test_fields_that_a_list_would_take_for_others_stay_by_their_names() -> None:
    """`nominal: 4 ohm` behind the kind would be read as an impedance, and `front` as a channel."""
    text = "format: 2\nopenings:\n  door:\n    kind: speaker\n    nominal: 4 ohm\n    crash_sensor: no\n"
    assert side_by_side.listed(text) == text
    told = text.replace("    nominal: 4 ohm\n", "    channel: front\n    impedance: 4 ohm\n")
    assert "    kind: [speaker, front, 4 ohm]\n" in side_by_side.listed(told)
