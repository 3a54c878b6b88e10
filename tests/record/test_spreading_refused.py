"""What cannot be spread is one sentence at its place, and whatever is typed is answered."""

from typing import Any

import pytest
from hypothesis import given, settings

from junk import answered_with_sentences, spoilt
from spreading import BODY, HEAD, LINES, PATH, told, whole
from undertrim.check import one_file
from undertrim.record.source import read_text
from undertrim.record.store import entry
from undertrim.words import sentence


def errors(text: str) -> list[str]:
    found = one_file.look(entry(PATH, "vehicle", read_text(text, PATH))).problems
    return [
        f"{p.position.line - LINES}:{p.position.column}: {p.message} ({p.hint})" for p in found if p.level == "error"
    ]


ALONG = [
    ("release: [pull, up, 3 min, 4]", "4]", "'4' means nothing in the list under 'release'"),
    ("release: [pull, up, 3 min, replaced, 4]", "[pull", "'release' as a list has at most 4 texts, and at least one"),
    ("release: [pull, [up]]", "[pull", "'release' as a list has at most 4 texts, and at least one"),
    ("release: []", "[]", "'release' as a list has at most 4 texts, and at least one"),
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
    place = source.position(fault.pointer)
    assert (sentence(fault.said), place.line, place.column) == (said, 2, line.index(where) + 1)


# One mistake, one sentence, at its place

MISTAKES = [
    ("    each: [left, right]\n", "    each: [left, rihgt]\n", ["3:18: 'rihgt' is not a known side (did you mean 'right'?)"]),
    ("    each: [left, right]\n", "    each: sides\n", ["3:11: 'sides' is not a known side (one of: left, right)"]),
    ("    each: [left, right]\n", "    each:\n", ["3:5: 'each' is blank (write the value, for example [left, right], or remove the line)"]),
    ("    each: [left, right]\n", "    sides: [left, right]\n", ["3:5: 'sides' is not a field of group of parts (write 'each')"]),
    ("    source: e2\n", "    source: e9\n", ["4:13: no evidence 'e9' (evidence ids here: e1, e2)"]),
    ("    source: e2\n", "    source: {e2: x}\n", ["4:13: source must be text or a list, not a mapping (for example e1)"]),
    ("    source: e2\n", "    after: hatch\n", ["4:12: no part or preparation 'hatch' (part or preparation ids here: handle-cap, door-panel)"]),
    ("    source: e2\n", "    takes: 3\n", ["4:12: '3' has no unit (write '3 s', '3 min' or '3 h')"]),
    ("    source: e2\n", "    when: {radio: map}\n", ["4:12: no variant 'radio' (declare it under 'variants')"]),
    ("      door-panel:\n", "      inner:\n        parts: {}\n      door-panel:\n", ["7:7: 'inner' is a group inside the group 'front-door' (put what is in it beside the others, or make it a group of its own)"]),
    ("openings:\n", "  trim:\n    parts: {handle-cap: {release: pull}}\nopenings:\n", ["12:13: 'handle-cap' stands twice: each id stands once in its section, also across groups (first on line 17; rename one of them)"]),
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
