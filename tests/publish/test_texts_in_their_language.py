"""Where a record is in another language than the page, its texts that stand by themselves say which (WCAG 2.2, 3.1.2 Language of Parts)."""

from collections.abc import Iterator
from functools import cache
from html.parser import HTMLParser
from typing import Any

import pytest
from answers import known, told
from marking import BESIDE, marked, texts, values

from typed import SELDOM
from undertrim.derive.fit.stock import Stock, Stocked
from undertrim.publish.facts.with_stock import with_stock
from undertrim.record.gear import GearRecord
from undertrim.record.model import VehicleRecord
from vehicle_pages import all_pages

NAMES = {"vehicle.make", "vehicle.model", "gear.maker", "gear.model"}
"""Names of makers and models are not words of a language."""
VOID = {"br", "img", "input", "meta", "link", "path", "line", "rect", "circle", "ellipse", "polygon", "polyline", "use"}


class Texts(HTMLParser):
    """Each text of a page with the language it is marked as. A drawing is read as one picture, by its title."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.above: list[str] = [""]
        self.drawn = 0
        self.found: list[tuple[str, str]] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag not in VOID:
            self.drawn += tag == "svg"
            self.above.append(dict(attrs).get("lang") or self.above[-1])

    def handle_endtag(self, tag: str) -> None:
        if tag not in VOID:
            self.drawn -= tag == "svg"
            self.above.pop()

    def handle_data(self, data: str) -> None:
        if not self.drawn:
            self.found.append((data.strip(), self.above[-1]))


@cache
def found(vehicle: str, gear: str) -> tuple[tuple[str, str], ...]:
    """The texts on the pages of vehicles in one language beside gear in another."""
    entries = marked(vehicle, gear).values()
    shelf = Stock(tuple(Stocked(item.id, item.record.gear) for item in entries if isinstance(item.record, GearRecord)))
    shown = []
    for item in entries:
        if isinstance(item.record, VehicleRecord) and (item.id in BESIDE or item.path == SELDOM):
            shown += Texts(all_pages(told(item))).found
            shown += fetched(with_stock(known(item, shelf)))
    return tuple(shown)


def fetched(data: Any) -> Iterator[tuple[str, str]]:
    """The texts that pages fetch from the shelf."""
    if isinstance(data, dict) and data.keys() == {"lang", "text"}:
        yield data["text"], data["lang"]
    elif isinstance(data, dict | list):
        for one in data.values() if isinstance(data, dict) else data:
            yield from fetched(one)
    elif isinstance(data, str):
        yield str(data), ""


@pytest.mark.parametrize(("kind", "languages"), [("vehicle", ("es", "")), ("gear", ("", "es"))])
def test_a_text_by_itself_is_marked(kind: str, languages: tuple[str, str]) -> None:
    typed = {value for name in texts() - NAMES for value in values(name, kind)}
    shown = found(*languages)
    assert typed & {text for text, lang in shown if lang == "es"}
    assert [text for text, lang in shown if text in typed and lang != "es"] == []


def test_a_text_in_the_language_of_the_page_carries_nothing() -> None:
    assert {lang for _, lang in found("en-GB", "en")} == {""}
