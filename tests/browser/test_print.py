"""The printed page: light, with job and car on top, and closed what was closed."""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page

from pdf_text import texts

FINCH = "vehicles/kelbrook/finch-2014-2018.html"
PLOVER = "vehicles/wexcombe/plover-2017-2022.html"
WIRING = "vehicles/kelbrook/finch-2014-2018.wiring.html"


def printed(page: Page) -> str:
    """The text of the printed page, made as the browser's print makes it."""
    return "\n".join(texts(page.pdf(format="A4", print_background=True)))


@pytest.mark.parametrize(
    "name", [f"{FINCH}?jobs=dash", WIRING, "index.html", "safety.html", "reference/index.html", "calculators.html"]
)
def test_paper_is_light_whatever_the_screen_is(context: Callable[..., BrowserContext], site: Path, name: str) -> None:
    page = context(color_scheme="dark").new_page()
    page.goto(f"{site.as_uri()}/{name}")
    page.emulate_media(media="print", color_scheme="dark")
    looks = page.evaluate(
        """() => [document.body, ...document.querySelectorAll("article :is(p, li, td, th, h1, h2, h3, pre, code)")].map(item => {
          const [r, g, b] = getComputedStyle(item).color.match(/[\\d.]+/g).map(Number);
          return [r + g + b, item.tagName, item.textContent.trim().slice(0, 30), item.closest(".ut-danger, .ut-notice, .ut-mark, .danger") !== null];
        })"""
    )
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    assert [look for look in looks if look[0] > 450 and not look[3]] == []


def test_what_is_closed_stays_closed(phone: Page, site: Path) -> None:
    phone.goto((site / WIRING).as_uri())
    inside = "Most bands are common practice"
    assert inside not in printed(phone)
    phone.locator("summary", has_text="What a meter should show").first.click()
    phone.get_by_text(inside).first.wait_for()  # what opens comes with the next frame
    assert inside in printed(phone)
    assert phone.locator("details[open]").count() == 1


def test_job_and_car_stand_on_top(phone: Page, site: Path) -> None:
    phone.goto((site / FINCH).as_uri() + "?jobs=dash&radio=map")
    first = " ".join(printed(phone).split("Before the first screw")[0].split())
    assert "Job: Radio opening Car: Map radio" in first
    phone.get_by_role("button", name="Show everything").click()
    assert "Job: all of them Car: every kind" in " ".join(printed(phone).split())


@pytest.mark.parametrize("name", [FINCH, PLOVER, f"es/{PLOVER}"])
def test_a_visit_of_radio_and_front_doors_is_ten_pages_at_most(phone: Page, site: Path, name: str) -> None:
    phone.goto(f"{site.as_uri()}/{name}?jobs=dash,front-door")
    made = texts(phone.pdf(format="A4", print_background=True))
    assert len(made) <= 10
    assert made[-1].strip()  # no sheet of nothing at its end
    assert "Rear door speakers" not in " ".join(made)
    assert phone.locator("h1").inner_text().split()[0] in made[0]
