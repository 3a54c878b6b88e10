"""Served over http the site is kept on the device: without a signal every page is there and says how old it is, and a visit under way stays as it was."""

import gzip
import json
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect
from serving import ASK, Shop, serving

FINCH = "vehicles/kelbrook/finch-2014-2018.html?jobs=dash,front-door&radio=map"


@pytest.fixture
def shop(site: Path, tmp_path: Path) -> Iterator[Shop]:
    shutil.copytree(site, tmp_path / "site")
    with serving(tmp_path / "site") as made:
        yield made


@pytest.fixture
def kept(context: Callable[..., BrowserContext], shop: Shop) -> Page:
    """A phone that was on the first page once, with a signal, until all was kept."""
    page = context(viewport={"width": 390, "height": 844}).new_page()
    page.goto(shop.at("index.html"))
    standing = page.evaluate(ASK, {"ask": "fill"})
    assert standing["kept"] == standing["of"] > 80
    return page


def test_every_page_is_there_without_a_signal_and_says_its_age(kept: Page, shop: Shop) -> None:
    shop.shut()
    for name in (
        "index.html",
        FINCH,
        FINCH.replace(".html", ".wiring.html"),
        "safety.html",
        "vehicles/wexcombe/plover-2017-2022.record.html",
        "",
    ):
        kept.goto(shop.at(name))
        expect(kept.locator(".ut-copy")).to_contain_text("No signal: this is the copy of ")
        assert kept.locator("h1").count() == 1


MOST_KEPT = 950_000
"""Bytes, packed as they are sent, that a device may take from a shop's signal without being asked: a figure of ours."""


@pytest.mark.parametrize("place", ["", "es/"])
def test_what_is_kept_by_itself_is_small(site: Path, place: str) -> None:
    """All that a visit wants of the shipped records, in one language."""
    named = json.loads((site / place / "keeper/list.json").read_bytes())
    lists = [json.loads((site / place / f"keeper/{make}.json").read_bytes())["pages"] for make in named["makes"]]
    files = set(named["files"]).union(*lists)
    assert {
        f"{place}safety.html",
        f"{place}shelf/start.js",
        f"{place}vehicles/kelbrook/finch-2014-2018.wiring.html",
    } <= files
    assert sum(len(gzip.compress((site / name).read_bytes(), 6)) for name in files) < MOST_KEPT


def test_where_a_page_is_not_kept_another_says_what_to_do(kept: Page, shop: Shop) -> None:
    gear = "gear/skerrowe-broadside.html"
    shop.shut()
    kept.goto(shop.at(gear))
    expect(kept.locator("h1")).to_have_text("Not kept on this device")
    expect(kept.locator(".ut-book")).to_contain_text("Pages of gear, rules and fields come with a signal")
    again = kept.get_by_role("link", name="Try again")
    expect(again).to_have_attribute("href", shop.at(gear))
    kept.goto(kept.url.partition("?")[0] + "?page=https://elsewhere.example/")
    expect(again).to_have_attribute("href", shop.at(""))
    shop.open()
    kept.goto(shop.at(gear))
    expect(kept.locator("h1")).to_contain_text("Broadside")
    shop.shut()
    kept.goto(shop.at(gear))  # it was opened once
    expect(kept.locator("h1")).to_contain_text("Broadside")
    shop.open()


FETCHED = ("vehicles/kelbrook/finch-2014-2018.find.js", "shelf/kelbrook/finch-2014-2018.js")


def test_a_device_keeps_the_language_of_its_reader_alone(context: Callable[..., BrowserContext], shop: Shop) -> None:
    page = context(viewport={"width": 390, "height": 844}, locale="es-ES").new_page()
    page.goto(shop.at("index.html"), wait_until="commit")
    page.wait_for_url("**/es/index.html")
    standing = page.evaluate(ASK, {"ask": "fill", "place": "es/"})
    assert standing["kept"] == standing["of"] > 80
    page.goto(shop.at(f"es/{FINCH}"))
    page.locator("[data-tick]").first.check()
    page.evaluate(ASK, {"ask": "fill"})
    shop.shut()
    page.goto(shop.at(""), wait_until="commit")  # whoever opens the address of the site
    page.wait_for_url("**/es/index.html")
    expect(page.locator(".ut-copy")).to_contain_text("Sin señal")
    page.locator(".ut-kept a").click()
    expect(page.locator("[data-tick]:checked")).to_have_count(1)
    names = page.evaluate(
        "caches.open('undertrim-kept').then((one) => one.keys()).then((all) => all.map((one) => one.url))"
    )
    pages = {name.removeprefix(shop.at("")) for name in names if name.endswith(".html")}
    assert {shop.at(f"es/{name}") for name in FETCHED} <= set(names)
    assert {name for name in pages if not name.startswith("es/")} == {"index.html"}
    assert not any(name.endswith("/assets/undertrim/page-visit.js") and "/es/" not in name for name in names)


