"""A visit in the bay lasts: over reloads, in a second tab, beside others, on another device, and in a report."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from in_bay import BACK, FINCH, at, press, start, to_the_desk
from playwright.sync_api import BrowserContext, Page, expect


def test_notes_readings_and_ticks_survive_and_a_second_tab_sees_them(
    context: Callable[..., BrowserContext], site: Path
) -> None:
    made = context(viewport={"width": 390, "height": 844})
    one, other = made.new_page(), made.new_page()
    start(one, site)
    other.goto(at(site, FINCH))
    one.locator("dialog summary", has_text="Note").click()
    one.get_by_label("Note").fill("key in the tray")
    press(one)
    expect(other.locator("[data-tick]:checked")).to_have_count(1)
    assert other.locator("#ut-start").inner_text() == "Go on: step 2 of 76"
    other.locator("[data-tick='prepare:lever-back']").check()
    one.reload()
    assert one.locator("[data-tick]:checked").count() == 2
    one.locator("#ut-start").click()
    one.locator(BACK).click()
    assert one.get_by_label("Note").input_value() == "key in the tray"


def test_several_visits_at_once_each_under_its_name(phone: Page, site: Path) -> None:
    start(phone, site)
    press(phone)
    to_the_desk(phone, "red one, bay 2")
    phone.get_by_role("button", name="Next car").click()
    assert phone.locator("[data-tick]:checked").count() == 0
    phone.locator("[data-tick='prepare:lever-back']").check()
    phone.locator("[data-tick='prepare:battery']").check()
    phone.goto((site / "index.html").as_uri())
    lines = phone.locator(".ut-kept li")
    assert lines.count() == 2
    assert "2 of 76 steps" in lines.nth(0).inner_text()
    assert "red one, bay 2" in lines.nth(1).inner_text()
    lines.nth(1).get_by_role("link").click()
    expect(phone.locator("[data-tick]:checked")).to_have_count(1)
    phone.locator("#ut-desk > summary").click()
    assert phone.get_by_label("What you call it").input_value() == "red one, bay 2"
    phone.goto((site / "index.html").as_uri())
    phone.get_by_role("button", name="Forget").first.click()
    assert lines.count() == 1
    phone.get_by_role("button", name="Bring it back").click()
    assert lines.count() == 2


@pytest.mark.parametrize("way", ["address", "file"])
def test_a_visit_is_handed_over(context: Callable[..., BrowserContext], site: Path, tmp_path: Path, way: str) -> None:
    page = context(viewport={"width": 390, "height": 844}).new_page()
    start(page, site)
    press(page)
    press(page)
    to_the_desk(page, "red one")
    page.get_by_role("button", name="Hand it over").click()
    other = context(viewport={"width": 390, "height": 844}).new_page()
    if way == "address":
        address = page.get_by_label("Address of this visit").input_value()
        assert len(address) < 2000
        other.goto(address)
    else:
        with page.expect_download() as saved:
            page.get_by_role("button", name="Save it as a file").click()
        assert saved.value.suggested_filename == "finch-2014-2018-red-one.json"
        saved.value.save_as(tmp_path / "visit.json")
        other.goto((site / "index.html").as_uri())
        other.get_by_text("Take up a visit from a file").click()
        other.get_by_label("File of a visit").set_input_files(tmp_path / "visit.json")
        other.locator(".ut-kept a").click()
    expect(other.locator("[data-tick]:checked")).to_have_count(2)
    assert other.locator("#ut-start").inner_text() == "Go on: step 3 of 76"
    other.locator("#ut-desk > summary").click()
    assert other.get_by_label("What you call it").input_value() == "red one"
    assert "take=" not in other.url


@pytest.mark.parametrize("text", ["", "no visit", json.dumps({"id": 3}), json.dumps({"vehicle": "<img src=x>"})])
def test_a_file_without_a_visit_says_so(phone: Page, site: Path, tmp_path: Path, text: str) -> None:
    (tmp_path / "odd.json").write_text(text, "utf-8")
    phone.goto((site / "index.html").as_uri())
    phone.get_by_text("Take up a visit from a file").click()
    phone.get_by_label("File of a visit").set_input_files(tmp_path / "odd.json")
    phone.get_by_text("There is no visit in it that can be read.").wait_for()


def reported(phone: Page, site: Path) -> str:
    """What the report says of a visit up to the first test, with a reading that looks like markup."""
    start(phone, site)
    while phone.locator("dialog h2").inner_text() != "Test the receiver: Radio opening":
        press(phone)
    phone.get_by_label("What the test showed").fill("<b>all</b> five bands")
    press(phone)
    to_the_desk(phone)
    phone.get_by_role("button", name="Job report").click()
    phone.get_by_label("Done by").fill("rk")
    phone.get_by_label("Position antenna: agreed by").fill("the owner")
    phone.get_by_label("Position antenna: agreed by").blur()
    return phone.locator(".ut-report-page").inner_text()


def lines(text: str) -> list[str]:
    return [line.strip() for line in text.splitlines() if line.strip()]


def test_the_report_says_what_was_done_and_what_was_not(phone: Page, site: Path) -> None:
    said = lines(reported(phone, site))
    assert "rk" in said
    assert "Position antenna: agreed by the owner" in said
    assert "Test the receiver: Radio opening: <b>all</b> five bands" in said
    done = said.index("What was done")
    assert said.index("Not done") < said.index("Refit Upper vent trim") < done
    assert any(line.startswith("Take off Factory radio") for line in said[done:])


def test_the_report_is_saved_as_it_stands(phone: Page, site: Path, tmp_path: Path) -> None:
    said = reported(phone, site)
    with phone.expect_download() as saved:
        phone.get_by_role("button", name="Save the report").click()
    assert saved.value.suggested_filename == "finch-2014-2018-report.html"
    saved.value.save_as(tmp_path / "report.html")
    phone.goto((tmp_path / "report.html").as_uri())
    assert phone.title() == "Job report"
    assert lines(phone.locator("body").inner_text()) == lines(said)
    assert phone.locator("b").count() == 0


def test_print_of_an_open_report_is_the_report(phone: Page, site: Path) -> None:
    start(phone, site)
    press(phone)
    to_the_desk(phone)
    phone.get_by_role("button", name="Job report").click()
    phone.emulate_media(media="print")
    assert phone.locator(".ut-report-page").is_visible()
    for hidden in ("#ut-steps", ".ut-report-typed", "h1"):
        assert not phone.locator(hidden).is_visible()
