"""What is said once is spread to where it holds, with the place where it was typed; what cannot be spread is one sentence."""

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings

from junk import answered_with_sentences, spoilt
from undertrim.check import one_file
from undertrim.record.source import Source, read_text
from undertrim.record.spreading import spread
from undertrim.record.store import Workspace, entry
from undertrim.words import sentence

PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")
HEAD = """format: 2
demo: yes
vehicle:
  make: Brindleway
  model: Otter
  built: {from: 2014-01, to: 2018-01}
  drive_side: left
  high_voltage: no
evidence:
  e1: {how: measured, on: 2026-03-02, by: rk, car: "2016", with: Calliper 0.05 mm}
  e2: {how: seen, on: 2026-03-02, by: rk, car: "2016"}
"""
BODY = """parts:
  front-door:
    each: [left, right]
    source: e2
    parts:
      handle-cap: {release: lift, source: e1, takes: 30 s}
      door-panel:
        release: pull
        held_by: {clip: push, at: {front: 2, rear: 3}, under: handle-cap}
        takes: 1 min
openings:
  front-door:
    kind: speaker
    behind: door-panel
    hole: {shape: round, diameter: 146 mm}
    depth: {clear: 64 mm, datum: skin, over: whole-travel, obstruction: glass, to: Glass}
    source: e1
"""
LINES = len(HEAD.splitlines())


def whole(text: str) -> Source:
    return spread(read_text(text, PATH))


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


def told(text: str) -> list[str]:
    """What a check of one file says, with line and column; file names and evidence aside."""
    found = one_file.look(entry(PATH, "vehicle", read_text(text, PATH))).problems
    return [
        f"{p.position.line}:{p.position.column}: {p.message} ({p.hint})"
        for p in sorted(found, key=lambda p: p.position)
    ]


def errors(text: str) -> list[str]:
    found = one_file.look(entry(PATH, "vehicle", read_text(text, PATH))).problems
    return [
        f"{p.position.line - LINES}:{p.position.column}: {p.message} ({p.hint})" for p in found if p.level == "error"
    ]


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


ALONG = [
    ("release: [pull, up, 3 min, 4]", "[pull", "'release' as a list has at most 3 texts, and at least one"),
    ("release: [pull, [up]]", "[pull", "'release' as a list has at most 3 texts, and at least one"),
    ("release: []", "[]", "'release' as a list has at most 3 texts, and at least one"),
    (
        "release: [pull, 3 min], takes: 4 min",
        "3 min",
        "'takes' stands twice: in the list under 'release', and by itself",
    ),
    (
        "takes: 4 min, release: [pull, 3 min]",
        "3 min",
        "'takes' stands twice: in the list under 'release', and by itself",
    ),
]


@pytest.mark.parametrize(("text", "where", "said"), ALONG)
def test_a_list_of_fields_that_cannot_be_told_apart(text: str, where: str, said: str) -> None:
    line = f"parts: {{a: {{{text}}}}}"
    source = whole(f"format: 2\n{line}\n")
    assert source.origin
    [fault] = source.origin.faults
    place = source.as_typed.position(fault.pointer)
    assert (sentence(fault.said), place.line, place.column) == (said, 2, line.index(where) + 1)


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


# One mistake, one sentence, at its place

