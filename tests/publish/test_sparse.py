"""Beside a page stand its facts without what is empty, each caution once; the description in the site says so too."""

import json
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import pytest

from publishing import BESIDE, Found, published
from undertrim.publish import sparse


@pytest.fixture(scope="module")
def found() -> list[Found]:
    return list(published())


def test_beside_a_page_stands_nothing_empty_and_nothing_that_the_page_alone_wants(found: list[Found]) -> None:
    for name, where, data in found:
        if name == BESIDE:
            left = [*_empty("", {key: value for key, value in data.items() if key not in ("plans", "visit_words")})]
            assert left == [], where
            assert not any({"form", "drawn"} & opening.keys() for opening in data["openings"]), where
    whole = {where: data for name, where, data in found if name == "vehicle"}
    assert any([*_empty("", data)] for data in whole.values())


def test_the_cautions_of_a_step_are_found_by_their_places(found: list[Found]) -> None:
    for (_, _, whole), (name, where, data) in pairwise(found):
        if name == BESIDE:
            each = data.get("cautions", [])
            told = [[each[place] for place in step.get("cautions", [])] for step in data["steps"]]
            assert told == [[sparse.sparse(one) for one in step["cautions"]] for step in whole["steps"]], where
            assert len({json.dumps(one) for one in each}) == len(each), where


def test_what_is_false_or_not_known_is_said() -> None:
    fact = {
        "no": False,
        "unknown": None,
        "none": 0,
        "text": "",
        "list": [],
        "inside": {"text": "", "no": False},
        "each": [{"text": ""}, ""],
    }
    assert sparse.sparse(fact) == {"no": False, "unknown": None, "none": 0, "inside": {"no": False}, "each": [{}, ""]}


def _empty(place: str, data: Any) -> Iterator[str]:
    """Where a key has nothing."""
    if isinstance(data, dict):
        yield from (f"{place}/{key}" for key, value in data.items() if value in ("", [], {}) and value is not False)
        for key, value in data.items():
            yield from _empty(f"{place}/{key}", value)
    elif isinstance(data, list):
        for value in data:
            yield from _empty(f"{place}/*", value)
