"""The four pages of a vehicle: small, of the visit alone, with the visit in the address from one to the next; and all of it with scripts off."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from browsing import ROOT
from playwright.sync_api import BrowserContext, Page

from undertrim.check.shelf import stock
from undertrim.derive import cars
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import NOTHING
from undertrim.derive.procedure.planning import Target, targets
from undertrim.derive.visit import text
from undertrim.derive.visit.visit import Visit
from undertrim.derive.wiring import ends
from undertrim.publish.web import pages
from undertrim.publish.web.views import HEADS, VIEWS, VISIT
from undertrim.record.identity import slug
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

SPACE = Workspace(ROOT)
VEHICLES = SPACE.files([SPACE.records / "vehicles"])
each_vehicle = pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
FINCH = "vehicles/kelbrook/finch-2014-2018"
ELEMENTS = "document.querySelectorAll('*').length"
BEFORE, DURING = 1400, 3000
"""Elements of the page of a visit before one is chosen, and in one of radio and front doors; those of the frame count."""


def record(path: Path) -> tuple[VehicleRecord, str]:
    entry = SPACE.load(path)
    assert isinstance(entry.record, VehicleRecord)
    return entry.record, entry.address


def radio_and_doors(about: VehicleRecord) -> list[Target]:
    """The receiver's opening, and those of speakers in the front doors."""
    receivers = [one for one in targets(about) if one.job in about.openings and about.openings[one.job].takes_over]
    return receivers + [one for one in targets(about) if one.job == "front-door"]


def visited(site: Path, about: VehicleRecord, address: str, view: str = "", car: dict[str, str] | None = None) -> str:
    made = Visit(Vehicle(about, address, stock(SPACE), clearances()), tuple(radio_and_doors(about)), car or {})
    return f"{site.as_uri()}/vehicles/{address}{view}.html?{text.words(made)}"


@each_vehicle
def test_the_page_of_a_visit_is_small_and_has_the_steps_of_the_visit_alone(phone: Page, site: Path, path: Path) -> None:
    about, address = record(path)
    phone.goto(f"{site.as_uri()}/vehicles/{address}.html")
    assert phone.locator(".ut-step, .ut-opening, .ut-connector").count() == 0
    assert phone.evaluate(ELEMENTS) <= BEFORE
    for car in ({}, cars.assignments(about)[0], cars.assignments(about)[-1]):
        phone.goto(visited(site, about, address, car=car))
        assert phone.locator(".ut-step").count() > 20
        assert phone.evaluate(ELEMENTS) <= DURING, car


@each_vehicle
def test_no_page_of_a_vehicle_is_large(site: Path, path: Path) -> None:
    """Nothing stands on two of them: none has more than three quarters of what all have between them."""
    _, address = record(path)
    sizes = [(site / "vehicles" / f"{view.path(address)}.html").stat().st_size for view in VIEWS]
    assert max(sizes) < 0.75 * sum(sizes)
    assert max(sizes) < 540_000


@each_vehicle
def test_the_first_step_is_on_the_first_screen_after_start(phone: Page, site: Path, path: Path) -> None:
    about, address = record(path)
    phone.goto(visited(site, about, address))
    start = phone.locator("#ut-start")
    assert re.fullmatch(r"Start: step 1 of \d+", start.inner_text())
    assert phone.locator(".ut-step").count() == int(start.inner_text().split()[-1])
    box = start.bounding_box()
    assert box
    assert box["height"] >= 56
    assert box["y"] + box["height"] <= 844  # no scrolling to it
    assert phone.locator("#ut-ahead").is_visible() == (phone.locator(".ut-blocker").count() > 0)
    start.tap()
    shown, caution = phone.locator("dialog h2"), phone.locator("dialog .ut-caution")
    head = shown.bounding_box()
    assert head
    assert head["y"] >= 48
    assert head["y"] + head["height"] <= 844
    assert all((box := one.bounding_box()) and box["y"] >= 48 for one in caution.all())
    assert shown.evaluate("one => document.activeElement === one")
    phone.get_by_role("button", name="List", exact=True).tap()
    phone.get_by_role("link", name="In a list").tap()
    head = phone.locator("#steps-title").bounding_box()
    assert head
    assert 0 <= head["y"] < 200


