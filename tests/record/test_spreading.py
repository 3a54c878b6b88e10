"""What is said once is spread to where it holds, with the place where it was typed; written out, the whole is the same record."""

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from spreading import BODY, HEAD, LINES, told, whole
from undertrim.record.source import Source, read_text
from undertrim.record.store import Workspace, entry


def at(data: Any, place: str) -> Any:
    for step in place.split("/"):
        data = data[int(step) if step.isdecimal() and isinstance(data, list) else step]
    return data


def position(source: Source, place: str, *, key: bool = False) -> tuple[int, int]:
    data, pointer = source.data, []
    for step in place.split("/"):
        pointer.append(int(step) if isinstance(data, list) else step)
        data = data[pointer[-1]]
    found = (source.keys if key else source.values)[tuple(pointer)]
    return found.line, found.column


# What is read as what


@pytest.mark.parametrize(
    ("place", "value", "line", "column"),
    [
        ("vehicle/drive_side", ["left"], 7, 15),
        ("vehicle/drive_side/0", "left", 7, 15),
        ("vehicle/model_years", {"first": "2014", "last": "2017"}, 6, 10),
        ("vehicle/model_years/last", "2017", 6, 10),
        ("parts/handle-cap/name", "Handle cap", LINES + 6, 7),
        ("parts/handle-cap/area", "front-door", LINES + 2, 3),
        ("parts/handle-cap/each", ["left", "right"], LINES + 3, 11),
        ("parts/handle-cap/each/1", "right", LINES + 3, 18),
        ("parts/handle-cap/source", "e1", LINES + 6, 43),
        ("parts/door-panel/source", "e2", LINES + 4, 13),
        ("parts/door-panel/held_by/0/clip", "push", LINES + 9, 25),
        ("parts/door-panel/held_by/0/count", "5", LINES + 9, 35),
        ("openings/front-door/behind/0", "door-panel", LINES + 14, 13),
        ("openings/front-door/name", "Front door", LINES + 12, 3),
        ("openings/front-door/area", "front-door", LINES + 2, 3),
        ("openings/front-door/each/0", "left", LINES + 3, 12),
    ],
)
def test_what_is_said_once_stands_where_it_holds(place: str, value: Any, line: int, column: int) -> None:
    source = whole(HEAD + BODY)
    assert at(source.data, place) == value
    assert position(source, place) == (line, column)


def test_the_example_is_good_and_a_whole_is_of_format_1() -> None:
    assert told(HEAD + BODY) == []
    assert whole(HEAD + BODY).data["format"] == "1"
    assert whole((HEAD + BODY).replace("format: 2", "format: 1")).origin is None


