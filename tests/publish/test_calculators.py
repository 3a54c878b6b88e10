"""The body of the calculators' page: its tables are the data files, its fields have labels."""

import json
import re
from html.parser import HTMLParser

import pytest

from undertrim.publish.facts import electrical_tables
from undertrim.publish.web import calculators
from undertrim.resources import table, top
from undertrim.words import Language, speaking


class _Tags(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, dict(attrs)))


def tags() -> list[tuple[str, dict[str, str | None]]]:
    reader = _Tags()
    reader.feed(calculators.page())
    return reader.found


def test_the_script_gets_the_same_tables() -> None:
    held = re.search(r'id="ut-electrical">(.*?)</script>', calculators.page(), re.DOTALL)
    assert held
    assert "<" not in held[1]
    assert json.loads(held[1]) == electrical_tables.tables()
    assert electrical_tables.tables()["ampacity"] == table("electrical-ampacity")


def test_no_text_in_a_table_can_close_its_script(monkeypatch: pytest.MonkeyPatch) -> None:
    hostile = {"word": "</script><b>&amp;"}
    monkeypatch.setattr(calculators, "tables", lambda: hostile)
    with speaking(Language("hostile")):  # a page is kept for each language
        held = re.search(r'id="ut-electrical">(.*?)</script>', calculators.page(), re.DOTALL)
    assert held
    assert not set("<>&") & set(held[1])
    assert json.loads(held[1]) == hostile


def test_every_field_has_a_label() -> None:
    labelled = {about["for"] for tag, about in tags() if tag == "label"}
    fields = [about for tag, about in tags() if tag in ("input", "select")]
    assert len(fields) > 30
    assert [about for about in fields if about.get("id") not in labelled and not about.get("aria-label")] == []


def test_ids_are_there_once() -> None:
    ids = [about["id"] for _, about in tags() if "id" in about]
    assert len(ids) == len(set(ids))
    described = {about["aria-describedby"] for _, about in tags() if "aria-describedby" in about}
    assert described <= set(ids)


def test_nothing_runs_or_styles_from_within_the_page() -> None:
    """As a strict content security policy asks: no handler or style on an element, and no script but data."""
    for tag, about in tags():
        assert not [name for name in about if name.startswith("on") or name == "style"]
        assert tag != "script" or about.get("type") == "application/json"


def test_what_the_page_wants_beside_it_exists() -> None:
    for name in calculators.STYLES:
        assert (top("site_overrides") / name).is_file()


def test_tables_stand_in_the_page_without_a_script() -> None:
    text = re.sub(r"<script.*?</script>|<[^>]*>", " ", calculators.page(), flags=re.DOTALL)
    words = " ".join(text.split())
    assert "1/0 195 230 245 245 285 305 325" in words  # 33 CFR 183.425, Table 5
    assert "50 A red" in words
    assert "10 A red" in words
    assert "4 mm² 4 mm² (7894 cmil) 4.95 mohm/m" in words