MISTAKES = [
    ("    each: [left, right]\n", "    each: [left, rihgt]\n", ["3:18: 'rihgt' is not a known side (did you mean 'right'?)"]),
    ("    each: [left, right]\n", "    each: sides\n", ["3:11: 'sides' is not a known side (one of: left, right)"]),
    ("    each: [left, right]\n", "    each:\n", ["3:5: 'each' is blank (write the value, or 'unknown' where that is allowed, or remove the line)"]),
    ("    each: [left, right]\n", "    sides: [left, right]\n", ["3:5: 'sides' is not a field of group of parts (write 'each')"]),
    ("    source: e2\n", "    source: e9\n", ["4:13: no evidence 'e9' (evidence ids here: e1, e2)"]),
    ("    source: e2\n", "    source: {e2: x}\n", ["4:13: source must be text or a list, not a mapping (for example e1)"]),
    ("    source: e2\n", "    after: hatch\n", ["4:12: no part or preparation 'hatch' (part or preparation ids here: handle-cap, door-panel)"]),
    ("    source: e2\n", "    takes: 3\n", ["4:12: '3' has no unit (write '3 s', '3 min' or '3 h')"]),
    ("    source: e2\n", "    when: {radio: map}\n", ["4:12: no variant 'radio' (declare it under 'variants')"]),
    ("      door-panel:\n", "      inner:\n        parts: {}\n      door-panel:\n", ["7:7: 'inner' is a group inside the group 'front-door' (put its parts beside the others, or make it a group of its own)"]),
    ("openings:\n", "  trim:\n    parts: {handle-cap: {release: pull}}\nopenings:\n", ["12:13: 'handle-cap' stands twice: the ids of all parts are different, also across groups (first on line 17; rename one of them)"]),
    ("openings:\n", "  trim:\n    parts: none\nopenings:\n", ["12:12: parts of the group must be a mapping, not 'none' (for example {handle-cap: {release: lift}, front-door-panel: {release: pull}})"]),
    ("openings:\n", "  trim:\n    parts: [a]\nopenings:\n", ["12:12: parts of the group must be a mapping, not a list (for example {handle-cap: {release: lift}, front-door-panel: {release: pull}})"]),
    ("openings:\n", "  trim:\n    parts: {}\nopenings:\n", ["12:12: parts of the group has too few entries: 0 of at least 1 (for example {handle-cap: {release: lift}, front-door-panel: {release: pull}})"]),
    ("openings:\n", "  trim:\n    each: [left]\nopenings:\n", ["11:3: 'release' is missing from 'trim' (add 'release': the motion that frees it once its screws are out, for example pull)"]),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "wanted"), MISTAKES, ids=[new.strip()[:30] for _, new, _ in MISTAKES])
def test_a_mistake_in_a_group_is_one_sentence(old: str, new: str, wanted: list[str]) -> None:
    found = errors(HEAD + BODY.replace(old, new, 1))
    assert found == wanted


def test_what_a_group_misspells_is_not_missed_in_its_parts() -> None:
    found = told(HEAD + BODY.replace("    each: [left, right]\n", "    sides: [left, right]\n"))
    assert found[0] == f"{LINES + 3}:5: 'sides' is not a field of group of parts (write 'each')"
    assert [one for one in found if "handle-cap" in one or "door-panel" in one] == []


FAULTS = [
    ("car: \"2016\", with", "car: rde, with", ["-1:52: no car 'rde' under 'cars' (name it there, or write its year, its steering side and its choices)"]),
    ("evidence:\n", "cars: {red: '2016'}\nevidence:\n", []),
    ("evidence:\n", "cars: none\nevidence:\n", ["-2:7: cars must be a mapping, not 'none' (for example {red: '2016, left-hand drive, map radio', white: {year: 2014, built: 2014-06, side: right}})"]),
    ("evidence:\n", "cars: {red: {colour: red}}\nevidence:\n", ["-2:14: 'colour' is not a field of car (fields: year, built, side, is, note)"]),
    ("format: 2", "format: 3", ["-10:9: format '3' is more than 2 (this program knows formats 1 and 2: write 'format: 2'; a record of a later format needs a later program)"]),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "wanted"), FAULTS, ids=[new.strip()[:30] for _, new, _ in FAULTS])
def test_a_mistake_about_cars_or_format_is_one_sentence(old: str, new: str, wanted: list[str]) -> None:
    found = errors(HEAD.replace(old, new, 1) + BODY)
    assert [one for one in found if "format" not in old or "more than 2" in one] == wanted


# Whatever is typed, nothing is raised, and everything that is said has a place

JUNK: list[Any] = [
    None,
    "",
    "none",
    "unknown",
    "x",
    "2",
    [],
    [[]],
    {},
    {"parts": {}},
    {"parts": "none"},
    ["a", "b", "c", "d"],
    {"a": ["b"]},
]


@settings(max_examples=150, deadline=None)
@given(
    spoilt(
        {**read_text(HEAD + BODY, PATH).data, "cars": {"red": "2016"}, "functions": {"mute": ["absent", "e1"]}}, JUNK
    )
)
def test_junk_is_answered_with_sentences(text: str) -> None:
    answered_with_sentences(text, PATH)


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
