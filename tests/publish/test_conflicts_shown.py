"""A fact on which the evidence disagrees is marked wherever it is shown: every fact of every shipped vehicle, disputed in turn."""

from collections.abc import Iterator
from copy import deepcopy
from dataclasses import replace
from functools import cache
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from undertrim.check.shelf import stock
from undertrim.derive.evidence.conflicts import disputes
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.evidence.facts import fact_at
from undertrim.publish import facts, pages, pdf
from undertrim.publish.facts import evidence
from undertrim.record import fields
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry, entry
from wired import DAY, PLACE, URL, VEHICLES, bare, stem, texts

NOT_DISPUTED = ("source", "when", "note", "not_in")
"""What says something of a fact beside it, or in which cars it holds: none of it is a value that is measured."""


def addresses(data: dict[str, Any], record: VehicleRecord) -> Iterator[str]:
    """Every fact of a record by its keys."""
    for field in fields.walk(data, "vehicle"):
        keys = [str(step) for step in field.pointer]
        about = "/".join(keys)
        single = isinstance(field.value, str | list) and len(keys) > 1 and not set(keys) & set(NOT_DISPUTED)
        if single and fact_at(record, about) is not None:
            yield about


def _text(record: VehicleRecord, about: str) -> str:
    fact = fact_at(record, about)
    assert fact is not None
    return fact.text[:80]


@cache
def all_disputed(path: Path) -> Entry:
    """The record with a conflict about each of its facts."""
    found = PLACE.load(path)
    assert isinstance(found.record, VehicleRecord)
    data = deepcopy(found.source.data)
    assert isinstance(data, dict)
    every = list(addresses(data, found.record))
    first = next(iter(found.record.evidence))
    data["conflicts"] = {
        f"c{number}": {
            "about": about,
            "claims": [{"says": _text(found.record, about), "source": first}, {"says": f"otherwise {number}", "source": first}],
        }
        for number, about in enumerate(every)
    }  # fmt: skip
    return entry(path, "vehicle", replace(found.source, data=data))


@cache
def lines(path: Path) -> dict[str, str]:
    """What is to be said of each dispute, by its fact."""
    record = all_disputed(path).record
    assert isinstance(record, VehicleRecord)
    whole, worked_on = reckoned(record), {step["part"] for step in made(path)["steps"]}
    return {
        dispute.conflict.about: evidence.line(whole, dispute)
        for dispute in disputes(whole)
        if dispute.open
        and (dispute.keys[0] != "parts" or dispute.keys[1] in worked_on)  # else by a route that is not shown
    }


@cache
def made(path: Path) -> dict[str, Any]:
    return facts.vehicle(all_disputed(path), None, stock(PLACE))


@pytest.mark.parametrize("path", VEHICLES, ids=stem)
def test_every_fact_is_disputed(path: Path) -> None:
    assert len(lines(path)) > 300


@pytest.mark.parametrize("path", VEHICLES, ids=stem)
def test_the_page_marks_every_disputed_fact(path: Path) -> None:
    page = bare(unescape(pages.vehicle(made(path))))
    assert [about for about, said in lines(path).items() if bare(said) not in page] == []


@pytest.mark.parametrize("path", VEHICLES[:1], ids=stem)
def test_the_sheets_mark_every_disputed_fact(path: Path) -> None:
    printed = bare(
        "".join(texts(pdf.render(made(path), URL, "a4", DAY)) + texts(pdf.render_wiring(made(path), URL, "a4", DAY)))
    )
    assert [about for about, said in lines(path).items() if bare(said) not in printed] == []
