"""The wiring part of a vehicle's page: addresses that lead somewhere, words beside every colour, nothing without its name."""

import html
import json
import re
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

from undertrim.publish.encoding import indented
from undertrim.publish.web import pages
from vehicle_pages import all_pages
from wired import VEHICLES, body, made, stem

each_vehicle = pytest.mark.parametrize("path", VEHICLES, ids=stem)


class _Cells(HTMLParser):
    """The cells of the joint tables: label, text, and the names of the wires drawn in them."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.found: list[tuple[str, str, list[str]]] = []
        self._in = False
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        named = dict(attrs)
        if tag == "tr":
            self._in = "data-row" in named
        if tag in ("td", "th") and self._in:
            self.found.append((named.get("data-label") or "State", "", []))
        if tag == "svg" and self._in:
            self.found[-1][2].append(named.get("aria-label") or "")

    def handle_endtag(self, tag: str) -> None:
        self._in = self._in and tag != "tr"

    def handle_data(self, data: str) -> None:
        if self._in and self.found:
            label, text, wires = self.found[-1]
            self.found[-1] = (label, text + data, wires)


@each_vehicle
def test_every_pin_has_its_address(path: Path) -> None:
    ids = re.findall(r' id="([^"]+)"', body(path))
    for plug in made(path)["connectors"]:
        assert {f"pin-{plug['id']}-{pin['id']}" for pin in plug["pins"]} <= set(ids)


@each_vehicle
def test_no_page_has_an_id_twice(path: Path) -> None:
    for name, page in pages.vehicle(made(path)).items():
        ids = re.findall(r' id="([^"]+)"', page)
        assert len(ids) == len(set(ids)), name


@each_vehicle
def test_links_of_joints_and_buttons_lead_to_pins_and_wires_of_the_page(path: Path) -> None:
    ids = set(re.findall(r' id="([^"]+)"', body(path)))
    pins = set(re.findall(r'href="#(pin-[^"]+)"', body(path)))
    assert pins
    assert pins | set(re.findall(r'href="#(wire-[^"]+)"', body(path))) <= ids


@each_vehicle
def test_a_colour_always_stands_in_words_beside_its_picture(path: Path) -> None:
    drawn = [(text, wires) for _, text, wires in _Cells(body(path)).found if wires]
    assert drawn
    assert all(name and name in text for text, wires in drawn for name in wires)


@each_vehicle
def test_every_cell_that_becomes_a_line_of_a_card_has_its_name(path: Path) -> None:
    labels = [label for label, _, _ in _Cells(body(path)).found]
    assert labels
    assert labels == ["State", "Function", "Car", "Adapter", "Lead", "Do"] * (len(labels) // 6)


@each_vehicle
def test_a_cell_with_nothing_in_it_is_empty_so_that_no_card_shows_its_name(path: Path) -> None:
    assert all(text == "" or text.strip() for _, text, _ in _Cells(body(path)).found)


@each_vehicle
def test_each_lead_set_is_folded_away_under_its_name_and_its_opening(path: Path) -> None:
    for joint in made(path)["joints"]:
        head = f'<details class="ut-joint" id="joint-{joint["opening"]}-{joint["leads"]}" data-openings="{joint["opening"]}">'
        assert body(path).count(head) == 1
        assert f"<summary><b>{joint['name']}</b>" in body(path).split(head)[1][:200]


@each_vehicle
def test_tables_of_some_cars_are_marked_for_the_filter(path: Path) -> None:
    marked = [json.loads(html.unescape(text)) for text in re.findall(r' data-cars="([^"]+)"><?', body(path))]
    tables = [table for joint in made(path)["joints"] for table in joint["tables"] if table["cars"]]
    wanted = [table["cars"] for table in tables]
    at = [number for number, cars in enumerate(marked) if cars in wanted]
    assert [marked[number] for number in at][-len(wanted) :] == wanted or not wanted
    assert all(f"<h4>{html.escape(table['cars_words'])}</h4>" in body(path) for table in tables)


@each_vehicle
def test_runs_have_their_cables_and_lead_to_the_calculators(path: Path) -> None:
    for run in made(path)["runs"]:
        section = body(path).split(f'id="run-{run["id"]}"')[1].split("</section>")[0]
        assert 'href="../../calculators.html#cable"' in section
        assert html.escape(run["assumed"]) in section
        assert section.count('data-label="AWG"') == len(run["cables"])


def test_what_comes_from_a_record_is_escaped() -> None:
    facts: dict[str, Any] = json.loads(indented(made(VEHICLES[0])))
    evil = "<script>x</script>"
    joint = facts["joints"][0]
    joint |= {"name": evil, "note": evil, "receivers": [evil]}
    table = joint["tables"][0]
    table |= {"cars_words": evil, "notes": [evil], "harness": {"name": evil, "id": evil}}
    table["rows"] = [
        {**table["rows"][0], "words": [evil], "notes": [evil], "do": evil, "through": evil, "contacts": []}
    ]
    facts["runs"] = [{**facts["runs"][0], "name": evil, "from": evil, "passes": [evil], "note": evil}]
    made_page = all_pages(facts)
    assert "<script>x" not in made_page
    assert made_page.count("&lt;script&gt;x") >= 12


def test_an_unknown_colour_and_voltage_are_said() -> None:
    facts: dict[str, Any] = json.loads(indented(made(VEHICLES[0])))
    table = facts["joints"][0]["tables"][0]
    row = next(row for row in table["rows"] if row["car"] and row["car"][0]["address"])
    row["car"][0] |= {"colour": None, "supply": "voltage unknown"}
    table["rows"] = [row]
    cells = _Cells(
        all_pages(facts).split('data-row="')[0] + '<tr data-row="x">' + all_pages(facts).split('data-row="')[1]
    ).found
    assert next(text for label, text, _ in cells if label == "Car").endswith("colour not recorded, voltage unknown")