def test_what_blocks_the_job_is_named_where_it_is_started(phone: Page, site: Path) -> None:
    phone.goto(f"{site.as_uri()}/{FINCH}.html?jobs=dash&radio=map")
    titles = [one.inner_text() for one in phone.locator(".ut-blocker div > b").all()]
    assert titles
    assert phone.locator("#ut-ahead span").inner_text() == " · ".join(titles)
    phone.locator("#ut-ahead a").tap()
    box = phone.locator("#before h2").bounding_box()
    assert box
    assert 0 <= box["y"] < 400


def test_the_other_pages_have_what_concerns_the_visit_alone(phone: Page, site: Path) -> None:
    openings = [one.get_attribute("id") for one in _at(phone, f"{site.as_uri()}/{FINCH}.openings.html").locator(".ut-opening").all()]  # fmt: skip
    assert {"opening-dash", "opening-front-door", "opening-rear-door"} <= set(openings)
    _at(phone, f"{site.as_uri()}/{FINCH}.openings.html?jobs=front-door@left")
    assert [one.get_attribute("id") for one in phone.locator(".ut-opening").all()] == ["opening-front-door"]
    phone.get_by_role("button", name="Show everything").click()
    assert [one.get_attribute("id") for one in phone.locator(".ut-opening").all()] == openings
    phone.get_by_role("button", name="Only what this visit needs").click()
    assert phone.locator(".ut-opening").count() == 1
    _at(phone, f"{site.as_uri()}/{FINCH}.wiring.html?jobs=front-door")
    assert phone.locator("details.ut-joint[id]").count() == 0


def test_a_visit_that_fits_nothing_says_so_where_openings_would_stand(phone: Page, site: Path) -> None:
    words = phone.get_by_text("This visit fits no gear")
    phone.goto(f"{site.as_uri()}/vehicles/wexcombe/plover-2017-2022.openings.html?jobs=tailgate-lining")
    assert phone.locator(".ut-opening").count() == 0
    assert words.is_visible()
    phone.goto(f"{site.as_uri()}/vehicles/wexcombe/plover-2017-2022.openings.html?jobs=tailgate-lining,dash")
    assert phone.locator(".ut-opening").count() == 1
    assert not words.is_visible()


def test_what_a_link_leads_to_is_there_even_if_the_visit_leaves_it_out(phone: Page, site: Path) -> None:
    _at(phone, f"{site.as_uri()}/{FINCH}.openings.html?jobs=front-door#opening-dash")
    assert phone.locator("#opening-dash").count() == 1
    box = phone.locator("#opening-dash").bounding_box()
    assert box
    assert -1 <= box["y"] < 844
    _at(phone, f"{site.as_uri()}/{FINCH}.html?jobs=front-door#step-remove:vent-trim")
    assert phone.locator("[id='step-remove:vent-trim']").count() == 1
    _at(phone, f"{site.as_uri()}/{FINCH}.html?jobs=front-door")
    assert phone.locator("[id='step-remove:vent-trim']").count() == 0


def _at(page: Page, address: str) -> Page:
    page.goto("about:blank")
    page.goto(address)
    return page


