"""What is published of the shipped records, and of the examples in the rules' pages, as the files and script elements have it."""

import json
import re
from collections.abc import Iterator
from datetime import date
from functools import cache, partial
from html import unescape
from pathlib import Path
from typing import Any

from rule_pages import examples, load

from undertrim.check.register import RECORD_RULES
from undertrim.check.shelf import stock
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.publish.build import beside
from undertrim.publish.encoding import compact, said
from undertrim.publish.facts import claimable, everywhere, finding, meter
from undertrim.publish.facts import shelf as shelf_facts
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.facts.vehicle import Unplannable
from undertrim.publish.packing import unpacked
from undertrim.publish.web import book, calculators, finder, gear_pages, new_car, pages, places
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry, Workspace
from vehicle_pages import all_pages

ROOT = Path(__file__).parents[1]
DAY = date(2026, 11, 26)
Found = tuple[str, str, Any]
"""What it is, by its definition in the schema; where it was found; the data."""

_ELEMENT = re.compile(r'<script type="application/json"(?: id="(?P<id>[\w-]+)")?>(?P<text>.*?)</script>', re.DOTALL)
_ELEMENTS = {"ut-choosing": "choosing", "ut-data": "page", "ut-fit-data": "forms", "ut-meter-table": "meter-table", "ut-electrical": "calculators", "ut-asked": "asked", "ut-new-car": "new-car", None: "meter-plug"}  # fmt: skip
_PACKED = {"ut-data", "ut-fit-data"}


def published() -> Iterator[Found]:
    """Everything that the site of the shipped records publishes as data, and the facts of each vehicle that its pages are made of."""
    for entry in shipped():
        made = of(entry)
        yield from _vehicle(made)
        yield from with_stock(entry)
        yield from _elements(f"{made['id']}.html", all_pages(made))
        assert isinstance(entry.record, VehicleRecord)
        yield (
            "claimable",
            f"{entry.address}.facts.js",
            unpacked(called(claimable.script(entry.record, entry.address), "undertrimFacts")),
        )
    yield from finders()
    yield from more_to_find()
    yield "meter-table", "meter-table.js", called(meter.table_script(), "undertrimMeter.start")
    yield from shelves(shelf())
    yield from _elements("calculators", calculators.page())
    yield from _elements("new-car", new_car.page())


def shelves(held: Stock) -> Iterator[Found]:
    """The files of a shelf."""
    for name, text in shelf_facts.files(held, clearances()).items():
        first = name == "shelf/start.js"
        yield "shelf" if first else "shelf-piece", name, unpacked(called(text, "undertrimShelf", 1))


def with_stock(entry: Entry) -> Iterator[Found]:
    """What follows from a vehicle and the stock, as its files on the shelf have it."""
    assert isinstance(entry.record, VehicleRecord)
    known = Vehicle(reckoned(entry.record), entry.address, shelf(), clearances())
    for view, text in shelf_facts.of_vehicle(known).items():
        yield f"stock-{view}", f"the shelf's file of {entry.id}: {view}", unpacked(called(text, "undertrimShelf", 1))


def finders() -> Iterator[Found]:
    """What the finder of the shipped vehicles gets."""
    rows = [said(list(finding.row(entry.record, entry.address))) for entry in shipped() if isinstance(entry.record, VehicleRecord)]  # fmt: skip
    for name, text in finder.files(rows).items():
        yield "finder", name, called(text, "undertrimFinder", 1)


def more_to_find() -> Iterator[Found]:
    """What the finder gets besides vehicles, and what the pages of gear get."""
    page = "<h1 id='a'>Safety</h1><p>Airbags</p><table><tr><td>bezel</td><td>a frame</td></tr></table>"
    told = list(book.entries("glossary", book.anchored("glossary", page)))
    yield (
        "finder-more",
        "book.js",
        called(finder.more("book", book.named(told))["finder/book.js"], "undertrimFinder", 1),
    )
    gear = finder.more("gear", gear_pages.entries(shelf()))
    yield "finder-more", "gear.js", called(gear["finder/gear.js"], "undertrimFinder", 1)
    made = [(entry.record, of(entry)) for entry in shipped() if isinstance(entry.record, VehicleRecord)]
    for _, facts_of in made[:2]:
        yield "finder-more", "find.js", called(beside.found(facts_of)[1].decode(), "undertrimFinder", 1)
    by_kind: dict[str, list[places.Part]] = {}
    for record, facts_of in made:
        for kind, one in everywhere.places(record, facts_of).items():
            part = places.Part("make", "Make", facts_of["id"], partial(str.encode, compact(one)))
            by_kind.setdefault(kind, []).append(part)
    copies, listed = places.slices(by_kind)
    for name, text in listed.items():
        yield "places", name, called(text, "undertrimPlaces", 1)
    for name, copy in copies.items():
        yield "places-slice", name, called(copy.content().decode(), "undertrimPlaces", 1)


def exemplified() -> Iterator[Found]:
    """The same of each rule's first bad example, as far as they can be published."""
    for entry in _examples():
        if isinstance(entry.record, VehicleRecord):
            try:
                made = of(entry)
            except Unplannable:
                continue
            yield from _vehicle(made)
            yield "page", f"the page of {made['id']}", unpacked(json.loads(pages.page_data(made)))


BESIDE = "beside a page"
"""What the file beside a vehicle's page holds: of the definition of a vehicle what is not empty."""


def _vehicle(made: dict[str, Any]) -> Iterator[Found]:
    name, content = beside.data(made)
    yield "vehicle", f"the facts of {name}", json.loads(compact(made))
    yield BESIDE, name, json.loads(content)


def shipped() -> list[Entry]:
    """The vehicle records of this repository."""
    workspace = Workspace(ROOT)
    return [workspace.load(path) for path in workspace.files([workspace.records / "vehicles"])]


@cache
def shelf() -> Stock:
    """The gear in stock."""
    return stock(Workspace(ROOT))


def of(entry: Entry) -> dict[str, Any]:
    """The facts of a vehicle, on the same day in every run."""
    return dict(facts.vehicle(entry, DAY))


def called(text: str, name: str, place: int = 0) -> Any:
    """What a classic script gives to the function `name`, by its place among the arguments."""
    assert text.startswith(f"{name}("), text[:40]
    assert text.endswith(");\n")
    return json.loads(f"[{text[len(name) + 1 : -3]}]")[place]


def _elements(name: str, page: str) -> Iterator[Found]:
    for found in _ELEMENT.finditer(page):
        data = json.loads(unescape(found["text"]))
        yield _ELEMENTS[found["id"]], f"{name}: {found['id']}", unpacked(data) if found["id"] in _PACKED else data


def _examples() -> Iterator[Entry]:
    for rule in RECORD_RULES.values():
        yield load(*next(iter(examples(rule.__doc__ or "", "Bad")[0].files.items())))