def test_with_a_signal_nothing_is_said_and_the_page_is_the_newest(kept: Page, shop: Shop) -> None:
    page = shop.folder / "safety.html"
    page.write_text(page.read_text("utf-8").replace("<h1", "<p>of today</p><h1", 1), "utf-8")
    kept.goto(shop.at("safety.html"))
    kept.get_by_text("of today").wait_for()
    assert kept.locator(".ut-copy").count() == 0


def test_gear_is_ranked_without_a_signal(kept: Page, shop: Shop) -> None:
    shop.shut()
    kept.goto(shop.at(FINCH))
    kept.locator(".ut-gear-toggle").first.click()
    expect(kept.locator(".ut-gear-pick").first).to_be_visible()


def test_a_new_version_does_not_change_a_visit_under_way(kept: Page, shop: Shop) -> None:
    kept.goto(shop.at(FINCH))
    kept.locator("[data-tick='before:presets']").check()
    kept.wait_for_function("caches.has('undertrim-pinned:kelbrook/finch-2014-2018')")
    for added in (".questions.html", ".facts.js"):  # what adds to a record is there for a visit
        address = shop.at(FINCH.partition(".html")[0] + added)
        kept.wait_for_function("(one) => caches.match(one).then(Boolean)", arg=address)
    page = shop.folder / FINCH.partition("?")[0]
    page.write_text(page.read_text("utf-8").replace("Upper vent trim", "Upper trim of today"), "utf-8")
    kept.wait_for_timeout(300)
    kept.reload()
    expect(kept.locator("#ut-steps")).to_contain_text("Take off Upper vent trim")
    kept.get_by_role("button", name="Take the newer one").click()
    expect(kept.locator("#ut-steps")).to_contain_text("Take off Upper trim of today")
    expect(kept.locator("[data-tick]:checked")).to_have_count(1)


def test_when_the_last_step_is_done_the_newest_comes_again(kept: Page, shop: Shop) -> None:
    kept.goto(shop.at("vehicles/kelbrook/finch-2014-2018.html?jobs=front-door@left"))
    kept.locator("[data-tick='before:presets']").check()
    kept.wait_for_function("caches.has('undertrim-pinned:kelbrook/finch-2014-2018')")
    for box in kept.locator("[data-tick]").all():
        box.check()
    kept.wait_for_function("caches.has('undertrim-pinned:kelbrook/finch-2014-2018').then((there) => !there)")


def test_sheets_and_pictures_are_kept_by_choice(kept: Page, shop: Shop) -> None:
    record = FINCH.partition("?")[0].replace(".html", ".record.html")
    (picture,) = (path.name for path in (shop.folder / "vehicles/kelbrook").glob("*-map-key-*.png"))
    fetched = f"fetch('{picture}').then((got) => got.ok, () => false)"
    rule = "fetch('../../rules/year-range.html').then((got) => got.ok, () => false)"
    for choice in ("This car", "Every Kelbrook", "Every vehicle"):
        kept.goto(shop.at(record))
        kept.get_by_text("Keep on this device").click()
        kept.get_by_label(choice).check()
        expect(kept.locator(".ut-keep [role=status]")).to_contain_text("All of it is here")
        shop.shut()
        kept.reload()
        assert kept.evaluate(fetched)
        assert kept.evaluate(rule) == (choice == "Every vehicle")  # for who writes records, at a desk
        assert kept.get_by_label(choice).is_checked()
        shop.open()
        kept.reload()
        kept.get_by_text("Keep on this device").click()
        kept.get_by_label(choice).uncheck()
        expect(kept.locator(".ut-keep [role=status]")).to_contain_text("All of it is here")
        shop.shut()
        assert not kept.evaluate(fetched)
        shop.open()
