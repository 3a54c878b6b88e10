"""Whole visits on a phone with a slow processor: found, chosen, every step done of a radio and two doors, through a reload, without a signal, handed over, and reported.

Three cars in both languages; each way to find a car is gone in both.
"""

import io
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from in_bay import clear_waits
from playwright.sync_api import Browser, Page, ViewportSize, expect
from pypdf import PdfReader
from serving import ASK, Shop, serving
from slow_phone import Phone

from undertrim.words import Value, language, message, say


@dataclass(frozen=True, slots=True)
class Trip:
    """A visit to go through: what is typed into the finder, in which language, and what is asked of the car with its answers."""

    tag: str
    typed: str
    car: str
    answers: dict[str, str]

    def says(self, code: str, **values: Value) -> str:
        """A sentence of the pages in its language."""
        return say(message(code, **values), language(self.tag))


FINCH, SEDGE, PLOVER = "kelbrook/finch-2014-2018", "harrowby/sedge-2016-2021", "wexcombe/plover-2017-2022"
OF_SEDGE = {"sound": "dash", "plug": "late", "drive-side": "left"}
TRIPS = [
    Trip("en", "finch", FINCH, {"radio": "map"}),  # by its name
    Trip("en", "2018 sedge", SEDGE, OF_SEDGE),  # by its year, of two with one name
    Trip("en", "00WPL1AL0JX000001", PLOVER, {"camera": "fitted"}),  # by its VIN
    Trip("es", "00KFN1M20GX000001", FINCH, {}),  # which answers what is asked of it
    Trip("es", "sedge", SEDGE, OF_SEDGE),
    Trip("es", "plover 2019", PLOVER, {"camera": "fitted", "drive-side": "right"}),
]

THUMB = """(most) => {
  const at = (selector) => document.querySelector(selector), where = () => at(".ut-screen-where").textContent, seen = [];
  const wrong = (done) => {
    const box = done.getBoundingClientRect(), area = at(".ut-screen-area"), there = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
    return [there === done ? "" : "something lies over Done", box.height >= 56 ? "" : "Done is small", box.bottom <= innerHeight ? "" : "Done is below the screen",
      area.scrollWidth <= area.clientWidth ? "" : "it goes sideways", area.querySelector("h2").textContent.trim() ? "" : "it has no heading"].filter(Boolean);
  };
  while (seen.length < most && where()) {
    const done = at(".ut-done"), before = where(), faults = wrong(done);
    for (let k = 0; k < 30 && where() === before && !at(".ut-screen-answer").textContent; k += 1) done.click();
    if (where() === before) return { seen, answer: at(".ut-screen-answer").textContent || "stuck", look: false };
    seen.push([before, ...faults]);
    if (at(".ut-look")) return { seen, answer: "", look: true };
  }
  return { seen, answer: "", look: false };
}"""
"""Presses Done where a thumb finds it, step by step, until so many are done, the tray is to be looked into, or it will not go on; says of each step what is wrong with it."""


@pytest.fixture(scope="module")
def shop(site: Path) -> Iterator[Shop]:
    with serving(site) as made:
        yield made


@pytest.fixture(scope="module")
def tech(chromium: Browser, shop: Shop) -> Iterator[Callable[[str], Phone]]:
    """The phone of somebody who reads a language: it was on the first page once, until all was kept."""
    made: dict[str, Phone] = {}
    errors: list[str] = []

    def of(tag: str) -> Phone:
        if tag not in made:
            page = new_phone(chromium, tag)
            page.on("pageerror", lambda error: errors.append(str(error)))
            page.goto(shop.at("index.html"), wait_until="commit")
            page.wait_for_url(f"**/{'' if tag == 'en' else tag + '/'}index.html")
            standing = page.evaluate(ASK, {"ask": "fill", "place": "" if tag == "en" else f"{tag}/"})
            assert standing["kept"] == standing["of"] > 80
            made[tag] = Phone(page)
        return made[tag]

    yield of
    for phone in made.values():
        phone.page.context.close()
    assert errors == [], "a script on a page failed"


def new_phone(chromium: Browser, tag: str, **options: Any) -> Page:
    locale = {"en": "en-US", "es": "es-MX"}[tag]
    size: ViewportSize = {"width": 390, "height": 844}
    return chromium.new_context(viewport=size, has_touch=True, locale=locale, **options).new_page()


def found(page: Page, shop: Shop, trip: Trip) -> None:
    """From the address of the site to the vehicle."""
    page.goto(shop.at(""), wait_until="commit")
    page.wait_for_url(lambda url: url.endswith("/es/index.html" if trip.tag == "es" else "/"))
    page.locator("#ut-query").fill(trip.typed)
    page.locator(f".ut-hit-vehicle[href*='{trip.car}']").tap()
    page.wait_for_url(f"**/{trip.car}.html*")


