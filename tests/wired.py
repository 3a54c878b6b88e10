"""The repository's vehicles: their facts, their pages, what is printed on their sheets, and what follows from them and the stock."""

import re
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

from pdf_text import texts
from undertrim.check.shelf import stock
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.publish.encoding import said
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.facts.joints import joints
from undertrim.publish.facts.with_stock import with_stock
from undertrim.publish.printed import pdf
from undertrim.publish.printed.sheet import Paper
from undertrim.publish.web import pages
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[1]
PLACE = Workspace(ROOT)
VEHICLES = PLACE.files([PLACE.records / "vehicles"])
DAY = date(2026, 11, 25)
URL = "https://undertrim.invalid/vehicles/wexcombe/plover-2017-2022.html"


@cache
def made(path: Path) -> dict[str, Any]:
    """The facts of a vehicle; not to be changed."""
    return dict(facts.vehicle(PLACE.load(path)))


@cache
def known(path: Path) -> Vehicle:
    """A vehicle with the stock, its record as it is reckoned with."""
    entry = PLACE.load(path)
    assert isinstance(entry.record, VehicleRecord)
    return Vehicle(reckoned(entry.record), entry.address, stock(PLACE), clearances())


@cache
def joined(path: Path) -> list[dict[str, Any]]:
    """Its joints with every lead set in stock, with all that is known of each; not to be changed."""
    return list(said(joints(known(path))))


@cache
def stocked(path: Path) -> dict[str, Any]:
    """What its pages fetch from the shelf; not to be changed."""
    return {key: value for one in with_stock(known(path)).values() for key, value in one.items()}


@cache
def body(path: Path, view: str = "wiring") -> str:
    """The body of one of its pages."""
    return pages.vehicle(made(path))[view]


@cache
def sheet(path: Path) -> tuple[str, ...]:
    """The text of each page of its fitting sheet."""
    return texts(pdf.render(made(path), {"fitting": URL}, "a4", DAY))


@cache
def printed(path: Path, paper: Paper = "a4") -> tuple[str, ...]:
    """The text of each page of its wiring sheet."""
    return texts(pdf.render(made(path), {"wiring": URL}, paper, DAY))


def bare(text: str) -> str:
    """A text without its spaces and with straight quotes, since lines break where they like."""
    return re.sub(r"\s", "", text).translate({0x2019: "'", 0x2018: "'"})


def stem(path: Path) -> str:
    """The name of a test."""
    return path.stem
