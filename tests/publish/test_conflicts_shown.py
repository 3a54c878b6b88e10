"""A fact on which the evidence disagrees is marked wherever it is shown: many facts of every shipped vehicle, disputed at once."""

import random
from functools import cache
from html import unescape
from pathlib import Path

import pytest

from disputing import addresses, disputing, loaded
from pdf_text import texts
from undertrim.derive.evidence.conflicts import disputes
from undertrim.derive.evidence.disputed import reckoned
from undertrim.publish.encoding import Published
from undertrim.publish.facts import evidence
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.printed import pdf
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry
from undertrim.words import say
from vehicle_pages import all_pages
from wired import DAY, URL, VEHICLES, bare, stem

MOST = 300


@cache
def all_disputed(path: Path) -> Entry:
    """The record with a conflict about as many of its facts as a record may have conflicts."""
    every = list(addresses(loaded(path)))
    return disputing(path, random.Random(path.stem).sample(every, MOST))  # noqa: S311 - a draw, no secret


@cache
def lines(path: Path) -> dict[str, str]:
    """What is to be said of each dispute, by its fact."""
    record = all_disputed(path).record
    assert isinstance(record, VehicleRecord)
    whole, worked_on = reckoned(record), {step["part"] for step in made(path)["steps"]}
    return {
        dispute.conflict.about: say(evidence.line(whole, dispute))
        for dispute in disputes(whole)
        if dispute.open
        and (dispute.keys[0] != "parts" or dispute.keys[1] in worked_on)  # else by a route that is not shown
    }


@cache
def made(path: Path) -> Published:
    return facts.vehicle(all_disputed(path))


@pytest.mark.parametrize("path", VEHICLES, ids=stem)
def test_the_facts_are_disputed(path: Path) -> None:
    assert len(lines(path)) > MOST / 2


@pytest.mark.parametrize("path", VEHICLES, ids=stem)
def test_the_page_marks_every_disputed_fact(path: Path) -> None:
    page = bare(unescape(all_pages(made(path))))
    assert [about for about, said in lines(path).items() if bare(said) not in page] == []


@pytest.mark.parametrize("path", VEHICLES[:1], ids=stem)
def test_the_sheets_mark_every_disputed_fact(path: Path) -> None:
    printed = bare("".join(texts(pdf.render(made(path), {"fitting": URL, "wiring": URL}, "a4", DAY))))
    assert [about for about, said in lines(path).items() if not stands(bare(said), printed)] == []


def stands(said: str, printed: str) -> bool:
    """Whether a text is there; a page may end once in it."""
    return any(said[:cut] in printed and said[cut:] in printed for cut in range(len(said)))
