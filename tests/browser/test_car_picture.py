"""The car from above on a vehicle's page: its marks and the list beside it are one choice, and each step shows where it is."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from in_bay import FINCH, WHERE, press, start
from playwright.sync_api import BrowserContext, Page, expect

PLOVER = "wexcombe/plover-2017-2022.html"
DROVER = "ashgrove/drover-2015-2020.html"
MARK = ".ut-car [data-pick='{}']"


@pytest.fixture
def page(context: Callable[..., BrowserContext]) -> Page:
    return context(viewport={"width": 390, "height": 844}, has_touch=True).new_page()


def test_a_touched_mark_chooses_and_the_list_says_the_same(page: Page, site: Path) -> None:
    page.goto((site / "vehicles" / PLOVER).as_uri())
    box, mark = page.locator("input[value='front-door@left']"), page.locator(MARK.format("front-door@left"))
    mark.locator("text").tap()
    expect(box).to_be_checked()
    expect(mark).to_have_class("ut-picked")
    assert "jobs=front-door%40left" in page.url.replace("@", "%40")
    box.uncheck()
    expect(mark).not_to_have_class("ut-picked")
    page.locator(".ut-car").scroll_into_view_if_needed()
    place = mark.locator(".ut-seat").bounding_box()
    assert place is not None
    page.touchscreen.tap(place["x"] + 3, place["y"] + 3)  # its place on the car does what the mark does
    expect(box).to_be_checked()


def test_a_mark_is_as_large_as_a_glove_needs_it(page: Page, site: Path) -> None:
    page.goto((site / "vehicles" / PLOVER).as_uri())
    for mark in page.locator(".ut-car a text").all():
        seen = mark.evaluate(
            "(text) => { const at = text.ownerSVGElement.getBoundingClientRect(); return at.width / text.ownerSVGElement.viewBox.baseVal.width; }"
        )
        assert 42 * seen >= 44
        assert 48 * seen >= 44


def test_what_is_worked_at_is_lit_and_nothing_else(page: Page, site: Path) -> None:
    page.goto((site / "vehicles" / PLOVER).as_uri())
    worked = page.locator(".ut-worked")
    expect(worked).to_have_css("visibility", "hidden")
    page.locator("input[value='front-tweeter@right']").check()
    expect(worked).to_have_css("visibility", "visible")
    assert {one.get_attribute("id") for one in page.locator(".ut-at").all()} == {
        "ut-at-boot",
        "ut-at-boot-right",
        "ut-at-dash",
        "ut-at-front-door-right",
    }


def test_the_picture_is_for_the_eye_and_the_list_for_everybody(page: Page, site: Path) -> None:
    page.goto((site / "vehicles" / PLOVER).as_uri())
    assert page.locator(".ut-car[aria-hidden=true]").count() == 1
    assert page.locator(".ut-car a:not([tabindex='-1'])").count() == 0
    names = {one.get_attribute("data-pick") for one in page.locator(".ut-car a").all()}
    assert names == {one.get_attribute("value") for one in page.locator("input[name=job]").all()}


def test_without_scripts_a_mark_leads_to_its_opening_alone(context: Callable[..., BrowserContext], site: Path) -> None:
    page = context(java_script_enabled=False).new_page()
    page.goto((site / "vehicles" / PLOVER).as_uri())
    page.locator(MARK.format("front-door@left")).locator("text").click()
    assert page.url.endswith("#only-front-door@left")
    assert page.locator("[id='step-remove:tailgate-lining']").is_hidden()
    assert page.locator("[id='step-remove:front-door-panel@left']").is_visible()


def test_a_step_shows_where_it_is(page: Page, site: Path) -> None:
    start(page, site, FINCH)
    seen = {}
    while "41" not in page.locator(WHERE).inner_text().split()[:1]:
        place = page.locator("dialog .ut-here")
        seen[page.locator("dialog h2").inner_text()] = place.get_attribute("aria-label") if place.count() else ""
        for use in place.locator("use").all():
            assert page.evaluate("(id) => document.querySelector(id) !== null", use.get_attribute("href"))
        press(page)
    assert seen["Take off Upper vent trim"] == "Where in the car: dash"
    assert seen["Take off Front door panel, left"] == "Where in the car: front door, left"


def test_what_moves_with_the_wheel_is_shown_where_the_car_has_it(page: Page, site: Path) -> None:
    page.goto((site / "vehicles" / DROVER).as_uri() + "?jobs=bass")
    expect(page.locator(MARK.format("bass"))).to_have_count(2)
    page.goto((site / "vehicles" / DROVER).as_uri() + "?jobs=bass&drive-side=right")
    expect(page.locator(MARK.format("bass"))).to_have_count(1)


def test_a_part_that_goes_back_has_the_panel_it_had_when_it_came_off(page: Page, site: Path) -> None:
    page.goto((site / "vehicles" / PLOVER).as_uri() + "?jobs=front-door")
    back = page.locator("[id='step-refit:front-door-panel@left'] .ut-panel use")
    assert page.locator(str(back.get_attribute("href")).replace("@", "\\@")).locator("path").count() >= 1
    assert back.evaluate("(use) => use.getBoundingClientRect().width") > 40


def test_what_hides_what_is_drawn_when_it_is_looked_at(page: Page, site: Path) -> None:
    page.goto((site / "vehicles" / PLOVER).as_uri() + "?jobs=dash,front-door@left")
    order = page.locator("#ut-order")
    expect(order.locator("svg")).to_have_count(0)
    order.locator("summary").click()
    expect(order.locator("svg.ut-order")).to_have_count(1)
    off = {one.text_content() for one in order.locator(".ut-off").all()}
    assert "Tailgate lining" in off  # of the visit it is not
    assert not {"Display opening", "Battery off", "Battery cover"} & off
    order.get_by_role("link", name="Battery cover: after").click()
    assert page.url.endswith("#step-remove:battery-cover")
    order.locator("summary").click()
    expect(order.locator("svg")).to_have_count(0)


def test_the_map_follows_the_car(page: Page, site: Path) -> None:
    page.goto((site / FINCH.partition("?")[0]).as_uri() + "?jobs=dash&radio=plain")
    page.locator("#ut-order summary").click()
    expect(page.locator("#ut-order")).to_contain_text("Radio surround")
    expect(page.locator("#ut-order")).not_to_contain_text("Brace across")


def test_with_scripts_off_the_whole_map_is_there_with_ways_to_the_steps(context: Callable[..., BrowserContext], site: Path) -> None:  # fmt: skip
    page = context(java_script_enabled=False).new_page()
    page.goto((site / "vehicles" / PLOVER).as_uri())
    page.locator("#ut-order summary").click()
    page.get_by_role("link", name="Front door panel, left: after").click()
    expect(page).to_have_url(re.compile(r"plover-2017-2022\.html.*#step-remove:front-door-panel@left"))
    expect(page.locator("[id='step-remove:front-door-panel@left']")).to_be_visible()
