"""The wiring part of a vehicle's page: addresses that lead somewhere, words beside every colour, nothing without its name."""

import html
import json
import re
from pathlib import Path
from typing import Any

import pytest

from undertrim.publish.encoding import indented
from undertrim.publish.web import pages
from vehicle_pages import all_pages
from wired import VEHICLES, body, made, stem

each_vehicle = pytest.mark.parametrize("path", VEHICLES, ids=stem)


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
def test_links_of_buttons_lead_to_pins_and_wires_of_the_page(path: Path) -> None:
    ids = set(re.findall(r' id="([^"]+)"', body(path)))
    pins = set(re.findall(r'href="#(pin-[^"]+)"', body(path)))
    assert pins | set(re.findall(r'href="#(wire-[^"]+)"', body(path))) <= ids


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
    facts["connectors"][0] |= {"name": evil}
    facts["connectors"][0]["pins"][0] |= {"note": evil, "wire": [evil]}
    facts["duties"] = [{**facts["duties"][0], "name": evil, "kept_words": evil, "note": evil}]
    facts["runs"] = [{**facts["runs"][0], "name": evil, "from": evil, "passes": [evil], "note": evil}]
    made_page = all_pages(facts)
    assert "<script>x" not in made_page
    assert made_page.count("&lt;script&gt;x") >= 10


@each_vehicle
def test_with_scripts_off_it_says_who_tells_the_joints(path: Path) -> None:
    assert f"undertrim wiring {path.stem} LEADS" in body(path)
