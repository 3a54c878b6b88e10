"""The joint of a vehicle with every lead set is the same on the page, on the wiring sheet and on the command line."""

import json
import re
from datetime import date
from functools import cache
from io import BytesIO
from itertools import groupby
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from undertrim.cli import main
from undertrim.derive.fit.stock import stock
from undertrim.publish import facts, pages, pdf
from undertrim.publish.sheet import wiring
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[2]
PLACE = Workspace(ROOT)
VEHICLES = PLACE.files([PLACE.records / "vehicles"])
DAY = date(2026, 11, 25)
URL = "https://undertrim.example/x.html"


@cache
def made(path: Path) -> dict[str, Any]:
    return facts.vehicle(PLACE.load(path), None, stock(PLACE))


def rows(tables: list[dict[str, Any]]) -> list[tuple[str, str, str]]:
    return [(row["id"], row["state"], row["do"]) for table in tables for row in table["rows"]]


@cache
def printed(path: Path) -> str:
    reader = PdfReader(BytesIO(pdf.render_wiring(made(path), URL, "a4", DAY)))
    return " ".join(" ".join(page.extract_text() for page in reader.pages).replace("\u200b", "").split())


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_the_command_line_makes_the_joints_of_the_page(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    joints = made(path)["joints"]
    assert len({joint["leads"] for joint in joints}) >= 2
    for joint in joints:
        assert main(["wiring", path.stem, joint["leads"], "--in", str(ROOT), "--format", "json"]) == 0
        assert rows(json.loads(capsys.readouterr().out)["tables"]) == rows(joint["tables"])


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_the_page_shows_every_row_in_its_order(path: Path) -> None:
    body = pages.vehicle(made(path))
    shown = re.findall(r'<tr class="ut-row-([a-z-]+)">', body)
    assert shown == [state for joint in made(path)["joints"] for _, state, _ in rows(joint["tables"])]


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_the_sheet_prints_every_row_in_its_order(path: Path) -> None:
    """Each state once, and under it the functions that are in it."""
    text, at = printed(path), 0
    for joint in made(path)["joints"]:
        at = text.index(f"Joint with {joint['name']}", at)
        for table in joint["tables"]:
            for words, group in groupby(table["rows"], key=lambda row: row["state_words"]):
                at = text.index(words, at) + 1
                for row in group:
                    at = text.index(row["function_words"], at) + 1


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_every_pin_is_on_the_sheet_and_has_its_address_on_the_page(path: Path) -> None:
    body, text = pages.vehicle(made(path)), printed(path)
    for plug in made(path)["connectors"]:
        assert plug["name"] in text
        for pin in plug["pins"]:
            assert f'id="pin-{plug["id"]}-{pin["id"]}"' in body
            assert pin["function_words"] in text
    for run in made(path)["runs"]:
        assert run["name"] in text


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_the_sheet_has_a_glyph_for_everything(path: Path) -> None:
    assert "[U+" not in json.dumps(wiring.view(made(path), URL, "a4", DAY), ensure_ascii=False)


def test_links_of_a_joint_lead_to_pins_of_the_page() -> None:
    for path in VEHICLES:
        body = pages.vehicle(made(path))
        ids = set(re.findall(r' id="([^"]+)"', body))
        assert set(re.findall(r'href="#(pin-[^"]+)"', body)) <= ids
        assert set(re.findall(r'href="#(wire-[^"]+)"', body)) <= ids


def test_the_cable_for_an_amplifier_follows_from_the_run() -> None:
    """60 A over 5 m out and 5 m back at 3 % of 13.8 V: 60 x 10 / 0.414 V is at most 0.69 ohm/km; 2 AWG has 0.5127, 4 AWG 0.8152 (ASTM B258)."""
    finch = next(path for path in VEHICLES if path.stem == "finch-2014-2018")
    run = made(finch)["runs"][0]
    assert run["length"].startswith("5.4 m")
    cables = {cable["current"]: cable for cable in run["cables"]}
    assert cables["60 A"]["awg"] == "2 AWG"
    assert "voltage lost" in cables["60 A"]["why"]