SHORT = [
    ("functions: {mute: absent}", "functions/mute", {"by": "absent"}),
    ("functions: {mute: [absent, e1]}", "functions/mute", {"by": "absent", "source": "e1"}),
    ("functions: {mute: [absent]}", "functions/mute", {"by": "absent"}),
    ("duties: {chime: interface}", "duties/chime", {"kept_by": "interface"}),
    ("duties: {hazard-switch: [stays, panel]}", "duties/hazard-switch", {"kept_by": "stays", "part": "panel"}),
    ("after_battery: {after: {clock: Set the clock.}}", "after_battery/after/clock", {"do": "Set the clock."}),
    ("connectors: {a: {pins: {1: ground}}}", "connectors/a/pins/1", {"function": "ground"}),
    ("connectors: {a: {pins: {1: [red, switched-feed, on-off]}}}", "connectors/a/pins/1", {"colour": "red", "function": "switched-feed", "behaves": "on-off"}),
    ("variants: {radio: {choices: {map: Map radio}}}", "variants/radio/choices/map", {"label": "Map radio"}),
    ("variants: {radio: {choices: {map: [Map radio, MAP key]}}}", "variants/radio/choices/map", {"label": "Map radio", "tell": "MAP key"}),
    ("parts: {a: {tethers: {b: [Plug, plug, windows]}}}", "parts/a/tethers/b", {"name": "Plug", "kind": "plug", "serves": ["windows"]}),
    ("parts: {a: {tethers: {b: [Plug, plug, [windows, locks]]}}}", "parts/a/tethers/b", {"name": "Plug", "kind": "plug", "serves": ["windows", "locks"]}),
    ("conflicts: {a: {claims: [[64 mm, e1], [61 mm, [e2]]]}}", "conflicts/a/claims/1", {"says": "61 mm", "source": ["e2"]}),
    ("runs: {a: {passes: [[Bulkhead, grommet]]}}", "runs/a/passes/0", {"where": "Bulkhead", "through": "grommet"}),
    ("openings: {a: {not_in: {sound: plain}}}", "openings/a/not_in", [{"sound": "plain"}]),
    ("parts: {a: {after: b}}", "parts/a/after", ["b"]),
    ("parts: {a: {after: {part: b, side: left}}}", "parts/a/after", [{"part": "b", "side": "left"}]),
    ("parts: {a: {when: {radio: map}}}", "parts/a/when", {"radio": "map"}),
    ("parts: {a: {source: e1}}", "parts/a/source", "e1"),
    ("parts: {a: {release: [pull, rearward, 3 min]}}", "parts/a/takes", "3 min"),
    ("parts: {a: {release: [pull, 3 min]}}", "parts/a/takes", "3 min"),
    ("parts: {a: {release: [pull, up]}}", "parts/a/direction", "up"),
    ("parts: {a: {release: [pull]}}", "parts/a/release", "pull"),
    ("parts: {a: {release: [pull, rearwrd]}}", "parts/a/direction", "rearwrd"),
    ("parts: {a: {release: [pull, 3 mn]}}", "parts/a/direction", "3 mn"),
    ("openings: {a: {kind: [speaker, front, 6.5 in, 4 ohm]}}", "openings/a/nominal", "6.5 in"),
    ("openings: {a: {kind: [speaker, 4 ohm, frnt]}}", "openings/a/channel", "frnt"),
    ("openings: {a: {kind: [speaker, unknown]}}", "openings/a/impedance", "unknown"),
    ("connectors: {a: {numbering: [rows, top-left]}}", "connectors/a/starts", "top-left"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "place", "value"), SHORT, ids=[f"{place}-{i}" for i, (_, place, _) in enumerate(SHORT)]
)
def test_short_forms_are_read_as_the_long_ones(text: str, place: str, value: Any) -> None:
    source = whole(f"format: 2\n{text}\n")
    found = at(source.data, place)
    assert found == value
    entries = found.items() if isinstance(found, dict) else enumerate(found) if isinstance(found, list) else ()
    for key, value in entries:
        line, column = position(source, f"{place}/{key}")
        assert line == 2
        assert text[column - 1 :].lstrip("[{'").startswith(value if isinstance(value, str) else next(iter(value)))


def test_what_a_group_shares_gives_way_to_what_a_list_says() -> None:
    parts = "{a: {release: [pull, up]}, b: {release: [pull, 3 min]}}"
    found = whole(f"format: 2\nparts: {{g: {{takes: 2 min, parts: {parts}}}}}\n").data["parts"]
    assert {name: part["takes"] for name, part in found.items()} == {"a": "2 min", "b": "3 min"}


def test_cars_are_named_once() -> None:
    text = "format: 2\ncars:\n  red: {year: 2016, side: left}\nevidence:\n  e1: {car: red}\n  e2: {car: '2016'}\n  e3: {car: A red one}\n"
    source = whole(text)
    assert source.data == {
        "format": "1",
        "evidence": {
            "e1": {"car": {"year": "2016", "side": "left"}},
            "e2": {"car": "2016"},
            "e3": {"car": "A red one"},
        },
    }
    assert position(source, "evidence/e1/car/year") == (3, 15)
    assert source.as_typed.data["cars"] == {"red": {"year": "2016", "side": "left"}}


def test_a_stamp_names_its_car_too() -> None:
    assert whole("format: 2\ncars: {red: '2016'}\nverified: {car: red}\n").data["verified"] == {"car": "2016"}


@pytest.mark.parametrize(
    ("built", "years"),
    [
        ("{from: 2014-03, to: 2018-09}", ("2014", "2018")),
        ("{from: 2014-03, to: 2018-01}", ("2014", "2017")),
        ("{from: 2014-12, to: 2015-01}", ("2014", "2014")),
        ("{from: 2018-09, to: 2014-03}", None),
        ("{from: 2014-13, to: 2018-01}", None),
        ("2014", None),
        ("{from: [], to: {}}", None),
    ],
)
def test_years_follow_from_months(built: str, years: tuple[str, str] | None) -> None:
    found = whole(f"format: 2\nvehicle: {{built: {built}}}\n").data["vehicle"].get("model_years")
    assert found == (dict(zip(("first", "last"), years, strict=True)) if years else None)


