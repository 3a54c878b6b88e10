"""Slips that a rule must find, a place or two in each shipped record, and the table that `make bench ARGS=--mistakes` prints.

The table itself says what is not found; see `reviewing.md` for what no check can find.
"""

import itertools
from collections import Counter

import mistakes
import pytest
from mistakes import Kind, found_in, kinds, table, unstamped, vehicles
from slips.making import SLIPS, Data

from undertrim import resources
from undertrim.check import one_file
from undertrim.check.register import COLLECTION_RULES, RECORD_RULES
from undertrim.record.copying import copied
from undertrim.record.store import Workspace

PLACE = Workspace(resources.top("records").parent)

FOUND = {
    "evidence_of_long_ago": "evidence-before-the-car",
    "evidence_before_the_first_car": "evidence-before-the-car",
    "evidence_of_the_future": "evidence-after-today",
    "evidence_of_an_older_car": "evidence-of-another-car",
    "evidence_of_a_newer_car": "evidence-of-another-car",
    "instrument_left_out": "measured-without-instrument",
    "measured_for_seen": "measured-without-instrument",
    "car_of_evidence_left_out": "car-not-said",
    "record_copied_for_another_model": "evidence-twice",
    "bolt_holes_one_more": "bolts-and-screws-differ",
    "text_negated": "starts-with-do-not",
}
"""The slips whose every place is found, with the rule; a few places are tried here, many by the benchmark."""


@pytest.mark.parametrize("slip", FOUND)
def test_a_slip_is_found(slip: str, monkeypatch: pytest.MonkeyPatch) -> None:
    rule = FOUND[slip]
    monkeypatch.setattr(one_file, "RECORD_RULES", {key: value for key, value in RECORD_RULES.items() if key == rule})
    tried = 0
    for path in vehicles(PLACE):
        source = unstamped(PLACE.load(path).source)
        for spoilt in mistakes.spoilt(slip, SLIPS[slip], source, 1):
            assert rule in found_in(PLACE, path, spoilt), path.name
            tried += 1
    assert tried


def test_the_records_are_clean_before() -> None:
    assert [found_in(PLACE, path, unstamped(PLACE.load(path).source)) for path in vehicles(PLACE)] == [set()] * len(
        vehicles(PLACE)
    )


def test_every_slip_leaves_the_record_it_was_given_alone() -> None:
    data = unstamped(PLACE.load(vehicles(PLACE)[0]).source).data
    before = copied(data)
    assert isinstance(data, dict)
    for name, made in SLIPS.items():
        assert data not in [spoilt for _, spoilt in itertools.islice(made(data), 3)], name
    assert data == before


def test_there_are_many_kinds() -> None:
    assert len(kinds()) > 150
    assert set(FOUND.values()) <= {*RECORD_RULES, *COLLECTION_RULES}


def test_the_table_counts() -> None:
    text = table(
        {
            "one": Kind(4, 1, Counter({"order-cycle": 1})),
            "two": Kind(2, 0),
            "three": Kind(2, 2, Counter({"unused-part": 2, "order-cycle": 1})),
            "nowhere": Kind(),
        }
    )
    lines = [line.split() for line in text.splitlines()]
    assert lines[1:4] == [
        ["two", "2", "0", "0%"],
        ["one", "4", "1", "25%", "order-cycle", "1"],
        ["three", "2", "2", "100%", "unused-part", "2,", "order-cycle", "1"],
    ]
    assert lines[4] == ["all", "3", "kinds,", "1", "of", "them", "never", "caught", "8", "3", "38%"]


def test_a_slip_that_needs_what_a_record_lacks_is_passed_over() -> None:
    def needy(data: Data) -> mistakes.Spoilt:
        yield "x", {**data, "x": data["nowhere"]}

    source = unstamped(PLACE.load(vehicles(PLACE)[0]).source)
    assert list(mistakes.spoilt("needy", needy, source, 1)) == []
