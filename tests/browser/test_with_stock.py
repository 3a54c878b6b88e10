"""What follows from a vehicle and gear in stock comes from the shelf: shown as the program says it, and missed without harm."""

import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from undertrim.cli import main
from wired import ROOT, VEHICLES, stem, stocked

Data = dict[str, Any]
PLOVER = "vehicles/wexcombe/plover-2017-2022"
ROWS = """() => [...document.querySelectorAll('#ut-joints details')].map((joint) => [joint.id, joint.dataset.openings, [...joint.querySelectorAll('section')].map((table) =>
  [table.dataset.cars ? JSON.parse(table.dataset.cars) : [], [...table.querySelectorAll('tbody tr')].map((row) => [row.dataset.row, row.className, ...[...row.cells].map((cell) => cell.textContent)])])])"""
CELLS = """() => [...document.querySelectorAll('#ut-joints tbody tr')].map((row) => [...row.cells].map((cell) => cell.dataset.label || 'State'))"""


def address(path: Path, view: str = "") -> str:
    return f"vehicles/{path.parent.name}/{path.stem}{view}.html"


def end(one: Data, colours: list[Data]) -> str:
    colour = "" if one["colour"] is None else " " + colours[one["colour"]]["words"]
    return f"{one['at']}{colour}{', ' if one['more'] else ''}{one['more']}"


def row(one: Data, colours: list[Data]) -> list[str]:
    """What stands in a row, cell by cell."""
    said = "".join(f"{why}. " for why in one["why"]) + one["said"]
    do = (": " if one["said"] else "") + one["do"] if one["do"] else ""
    return [
        one["id"], f"ut-row-{one['state']}", one["state_words"], one["function"], "".join(end(point, colours) for point in one["car"]),
        "".join(end(contact, colours) for contact in one["contacts"]) or one["through"], end(one["lead"], colours) if one["lead"] else "", said + do,
    ]  # fmt: skip


@pytest.mark.parametrize("path", VEHICLES, ids=stem)
def test_the_page_shows_every_row_of_every_joint_in_its_order(phone: Page, site: Path, path: Path) -> None:
    shown = stocked(path)
    phone.goto((site / address(path, ".wiring")).as_uri())
    phone.wait_for_selector("#ut-joints details", state="attached")
    wanted = [
        [f"joint-{joint['opening']}-{joint['leads']}", joint["opening"], [[table["cars"], [row(one, shown["colours"]) for one in table["rows"]]] for table in joint["tables"]]]
        for joint in shown["joints"]
    ]  # fmt: skip
    plain = [[name, openings, [[cars, [[" ".join(cell.replace(" ()", "").split()) for cell in one] for one in rows]] for cars, rows in tables]] for name, openings, tables in phone.evaluate(ROWS)]  # fmt: skip
    assert plain == [[name, openings, [[cars, [[" ".join(cell.split()) for cell in one] for one in rows]] for cars, rows in tables]] for name, openings, tables in wanted]  # fmt: skip
    assert all(cells == ["State", "Function", "Car", "Adapter", "Lead", "Do"] for cells in phone.evaluate(CELLS))


def test_links_lead_to_pins_and_pictures_of_the_page(phone: Page, site: Path) -> None:
    phone.goto((site / f"{PLOVER}.wiring.html").as_uri())
    phone.wait_for_selector("#ut-joints details", state="attached")
    lost = "[...document.querySelectorAll('#ut-joints [href^=\"#\"]')].map((one) => one.getAttribute('href')).filter((to) => !document.getElementById(to.slice(1)))"
    assert phone.evaluate("document.querySelectorAll('#ut-joints use').length") > 20
    assert phone.evaluate(lost) == []
    assert phone.evaluate("[...document.querySelectorAll('[id]')].length === new Set([...document.querySelectorAll('[id]')].map((one) => one.id)).size")  # fmt: skip


def test_an_address_leads_to_a_joint(phone: Page, site: Path) -> None:
    joint = stocked(next(path for path in VEHICLES if path.stem in PLOVER))["joints"][-1]
    phone.goto((site / f"{PLOVER}.wiring.html").as_uri() + f"#joint-{joint['opening']}-{joint['leads']}")
    expect(phone.locator(f"#joint-{joint['opening']}-{joint['leads']}")).to_be_in_viewport()


def test_blockers_and_kits_of_a_visit_are_those_of_its_plan(
    phone: Page, site: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    phone.goto((site / f"{PLOVER}.html").as_uri() + "?jobs=dash")
    phone.wait_for_selector(".ut-kit", state="attached")
    assert main(["plan", "plover-2017-2022?jobs=dash", "--in", str(ROOT)]) == 0
    plan = "".join(capsys.readouterr().out.split())
    for blocker in phone.locator("#ut-blockers > li").all():
        title, text = blocker.locator("b").text_content() or "", (blocker.locator("div").text_content() or "")
        assert "".join(title.split()) in plan
        assert "unless" not in text
    for line in phone.locator(".ut-kit li").all():
        assert "".join((line.text_content() or "").split()) in plan


def test_speakers_alone_ask_for_nothing(phone: Page, site: Path) -> None:
    asked: list[str] = []
    phone.on("request", lambda request: asked.append(request.url))
    phone.goto((site / f"{PLOVER}.html").as_uri() + "?jobs=front-door")
    expect(phone.locator("#ut-steps > li").first).to_be_attached()
    assert not [url for url in asked if "/shelf/" in url]


@pytest.fixture
def without(site: Path, tmp_path: Path) -> Path:
    """The site, from which a vehicle's file on the shelf is gone."""
    shutil.copytree(site, tmp_path / "site")
    for file in (tmp_path / "site/shelf/wexcombe").glob("plover*"):
        file.unlink()
    return tmp_path / "site"


def test_a_file_that_does_not_come_is_said_and_nothing_is_wrong(phone: Page, without: Path) -> None:
    phone.goto((without / f"{PLOVER}.html").as_uri() + "?jobs=dash")
    said = phone.locator("#ut-stock-said")
    expect(said).to_contain_text("could not be fetched")
    expect(said).to_contain_text('undertrim plan "plover-2017-2022?jobs=dash"')
    expect(phone.locator("#ut-blockers")).to_contain_text("unless an interface keeps it")
    assert phone.locator("#ut-start").text_content()
    phone.goto((without / f"{PLOVER}.wiring.html").as_uri())
    expect(said).to_contain_text('undertrim wiring "plover-2017-2022?jobs=dash"')


def test_with_scripts_off_pages_are_whole_and_say_who_tells_the_rest(
    context: Callable[..., BrowserContext], site: Path
) -> None:
    page = context(java_script_enabled=False).new_page()
    page.goto((site / f"{PLOVER}.html").as_uri())
    expect(page.locator(".ut-noscript").first).to_contain_text("undertrim plan plover-2017-2022")
    expect(page.locator("#ut-blockers")).to_contain_text("unless an interface keeps it")
    page.goto((site / f"{PLOVER}.wiring.html").as_uri())
    expect(page.locator("#ut-stock-said")).to_contain_text("undertrim wiring plover-2017-2022 LEADS")
    assert page.locator(".ut-pins tbody tr").count() > 10