@pytest.mark.parametrize(
    ("fastener", "count"),
    [
        ("{clip: push, at: {top: 2, left: 3}}", "5"),
        ("{clip: push, at: {top: 2}, count: 7}", "7"),
        ("{clip: push, at: {top: two}}", None),
        ("{clip: push, at: {}}", None),
        ("{clip: push, at: none}", None),
        ("{clip: push}", None),
    ],
)
def test_a_count_is_the_sum_of_its_edges(fastener: str, count: str | None) -> None:
    source = whole(f"format: 2\nparts: {{a: {{held_by: {fastener}}}}}\n")
    assert source.data["parts"]["a"]["held_by"][0].get("count") == count


PANELS = "{a: {area: dash, each: [left, right]}, b: {area: dash}, c: {area: boot}, d: {}}"


@pytest.mark.parametrize(
    ("opening", "area", "each"),
    [
        ("{behind: a}", "dash", ["left", "right"]),
        ("{behind: [a, b]}", "dash", None),
        ("{behind: [a, c]}", None, None),
        ("{behind: [a, d]}", None, None),
        ("{behind: [a, nothing]}", "dash", ["left", "right"]),
        ("{behind: a, area: boot, each: left}", "boot", ["left"]),
        ("{behind: a, each: none}", "dash", None),
        ("{behind: a, on_side: left}", "dash", None),
        ("{behind: c, each: none}", "boot", ["none"]),
        ("{behind: {}}", None, None),
        ("{behind: [[a]]}", None, None),
        ("{}", None, None),
    ],
)
def test_an_opening_is_where_the_parts_are_that_it_is_behind(
    opening: str, area: str | None, each: list[str] | None
) -> None:
    for text in (f"openings: {{o: {opening}}}\nparts: {PANELS}", f"parts: {PANELS}\nopenings: {{o: {opening}}}"):
        found = whole(f"format: 2\n{text}\n").data["openings"]["o"]
        assert (found.get("area"), found.get("each")) == (area, each)


def test_a_part_takes_back_what_its_group_says_and_keeps_what_it_says_itself() -> None:
    group = "{area: dash, each: [left, right], when: {radio: map}, after: x, takes: 1 min, source: e1, parts: {a: {}, b: {each: none, when: none, source: [e2]}, c: {on_side: left, takes: 2 min}}}"
    parts = whole(f"format: 2\nparts: {{g: {group}, z: {{}}}}\n").data["parts"]
    assert list(parts) == ["a", "b", "c", "z"]
    shared = {"area": "dash", "when": {"radio": "map"}, "after": ["x"], "takes": "1 min", "source": "e1"}
    assert parts["a"] == {**shared, "name": "A", "each": ["left", "right"]}
    assert parts["b"] == {"area": "dash", "after": ["x"], "takes": "1 min", "name": "B", "source": ["e2"]}
    assert parts["c"] == {**shared, "name": "C", "on_side": "left", "takes": "2 min"}
    assert parts["z"] == {"name": "Z"}


# A whole is what format 1 says by itself


@pytest.mark.parametrize(
    "path",
    [p for p in Workspace(Path(__file__).parents[2]).files() if "vehicles" in p.parts],
    ids=lambda path: path.stem,
)
def test_a_whole_written_out_is_the_same_record_in_format_1(path: Path) -> None:
    found = Workspace(Path(__file__).parents[2]).load(path)
    written = read_text(json.dumps(found.source.data), path)
    again = entry(path, "vehicle", written)
    assert again.source.origin is None
    assert (_own(again.record), again.problems) == (_own(found.record), ())
    assert found.source.origin is not None


def _own(record: Any) -> Any:
    """A record in which nothing knows that it is written together with others."""
    named = {
        section: {name: replace(thing, form_of="") for name, thing in getattr(record, section).items()}
        for section in ("parts", "openings", "connectors", "ladders")
    }
    return replace(record, taken={}, **named)
