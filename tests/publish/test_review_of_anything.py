"""A review of two records that have nothing in common goes through, in every form: variants, openings and plugs that are gone are no trouble."""

import json
from itertools import pairwise
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from undertrim.check.shelf import stock
from undertrim.derive.review.change import Side
from undertrim.derive.review.outcome import Review
from undertrim.derive.review.vehicle import vehicle
from undertrim.publish.encoding import said
from undertrim.publish.facts.review import review
from undertrim.publish.terminal.review import MOST, review_markdown, review_text
from undertrim.publish.web.review_page import page
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

ROOT = Path(__file__).parent.parent.parent
WORKSPACE = Workspace(ROOT)
PATHS = WORKSPACE.files([ROOT / "records" / "vehicles"])
SCHEMA = Draft202012Validator(json.loads((ROOT / "schema" / "review.schema.json").read_text(encoding="utf-8")))
STOCK = stock(WORKSPACE)


def side(path: Path) -> Side:
    entry = WORKSPACE.load(path)
    assert isinstance(entry.record, VehicleRecord)
    return Side(entry.record, entry.address, entry.source.data)


@pytest.mark.parametrize(("before", "after"), list(pairwise([*PATHS, PATHS[0]])), ids=lambda path: path.stem)
def test_any_two_records_can_be_compared(before: Path, after: Path) -> None:
    found = Review("x", (vehicle(side(before), side(after), (STOCK, STOCK)),), (), ())
    shown = said(review(found))
    SCHEMA.validate(shown)
    assert len(review_markdown(shown)) <= MOST
    assert shown["vehicles"][0]["was"] in review_text(shown)
    assert "</html>" in page(found, shown)


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_a_record_and_itself_differ_in_nothing(path: Path) -> None:
    assert vehicle(side(path), side(path), (STOCK, STOCK)).empty
