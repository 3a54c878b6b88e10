"""The quick gate passes exactly what the validator passes. Oracle: the `jsonschema` library with our keywords."""

import copy
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from undertrim.record import gate, keywords, schema
from undertrim.record.refusals import refusals
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[2]
JUNK: list[Any] = [
    "", " ", "unknown", "none", "yes", "no", "left", "0", "-1", "07", "7", "99999", "62 mm", "62", "1/2 in", "3 parsecs", "T20", "hex 7 mm",
    "T99", "2026-02-30", "2026-02-28", "2026-02", "front-door", "Front Door", "a\nb", "a\n", "x" * 121, "x" * 2001, "restraint", "screw", "round",
    "circle", "receiver", "speaker", "kit", None, [], {}, ["left"], ["left", "left"], ["left", None], [[]], {"x": "y"}, {"left": "2"},
    {"screw": "T20"}, {"screw": "T20", "clip": "push"}, {"from": "2014-01", "to": "2015-01"}, {"Bad Id": {}},
]  # fmt: skip


@cache
def originals() -> list[tuple[str, Any]]:
    place = Workspace(ROOT)
    return [(place.kind(path), place.load(path).source.data) for path in place.files()]


def verdicts(data: Any, name: str) -> tuple[bool, bool]:
    return gate.fits(data, name), keywords.validator(name).is_valid(data)


def places(data: Any, above: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    entries = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    return [above, *(found for step, inner in entries for found in places(inner, (*above, step)))]


def at(data: Any, place: tuple[Any, ...]) -> Any:
    for step in place:
        data = data[step]
    return data


@st.composite
def mutated(draw: st.DrawFn) -> tuple[str, Any]:
    """A record of this repository with one or two changes: a value swapped for junk or another of its values, gone, renamed or added."""
    kind, original = draw(st.sampled_from(originals()))
    data = copy.deepcopy(original)
    for _ in range(draw(st.integers(1, 2))):
        known = places(data)
        place = draw(st.sampled_from(known))
        copied = copy.deepcopy(at(data, draw(st.sampled_from(known))))
        new = copy.deepcopy(draw(st.sampled_from(JUNK) | st.just(copied)))  # junk must not grow from case to case
        if not place:
            continue
        around, step = at(data, place[:-1]), place[-1]
        change = draw(st.sampled_from(("swap", "drop", "add", "rename")))
        if change == "swap":
            around[step] = new
        elif change == "drop":
            del around[step]
        elif isinstance(around, list):
            around.insert(step, new)
        else:
            key = draw(st.sampled_from(("x", "name", "when", "count", "Bad Id", *around)))
            around[key] = around.pop(step) if change == "rename" else new
    return kind, data


@settings(max_examples=60, deadline=None)
@given(mutated())
def test_the_gate_and_the_validator_agree(case: tuple[str, Any]) -> None:
    kind, data = case
    quick, thorough = verdicts(data, kind)
    assert quick == thorough, [error.message for error in keywords.validator(kind).iter_errors(data)]


@pytest.mark.parametrize("name", schema.NAMES)
def test_they_agree_on_every_part_of_the_schemas(name: str) -> None:
    """Each schema inside a schema, against all sorts of values."""
    whole = keywords.validator(name)
    for block in gate._blocks(schema.load(name)):
        test, slow = gate._test(block), whole.evolve(schema=block)
        assert [value for value in JUNK if test(value) != slow.is_valid(value)] == [], block


def test_the_records_of_this_repository_fit() -> None:
    assert all(gate.fits(data, kind) for kind, data in originals())


def test_junk_is_refused_by_both_somewhere() -> None:
    """The tests above compare two verdicts; both verdicts occur."""
    kind, data = originals()[0]
    assert verdicts(data, kind) == (True, True)
    assert verdicts({**data, "x": "y"}, kind) == (False, False)
    assert list(refusals({**data, "x": "y"}, kind))


@pytest.mark.parametrize("name", schema.NAMES)
def test_every_keyword_of_our_schemas_is_known(name: str) -> None:
    assert gate.unknown_keywords(name) == set()


def test_a_keyword_that_is_not_known_lets_nothing_pass(monkeypatch: pytest.MonkeyPatch) -> None:
    made_up = {"type": "object", "properties": {"a": {"minWords": 3}}}
    monkeypatch.setattr(schema, "load", lambda _: made_up)
    gate._referred.cache_clear()
    try:
        assert gate.fits({"b": "x"}, "made-up")
        assert not gate.fits({"a": "x"}, "made-up")
        assert gate.unknown_keywords("made-up") == {"minWords"}
    finally:
        gate._referred.cache_clear()
