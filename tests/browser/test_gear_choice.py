"""Gear of a visit is chosen on its page: the stock comes when somebody asks for it, ranked and found by typing, and what is chosen stands in the address."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from browsing import ROOT
from playwright.sync_api import BrowserContext, Page
from test_looks import CONTRAST

from undertrim.check.shelf import stock
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.visit.text import parse
from undertrim.derive.visit.understanding import visit
from undertrim.publish.facts.fit import verdict_words
from undertrim.publish.facts.visit import of
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import message, say

FINCH = "vehicles/kelbrook/finch-2014-2018.html"
DASH = ".ut-gear-place[data-opening=dash]"


def finch() -> Vehicle:
    entry = Workspace(ROOT).load(ROOT / "records/vehicles/kelbrook/finch-2014-2018.yaml")
    assert isinstance(entry.record, VehicleRecord)
    return Vehicle(entry.record, entry.address, stock(Workspace(ROOT)), clearances())


def opened(page: Page, site: Path, visit: str = "jobs=dash") -> None:
    page.goto(f"{(site / FINCH).as_uri()}?{visit}")
    page.locator(f"{DASH} .ut-gear-toggle").click()
    page.locator(f"{DASH} .ut-gear-pick").first.wait_for()


def test_nothing_of_the_stock_is_fetched_before_somebody_asks(phone: Page, site: Path) -> None:
    asked: list[str] = []
    phone.on("request", lambda request: asked.append(request.url))
    phone.goto(f"{(site / FINCH).as_uri()}?jobs=dash,front-door&radio=map")
    assert [one.inner_text().split("\n")[-1] for one in phone.locator(".ut-gear-toggle").all()] == [
        "not chosen yet"
    ] * 2
    assert not any("shelf/start" in url or url.endswith("/gear-fit.js") for url in asked)
    phone.locator(f"{DASH} .ut-gear-toggle").tap()
    phone.locator(f"{DASH} .ut-gear-pick").first.wait_for()
    assert [url.rpartition("/site/")[2] for url in asked if "shelf/start" in url or url.endswith("/gear-fit.js")] == ["shelf/start.js", "assets/undertrim/gear-fit.js"]  # fmt: skip


def test_the_stock_is_ranked_and_worded_as_the_program_does_it(phone: Page, site: Path) -> None:
    known = finch()
    (found,) = answer(known, known.record.openings["dash"], None, {"radio": "map", "drive_side": "left"})
    opened(phone, site, "jobs=dash&radio=map")
    shown = phone.locator(f"{DASH} .ut-gear-pick").all()
    assert [one.get_attribute("data-gear") for one in shown] == [fit.gear for fit in found.fits][: len(shown)]
    assert len(shown) > 8
    for one, fit in zip(shown, found.fits, strict=False):
        assert say(verdict_words(fit)) in one.inner_text()
        assert say(fit.reason) in one.inner_text()


def test_typing_finds_by_name_and_by_verdict(phone: Page, site: Path) -> None:
    opened(phone, site)
    phone.locator(f"{DASH} input").fill("broad")
    assert [one.get_attribute("data-gear") for one in phone.locator(f"{DASH} .ut-gear-pick").all()] == [
        "skerrowe-broadside"
    ]
    assert "1 of " in phone.locator(f"{DASH} [role=status]").inner_text()
    phone.locator(f"{DASH} input").fill("does not fit")
    words = phone.locator(f"{DASH} .ut-gear-pick .ut-word").all_inner_texts()
    assert {word.split(" ", 1)[1] for word in words} == {"does not fit"}
    phone.locator(f"{DASH} input").fill("zzz")
    assert phone.get_by_text("Nothing in stock is called so.").is_visible()


def test_a_choice_stands_in_the_address_with_its_verdict_and_can_be_left_open_again(phone: Page, site: Path) -> None:
    opened(phone, site, "jobs=dash&radio=map")
    phone.locator(f"{DASH} [data-gear=skerrowe-broadside]").tap()
    assert phone.url.endswith("?jobs=dash&radio=map&dash=skerrowe-broadside")
    assert phone.locator(f"{DASH} .ut-gear-list").count() == 0
    said = phone.locator(f"{DASH} .ut-gear-said").inner_text()
    assert "fits with parts" in said
    assert "to spare" in said
    assert (
        'undertrim sheet "finch-2014-2018?jobs=dash&radio=map&dash=skerrowe-broadside"'
        in phone.locator("#ut-gear").inner_text()
    )
    assert phone.evaluate("document.activeElement.className") == "ut-gear-toggle"
    phone.reload()
    phone.locator(f"{DASH} .ut-gear-said.ut-verdict").wait_for()
    assert "Skerrowe Broadside" in phone.locator(f"{DASH} .ut-gear-toggle").inner_text()
    phone.locator(f"{DASH} .ut-gear-toggle").tap()
    phone.get_by_role("button", name="Leave it open").tap()
    assert phone.url.endswith("?jobs=dash&radio=map")


def test_the_verdict_follows_the_other_gear_of_the_visit(phone: Page, site: Path) -> None:
    """A receiver of the visit drives the speakers, in place of the factory radio."""
    known, door = finch(), finch().record.openings["front-door"]
    radio = next(item for item in known.stock.items if item.id == "skerrowe-broadside")
    car = {"radio": "map", "drive_side": "left", "sound": "plain"}
    alone, driven = (
        {fit.gear: fit for fit in answer(made, door, None, car)[0].fits}
        for made in (known, replace(known, visit={"dash": radio}))
    )
    piece = next(gear for gear in alone if say(alone[gear].reason) != say(driven[gear].reason))
    for words, fit in (
        ("jobs=front-door", alone[piece]),
        ("jobs=dash,front-door&dash=skerrowe-broadside", driven[piece]),
    ):
        phone.goto(f"{(site / FINCH).as_uri()}?{words}&radio=map&front-door={piece}")
        said = phone.locator(".ut-gear-place[data-opening=front-door] .ut-gear-said.ut-verdict")
        said.wait_for()
        assert say(verdict_words(fit)) in said.inner_text()
        assert say(fit.reason) in said.inner_text()


def test_the_time_that_gear_takes_stands_beside_that_of_the_steps(phone: Page, site: Path) -> None:
    text = "finch-2014-2018?jobs=dash,front-door&radio=map&dash=skerrowe-broadside&front-door=tidewrack-haven-65"
    plan = of(visit(finch(), parse(text)))
    phone.goto(f"{(site / FINCH).as_uri()}?{text.partition('?')[2]}")
    phone.locator("#ut-fitting p").first.wait_for()
    (told,) = plan["fitting"]
    assert phone.locator("#ut-fitting").inner_text() == say(message("plan/fitting", time=told["words"]))
    phone.goto(f"{(site / FINCH).as_uri()}?jobs=dash")
    assert not phone.locator("#ut-fitting").is_visible()


@pytest.mark.parametrize("view", ["", ".openings", ".wiring", ".record"])
def test_every_page_names_the_gear_of_the_visit(phone: Page, site: Path, view: str) -> None:
    page = (site / FINCH).with_suffix(f"{view}.html").as_uri()
    phone.goto(f"{page}?jobs=dash,front-door&dash=skerrowe-broadside&dash.harness=none&front-door=no-such")
    phone.locator("#ut-visit-job", has_text="Skerrowe Broadside").wait_for(state="attached")
    heading = phone.locator("#ut-visit-job").text_content() or ""  # that of the page of the visit is for its print
    assert "with Skerrowe Broadside;" in heading
    assert "with no-such" in heading


def test_gear_that_is_not_there_is_said(phone: Page, site: Path) -> None:
    phone.goto(f"{(site / FINCH).as_uri()}?jobs=dash,front-door&dash=no-such&front-door=skerrowe-broadside")
    phone.get_by_text("no-such is not in stock: choose another, or leave it open").wait_for()
    assert phone.get_by_text("Skerrowe Broadside does not go in here: choose another, or leave it open").is_visible()


def test_stock_that_does_not_come_is_said_and_can_be_asked_for_again(phone: Page, site: Path) -> None:
    phone.route("**/shelf/start.js", lambda route: route.abort())
    phone.goto(f"{(site / FINCH).as_uri()}?jobs=dash")
    phone.locator(f"{DASH} .ut-gear-toggle").tap()
    phone.get_by_text("The stock could not be fetched.").first.wait_for()
    phone.unroute("**/shelf/start.js")
    phone.locator(f"{DASH} .ut-gear-toggle").tap()
    phone.locator(f"{DASH} .ut-gear-toggle").tap()
    phone.locator(f"{DASH} .ut-gear-pick").first.wait_for()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_choice_at_360_pixels(context: Callable[..., BrowserContext], site: Path, scheme: str) -> None:
    """Nothing drags the page sideways, what is pressed is 48 pixels high, and all of it is read at 4.5 to 1 (WCAG 2.2, 1.4.3)."""
    page = context(viewport={"width": 360, "height": 740}, color_scheme=scheme).new_page()
    opened(page, site, "jobs=dash,front-door&front-door=tidewrack-haven-65")
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    assert (
        min(box["height"] for item in page.locator("#ut-gear :is(button, input)").all() if (box := item.bounding_box()))
        >= 48
    )
    worst, where = page.evaluate(CONTRAST, "#ut-gear :is(button, b, span, small, p, label)")
    assert worst >= 4.5, where