def chosen(page: Page, trip: Trip) -> int:
    """A radio and both front doors, and what is asked of the car; says how many steps that is."""
    page.locator("input[name=job][value=dash]").tap()
    page.locator("[data-both=front-door]").tap()
    for name, answer in trip.answers.items():
        page.locator(f"input[name='variant-{name}'][value='{answer}']").tap()
    assert page.locator(".ut-variant:visible").count() == page.locator(".ut-variant:visible input:checked").count()
    return int(page.locator("#ut-start").inner_text().split()[-1])


class Walk:
    """One visit on one phone, step by step."""

    def __init__(self, page: Page, trip: Trip, many: int, done: int = 0) -> None:
        self.page, self.trip, self.many = page, trip, many
        self.done = done

    def start(self) -> None:
        self.page.locator("#ut-start").tap()
        expect(self.page.locator(".ut-screen-where")).to_have_text(self.where(self.done + 1))

    def where(self, step: int) -> str:
        return self.trip.says("bay/where", step=step, count=self.many)

    def go_to(self, step: int) -> bool:
        """On until a step, or until the tray is to be looked into. A wait is over when the phone is next looked at."""
        while self.done < step - 1:
            made = self.page.evaluate(THUMB, step - 1 - self.done)
            places = [self.where(self.done + k + 1) for k in range(len(made["seen"]))]
            assert made["seen"] == [[place] for place in places]
            self.done += len(places)
            if made["look"]:
                return True
            if made["answer"]:
                assert re.search(r"\d:\d\d", made["answer"]), made["answer"]
                clear_waits(self.page)
                self.again()
        return False

    def again(self) -> None:
        """The page is loaded once more, and the visit is where it was."""
        self.page.reload()
        self.start()


def left_over(walk: Walk) -> None:
    """Who finds one more in the tray than should be there is told so, and where it belongs."""
    row = walk.page.locator(".ut-look-rows li").first
    sort, more = row.locator("span").first.inner_text(), row.locator(".ut-count button").last
    more.tap()
    said = walk.trip.says("bay/left-over", count=1, sort=sort, steps="")
    expect(row.locator(".ut-means")).to_contain_text(said[: said.index(sort) + len(sort)])
    row.locator(".ut-count button").first.tap()
    expect(row.locator(".ut-means")).to_have_text("")


def desk(page: Page) -> Any:
    page.get_by_role("dialog").get_by_role("button").first.tap()
    page.locator("#ut-desk > summary").tap()
    return page.locator("#ut-desk")


def handed_over(walk: Walk) -> str:
    """The address that is given to another phone."""
    at = desk(walk.page)
    at.get_by_role("button", name=walk.trip.says("bay/hand-over")).tap()
    return walk.page.locator(".ut-handed input").input_value()


def taken_over(address: str, walk: Walk, chromium: Browser) -> None:
    """The other phone opens it, goes on where this one is, and does a step."""
    other = new_phone(chromium, "en", service_workers="block")  # it does not stay
    other.goto(address)
    expect(other.locator("html")).to_have_attribute("lang", walk.trip.tag)
    expect(other.locator("[data-tick]:checked")).to_have_count(walk.done)
    there = Walk(other, walk.trip, walk.many, walk.done)
    there.start()
    there.go_to(walk.done + 2)
    other.context.close()


def report(walk: Walk) -> None:
    """The report, with a name in it."""
    desk(walk.page).get_by_role("button", name=walk.trip.says("bay/report")).tap()
    walk.page.get_by_label(walk.trip.says("joint/fill-by")).fill("rk")
    walk.page.get_by_label(walk.trip.says("joint/fill-by")).blur()


def printed(page: Page) -> str:
    """What it says on paper."""
    pages = PdfReader(io.BytesIO(page.pdf(format="A4"))).pages
    assert len(pages) <= 4
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def finished(walk: Walk) -> None:
    """The rest of a visit without a signal, up to its report."""
    walk.again()
    expect(walk.page.locator(".ut-copy")).to_be_attached()
    looks = 0
    while walk.go_to(walk.many + 1):
        if not looks:
            left_over(walk)
        looks += 1
    assert looks
    expect(walk.page.locator(".ut-screen-area")).to_contain_text(walk.trip.says("bay/all-done"))
    expect(walk.page.locator(".ut-look")).to_contain_text(walk.trip.says("bay/should-be-empty"))
    report(walk)


@pytest.mark.parametrize("trip", TRIPS, ids=lambda trip: f"{trip.tag}-{trip.car.partition('/')[2]}")
def test_a_radio_and_two_doors(tech: Callable[[str], Phone], shop: Shop, chromium: Browser, trip: Trip) -> None:
    phone = tech(trip.tag)
    with phone.used():
        found(phone.page, shop, trip)
        walk = Walk(phone.page, trip, chosen(phone.page, trip))
        walk.start()
        walk.go_to(walk.many // 4)
        walk.again()
        walk.go_to(walk.many // 3)
        address = handed_over(walk)
        with phone.aside():
            taken_over(address, walk, chromium)
        walk.start()
        shop.shut()
        try:
            finished(walk)
            with phone.aside():
                said = printed(phone.page)
        finally:
            shop.open()
    assert trip.says("bay/report") in said
    assert trip.says("bay/not-done") not in said
    assert f"{trip.says('joint/fill-by')} rk" in said
