"""The joints and cable runs of a page in the bay: thumb-sized, readable on a narrow screen, and of the chosen car alone."""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page

PLOVER = "vehicles/wexcombe/plover-2017-2022.wiring.html"
OPEN_ALL = "document.querySelectorAll('details.ut-joint').forEach(one => { one.open = true; })"


def opened(page: Page, site: Path, name: str = PLOVER) -> Page:
    page.goto((site / name).as_uri())
    come(page)
    return page


def come(page: Page) -> None:
    """The joints come from the shelf; then all are opened."""
    page.wait_for_selector("details.ut-joint[id]", state="attached")
    page.evaluate(OPEN_ALL)


@pytest.mark.parametrize("width", [320, 360, 700, 961, 1280])
def test_nothing_drags_the_page_sideways_with_every_table_open(
    context: Callable[..., BrowserContext], site: Path, width: int
) -> None:
    page = opened(context(viewport={"width": width, "height": 800}).new_page(), site)
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert (
        page.evaluate(
            "Math.max(...[...document.querySelectorAll('details.ut-joint table, .ut-run table')]"
            ".map(one => one.scrollWidth - one.parentElement.clientWidth))"
        )
        <= 0
    )


def test_what_is_folded_away_opens_with_a_glove(phone: Page, site: Path) -> None:
    phone.goto((site / PLOVER).as_uri())
    phone.wait_for_selector("details.ut-joint[id]", state="attached")
    heights = phone.evaluate(
        "[...document.querySelectorAll('details.ut-joint > summary')].map(one => one.offsetHeight)"
    )
    assert len(heights) >= 4
    assert min(heights) >= 48


def test_a_row_becomes_a_card_that_names_its_lines(phone: Page, site: Path) -> None:
    row = opened(phone, site).locator("tr[data-row=lead-battery]").first
    names = row.evaluate("row => [...row.querySelectorAll('td')].map(one => getComputedStyle(one, '::before').content)")
    assert names == [f'"{name}: "' for name in ("Function", "Car", "Adapter", "Lead", "Do")]
    assert row.evaluate("row => getComputedStyle(row).display") == "block"
    empty = phone.locator("details.ut-joint td:empty")
    assert empty.count() > 0
    assert not any(one.is_visible() for one in empty.all()[:20])


def test_a_chosen_car_sees_its_own_tables(phone: Page, site: Path) -> None:
    opened(phone, site)
    heads = phone.locator("details.ut-joint[id] h4")
    assert set(heads.all_inner_texts()) == {"Camera fitted", "No camera"}
    phone.goto((site / PLOVER).as_uri() + "?camera=none")
    come(phone)
    assert set(heads.all_inner_texts()) == {"No camera"}


def test_a_contact_leads_to_its_row_of_the_plug(phone: Page, site: Path) -> None:
    link = opened(phone, site).locator("tr[data-row=lead-battery] a").first
    link.click()
    assert phone.evaluate("document.querySelector(':target').matches('.ut-pins tr')")
    assert phone.locator(":target th").inner_text() == "1"
