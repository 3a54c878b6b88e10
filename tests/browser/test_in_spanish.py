"""The site in Spanish: who reads it is led there, goes through a visit in it, and finds no English but what a record or the handbook says."""

from collections.abc import Callable
from pathlib import Path

import pytest
from in_bay import DONE, FINCH, TRAY, WHERE, at, clear_waits, kept
from playwright.sync_api import BrowserContext, Page, expect

from left_in_english import Seen, left
from undertrim.words import Value, language, message, say

PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True}
GEAR = "&dash=skerrowe-broadside&front-door=tidewrack-haven-65"
OURS = ("index.html", "calculators.html", "makes", "vehicles")
"""Pages of the program; the handbook and the rules are in English."""


def told(code: str, **values: Value) -> str:
    """A sentence of the catalogue in Spanish."""
    return say(message(code, **values), language("es"))


HEARD = """() => {
  const own = (node) => node.parentElement.closest("[lang]") === document.documentElement && !node.parentElement.closest("script, style, .md-nav");
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), found = [], drawn = [];
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    if (node.data.trim() && own(node)) (node.parentElement.closest("svg") ? drawn : found).push(node.data.trim());
  }
  document.querySelectorAll("[aria-label], [title], [alt], [placeholder], [data-label]").forEach((one) => {
    if (one.closest("[lang]") === document.documentElement) ["aria-label", "title", "alt", "placeholder", "data-label"].forEach((name) => { if (one.getAttribute(name)) found.push(one.getAttribute(name)); });
  });
  return [found, drawn];
}"""


def in_spanish(page: Page) -> None:
    """Everything on the page as it is now, whatever scripts have put there."""
    found, drawn = page.evaluate(HEARD)
    assert left(found, "es", drawn) == []


@pytest.fixture
def spanish(context: Callable[..., BrowserContext]) -> Page:
    """A phone whose browser is in Spanish."""
    return context(**PHONE, locale="es-MX").new_page()


def test_no_page_of_ours_is_left_in_english(site: Path) -> None:
    found = {}
    pages = [
        path for name in OURS for path in sorted((site / "es").glob(f"{name}/**/*.html" if "." not in name else name))
    ]
    assert len(pages) >= 40  # eight vehicles with four pages each, makes, the first page and the calculators
    for path in pages:
        seen = Seen(path.read_text(encoding="utf-8"))
        found[path.relative_to(site).as_posix()] = left(seen.found, "es", seen.drawn)
    assert {name: texts for name, texts in found.items() if texts} == {}


def test_english_would_be_seen(site: Path) -> None:
    page = (site / "vehicles/kelbrook/finch-2014-2018.html").read_text(encoding="utf-8")
    assert len(left(Seen(page).found, "es")) > 50


def test_the_first_page_opens_in_the_language_of_the_browser(spanish: Page, phone: Page, site: Path) -> None:
    home = (site / "index.html").as_uri()
    spanish.goto(home, wait_until="commit")
    spanish.wait_for_url("**/es/index.html")
    phone.goto(home)
    assert phone.url == home
    expect(phone.locator("html")).to_have_attribute("lang", "en")


def test_a_choice_is_remembered_on_the_device(phone: Page, site: Path) -> None:
    phone.goto((site / "makes/kelbrook.html").as_uri())
    phone.get_by_role("link", name="Español").click()
    phone.wait_for_url("**/es/makes/kelbrook.html")
    phone.goto((site / "calculators.html").as_uri() + "#drop", wait_until="commit")
    phone.wait_for_url("**/es/calculators.html#drop")
    phone.get_by_role("link", name="English").click()
    phone.wait_for_url(lambda url: "/es/" not in url)
    phone.goto((site / "index.html").as_uri())
    assert "/es/" not in phone.url


def test_an_address_with_a_visit_opens_in_its_language(spanish: Page, phone: Page, site: Path) -> None:
    spanish.goto(at(site, FINCH))
    expect(spanish.locator("#ut-start")).to_have_text("Start: step 1 of 76")
    phone.goto(at(site, f"es/{FINCH}"))
    expect(phone.locator("#ut-start")).to_have_text(told("vehicle-page/start", count=76))


def test_without_scripts_there_is_a_way_too(context: Callable[..., BrowserContext], site: Path) -> None:
    page = context(**PHONE, java_script_enabled=False).new_page()
    page.goto((site / "vehicles/kelbrook/finch-2014-2018.wiring.html").as_uri())
    page.get_by_role("link", name="Español").click()
    assert page.url == (site / "es/vehicles/kelbrook/finch-2014-2018.wiring.html").as_uri()
    expect(page.get_by_role("heading", name=told("vehicle-page/wiring"), exact=True)).to_be_visible()


def press(page: Page) -> None:
    """Done, after every caution was read."""
    button = page.locator(DONE)
    while button.inner_text() == told("bay/read-on"):
        button.click()
    button.click()


@pytest.mark.parametrize("view", ["", ".openings", ".wiring", ".record"])
def test_a_page_of_a_visit_is_in_spanish_whatever_scripts_add(spanish: Page, site: Path, view: str) -> None:
    spanish.goto(at(site, f"es/vehicles/kelbrook/finch-2014-2018{view}.html?{FINCH.partition('?')[2]}{GEAR}"))
    for details in spanish.locator("details:visible > summary").all():
        details.click()
    in_spanish(spanish)