@pytest.mark.parametrize("stem", ["finch-2014-2018", "plover-2017-2022"])
def test_the_wiring_page_has_the_plugs_of_the_visit(phone: Page, site: Path, stem: str) -> None:
    about, address = record(next(path for path in VEHICLES if path.stem == stem))
    unplaced = {plug.id for plug in about.connectors.values() if not ends.serves(about, plug)}
    seen = set()
    for one in targets(about):
        made = Visit(Vehicle(about, address, NOTHING, clearances()), (one,))
        _at(phone, f"{site.as_uri()}/vehicles/{address}.wiring.html?jobs={one}")
        shown = phone.evaluate("[...document.querySelectorAll('.ut-connector')].map(plug => plug.id)")
        assert set(shown) == {f"plug-{name}" for name in {plug.id for plug in made.plugs} | unplaced}, one
        seen.add(frozenset(shown))
    assert len(seen) > 1


def test_with_scripts_off_each_opening_can_be_seen_alone(context: Callable[..., BrowserContext], site: Path) -> None:
    about, address = record(next(path for path in VEHICLES if path.stem == "finch-2014-2018"))
    page = context(viewport={"width": 390, "height": 844}, java_script_enabled=False).new_page()
    page.goto(f"{site.as_uri()}/vehicles/{address}.html")
    every = page.locator(".ut-step:visible").count()
    links = page.locator(".ut-noscript a[href^='#only-']")
    assert links.count() == len(targets(about))
    for number, one in enumerate(targets(about)):
        links.nth(number).click()
        seen = page.locator(".ut-step:visible")
        assert 0 < seen.count() < every
        marks = page.locator(".ut-step:visible .ut-for").all_text_contents()
        own = page.locator(".ut-noscript li").nth(number).locator(".ut-mark").inner_text()
        assert all(own in mark.removeprefix("For: ").split(", ") for mark in marks), one
    page.get_by_role("link", name="Show everything").click()
    assert page.locator(".ut-step:visible").count() == every
    for view in HEADS[1:]:
        page.locator(f".ut-views a[href$='.{view.name}.html']").click()
        assert page.locator("h2").first.is_visible()
        assert page.locator(".ut-button:visible").count() == 0


def test_the_style_has_a_line_for_each_opening_that_can_be_seen_alone() -> None:
    style = (ROOT / "site_overrides/assets/undertrim/visit.css").read_text(encoding="utf-8")
    lines = re.findall(r"\.ut-only-(\d+):target ~ \* \.ut-of:not\(\.ut-for-(\d+)\)", style)
    assert lines == [(str(number), str(number)) for number in range(1, pages.MOST_ALONE + 1)]


def test_no_vehicle_can_be_called_as_the_page_of_another() -> None:
    assert slug("Finch 2014-2018.wiring") == "finch-2014-2018-wiring"
    assert [view.path("kelbrook/finch-2014-2018") for view in VIEWS if view is not VISIT] == [
        f"kelbrook/finch-2014-2018.{name}" for name in ("openings", "wiring", "record", "questions")
    ]


def test_every_link_to_a_page_of_the_vehicle_leads_to_what_is_there(site: Path) -> None:
    for path in sorted((site / "vehicles").rglob("*.html")):
        page = path.read_text(encoding="utf-8")
        links = re.findall(r"<article.*</article>", page, re.DOTALL)
        for name, place in re.findall(r'href="([^":/#]*\.html)?#([^"]+)"', links[0]):
            there = (path.parent / name).read_text(encoding="utf-8") if name else page
            assert f'id="{place}"' in there, (path.name, name, place)


def test_restraints_are_those_where_the_visit_works(phone: Page, site: Path) -> None:
    plover = f"{site.as_uri()}/vehicles/wexcombe/plover-2017-2022.html"
    phone.goto(f"{plover}?jobs=dash")
    assert "Driver airbag" in phone.locator(".ut-restraints").inner_text()
    assert "Crash pressure sensor" not in phone.locator(".ut-restraints").inner_text()
    phone.goto(f"{plover}?jobs=front-door")
    assert "Crash pressure sensor" in phone.locator(".ut-restraints").inner_text()
    assert "none there" not in phone.locator(".ut-restraints").inner_text()
    phone.get_by_role("button", name="Show everything").click()
    assert "none there" in phone.locator(".ut-restraints").inner_text()
