"""A value that the schema refuses is its business alone: no rule crashes on the rest, or says it again."""

import dataclasses
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from rule_pages import BASE

from undertrim.check import runner
from undertrim.check.register import RECORD_RULES
from undertrim.record.copying import copied
from undertrim.record.source import Pointer, Source, read_text
from undertrim.record.store import entry

EXTRA = """
variants:
  sound:
    ask: Is there an amplifier?
    choices: {plain: {label: No, tell: No badge}, loud: {label: Yes, tell: A badge}}
    source: e2
connectors:
  main:
    name: Main plug
    at: radio/main
    view: wires
    rows: 2
    columns: 4
    pins:
      4: {colour: red/white, function: battery-feed, when: {sound: loud}}
      7: {colour: white, function: ground, when: {sound: plain}, source: [e1]}
functions:
  speed: {by: data}
"""
SCREWS = "{screw: T20, count: 4, at: {top: 2, bottom: 2}, thread: ST4.2, length: 16 mm}, {hook: tab, count: 2}"
EVIDENCE = "evidence:\n  e2: {how: seen, on: 2026-03-09, by: tw, car: '2015, yes'}\n"
TEXT = (
    BASE.replace('car: "2016"', 'car: "2016, no"')
    .replace("evidence:\n", EVIDENCE)
    .replace("{screw: T20, count: 4}", SCREWS)
    + EXTRA
)
SOURCE = read_text(TEXT, Path("records/vehicles/brindleway/otter-2014-2018.yaml"))
SILENT = [
    "colour-not-known",
    "count-in-text",
    "depth-without-datum",
    "edges-do-not-add-up",
    "fastener-without-count",
    "function-stated-twice",
    "hook-pulled",
    "implausible-quantity",
    "mirrored-edge",
    "model-years-apart",
    "pin-outside-plug",
    "size-in-text",
    "thread-and-head",
    "unused-evidence",
    "year-range",
]


def scalars(data: Any, pointer: Pointer = ()) -> Iterator[Pointer]:
    entries = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else None
    if entries is None:
        yield pointer
        return
    for step, inner in entries:
        yield from scalars(inner, (*pointer, step))


def broken(place: Pointer, junk: Any) -> Source:
    data = inner = copied(SOURCE.data)
    for step in place[:-1]:
        inner = inner[step]
    inner[place[-1]] = junk
    return dataclasses.replace(SOURCE, data=data)


def test_the_unbroken_record_is_good() -> None:
    assert runner.check_entry(entry(SOURCE.path, "vehicle", SOURCE)) == ()


@pytest.mark.parametrize("junk", ["???", "0", ["x"], {"x": "y"}, None], ids=str)
def test_no_rule_crashes_on_what_the_schema_leaves(junk: Any) -> None:
    for place in scalars(SOURCE.data):
        problems = runner.check_entry(entry(SOURCE.path, "vehicle", broken(place, junk)))
        assert [problem.message for problem in problems if problem.rule == runner.CRASH] == [], place


@pytest.mark.parametrize("junk", ["???", ["x"], None], ids=str)
def test_a_refused_value_is_reported_once(junk: Any) -> None:
    assert set(SILENT) <= set(RECORD_RULES)
    for place in scalars(SOURCE.data):
        problems = runner.check_entry(entry(SOURCE.path, "vehicle", broken(place, junk)))
        if any(problem.rule == "schema" for problem in problems):
            assert [problem.rule for problem in problems if problem.rule in SILENT] == [], place