def find_and_choose(page: Page, site: Path) -> None:
    """From the first page to the steps of a radio."""
    page.goto((site / "index.html").as_uri(), wait_until="commit")
    page.wait_for_url("**/es/index.html")
    in_spanish(page)
    page.locator("#ut-query").fill("finch 16")
    expect(page.locator("#ut-said > :first-child")).to_have_text(told("finder/is-this"))
    page.keyboard.press("Enter")
    page.wait_for_url("**/es/vehicles/kelbrook/finch-2014-2018.html*")
    page.locator("input[value=dash]").check()
    page.locator("input[name=variant-radio][value=map]").check()
    expect(page.locator("#ut-start")).to_contain_text(told("vehicle-page/start", count=1)[:10])


def test_a_visit_in_spanish_from_the_finder_to_the_report(spanish: Page, site: Path) -> None:
    find_and_choose(spanish, site)
    spanish.locator("#ut-start").click()
    for _ in range(12):
        in_spanish(spanish)
        press(spanish)
        clear_waits(spanish)
    expect(spanish.locator(TRAY)).to_contain_text(told("bay/in-tray", things="")[:10])
    assert (len(kept(spanish)["done"]), kept(spanish)["language"]) == (12, "es")
    spanish.get_by_role("button", name=told("bay/all-steps"), exact=True).click()
    spanish.locator("#ut-desk > summary").click()
    spanish.locator("#ut-desk").get_by_role("button").first.click()
    expect(spanish.locator(".ut-report-page h2")).to_have_text(told("bay/report"))
    in_spanish(spanish)


def test_the_language_is_changed_in_the_middle_of_a_visit(phone: Page, site: Path) -> None:
    phone.goto(at(site, f"es/{FINCH}"))
    phone.locator("#ut-start").click()
    for _ in range(3):
        press(phone)
    step = phone.locator(WHERE).inner_text()
    for button, tag, of in ((told("bay/all-steps"), "en", " of "), ("List", "es", " de ")):
        phone.get_by_role("button", name=button, exact=True).click()
        phone.locator(".ut-languages a").click()
        expect(phone.locator("html")).to_have_attribute("lang", tag)
        expect(phone.locator("[data-tick]:checked")).to_have_count(3)
        assert kept(phone)["language"] == tag
        phone.locator("#ut-start").click()
        assert phone.locator(WHERE).inner_text().split(of) == step.split(" de ")


def test_what_broke_and_what_was_agreed_hold_in_both_languages(phone: Page, site: Path) -> None:
    phone.goto(at(site, FINCH))
    phone.locator("[data-tick]").first.check()
    visit = kept(phone)
    visit["spoilt"] = {"remove:vent-trim": {"0.0": 2}}
    visit["report"] = {"agreed:position-antenna": "Ana"}
    phone.evaluate("(one) => { localStorage['undertrim:visit:' + one.id] = JSON.stringify(one); }", visit)
    for name, broke, agreed in (
        (FINCH, "2 × push clip, for those that broke or were lost", "agreed by Ana"),
        (f"es/{FINCH}", "2 × grapa a presión", "Ana"),
    ):
        phone.goto(at(site, name))
        expect(phone.locator("#ut-buy")).to_contain_text(broke)
        phone.locator("#ut-desk > summary").click()
        phone.locator("#ut-desk").get_by_role("button").first.click()
        expect(phone.locator(".ut-report-page")).to_contain_text(agreed)


def test_a_kept_visit_opens_in_the_language_it_was_last_read_in(phone: Page, site: Path) -> None:
    phone.goto(at(site, f"es/{FINCH}"))
    phone.locator("[data-tick]").first.check()
    phone.goto((site / "index.html").as_uri())
    phone.locator(".ut-kept a").click()
    phone.wait_for_url("**/es/vehicles/kelbrook/finch-2014-2018.html?*")
    expect(phone.locator("[data-tick]:checked")).to_have_count(1)


def test_a_visit_handed_over_opens_in_its_language(
    context: Callable[..., BrowserContext], phone: Page, site: Path
) -> None:
    phone.goto(at(site, f"es/{FINCH}"))
    phone.locator("[data-tick]").first.check()
    phone.locator("#ut-desk > summary").click()
    phone.locator("#ut-desk").get_by_role("button", name=told("bay/hand-over")).click()
    address = phone.locator(".ut-handed input").input_value()
    other = context(**PHONE).new_page()
    other.goto(address)
    expect(other.locator("html")).to_have_attribute("lang", "es")
    expect(other.locator("[data-tick]:checked")).to_have_count(1)
    assert "take=" not in other.url


def test_what_is_not_so_is_asked_for_in_spanish_too(spanish: Page, site: Path) -> None:
    spanish.goto(at(site, f"es/{FINCH}").replace(".html", ".record.html"))
    button = spanish.locator(".ut-not-so button").last
    button.click()
    expect(spanish.locator("dialog[open] select[name=about]")).to_contain_text("Lado del volante")


def test_what_is_in_the_car_is_found_by_its_spanish_name(spanish: Page, site: Path) -> None:
    spanish.goto(at(site, f"es/{FINCH}").replace(".html", ".wiring.html"))
    for typed, shown in (("gris/negro", "delantero derecho −"), ("vent trim", "Upper vent trim")):
        spanish.get_by_role("combobox").fill(typed)
        inside = spanish.get_by_role("group", name=told("finder/group-here"))
        expect(inside.get_by_role("option").first).to_contain_text(shown)
        in_spanish(spanish)
