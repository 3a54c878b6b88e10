"""For every hand and eye: large targets, links told by more than colour, 320 px to 3840 px, text at 200 %, the keyboard alone, no motion."""

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from browsing import QUIET, made_wide, program
from playwright.sync_api import Browser, BrowserContext, Page, expect

VISIT = "vehicles/kelbrook/finch-2014-2018.html?jobs=dash,front-door&radio=map"
PLOVER = "vehicles/wexcombe/plover-2017-2022"
PAGES = [
    "index.html",
    "makes/harrowby.html",
    "evidence/people.html",
    VISIT,
    f"{PLOVER}.openings.html",
    f"{PLOVER}.wiring.html",
    f"{PLOVER}.record.html",
    f"{PLOVER}.questions.html",
    "how-to-measure.html",
    "writing-a-record.html",
    "rules/index.html",
    "rules/year-range.html",
    "reference/index.html",
    "calculators.html",
    "new-car.html",
    "measuring.html",
]
OPEN = """() => {
  document.querySelectorAll("details").forEach(item => { item.open = true; });
  document.querySelectorAll(".ut-step").forEach(step => { step.style.contentVisibility = "visible"; });
}"""
# A box beside its words is as large as both; a link over two lines as its pieces. What the theme hides from sight is pressed by its label.
SMALL = """(least) => {
  const small = [];
  for (const item of document.querySelectorAll("a[href], button, input, select, textarea, summary, [role=option]")) {
    const seen = item.checkVisibility({visibilityProperty: true, opacityProperty: true}) && item.getBoundingClientRect().width > 0;
    if (!seen || item.matches(".md-skip")) continue;
    const label = item.labels && item.labels[0] && item.labels[0].contains(item) ? item.labels[0] : item;
    const boxes = label === item && item.getClientRects().length > 1 ? Array.from(item.getClientRects()) : [label.getBoundingClientRect()];
    const high = Math.min(...boxes.map(box => box.height)), wide = Math.max(...boxes.map(box => box.width));
    if (high < least || wide < least) small.push(`${Math.round(wide)} x ${Math.round(high)}: ${item.outerHTML.slice(0, 90)}`);
  }
  return small;
}"""
LEAST = 43.5  # half a pixel is rounding


def at(site: Path, name: str) -> str:
    path, mark, words = name.partition("?")
    return f"{(site / path).as_uri()}{mark}{words}"


@pytest.fixture(scope="module", params=PAGES)
def opened(request: pytest.FixtureRequest, chromium: Browser, site: Path) -> Iterator[Page]:
    """Each page with all of it open, once for all its widths: to load it takes longer than to look at it."""
    page = chromium.new_page(viewport={"width": 390, "height": 844})
    page.goto(at(site, request.param))
    page.wait_for_load_state("networkidle")
    page.evaluate(OPEN)
    yield page
    page.close()


@pytest.mark.parametrize("width", [390, 1280])
def test_what_is_pressed_is_44_px_both_ways(opened: Page, width: int) -> None:
    """WCAG 2.2, 2.5.5, without its exceptions."""
    made_wide(opened, width)
    assert opened.evaluate(SMALL, LEAST) == []


def test_so_it_is_over_a_step_and_where_gear_is_chosen(phone: Page, site: Path) -> None:
    phone.goto(at(site, VISIT))
    phone.locator(".ut-gear-toggle").first.click()
    phone.locator(".ut-gear-pick").first.wait_for()
    assert phone.evaluate(SMALL, LEAST) == []
    phone.locator("#ut-start").click()
    assert phone.evaluate(SMALL, LEAST) == []


PALE = """() => Array.from(document.querySelectorAll("article :is(p, li, td, dd, small, figcaption) a[href]")).filter(link =>
  link.checkVisibility() && !link.closest("nav, .ut-makes, .ut-vehicles, .ut-kept, svg") && !link.matches(".ut-button, .ut-start, .ut-photo")
  && getComputedStyle(link).textDecorationLine !== "underline").map(link => link.outerHTML.slice(0, 90))"""


@pytest.mark.parametrize("name", PAGES)
def test_a_link_is_told_from_text_by_its_line(phone: Page, site: Path, name: str) -> None:
    """WCAG 2.2, 1.4.1."""
    phone.goto(at(site, name))
    phone.evaluate(OPEN)
    assert phone.evaluate(PALE) == []


SIDEWAYS = """() => {
  const width = document.documentElement.clientWidth;
  const scrolled = ".ut-scroll, pre, .md-typeset__scrollwrap";
  const out = Array.from(document.querySelectorAll("article *")).filter(item =>
    item.checkVisibility() && item.getBoundingClientRect().right > width + 1 && !item.closest(scrolled));
  return [document.documentElement.scrollWidth > width, ...out.slice(0, 3).map(item => item.outerHTML.slice(0, 90))];
}"""


@pytest.mark.parametrize("width", [320, 3840])
def test_no_page_scrolls_sideways_with_all_of_it_open(opened: Page, width: int) -> None:
    """WCAG 2.2, 1.4.10."""
    made_wide(opened, width)
    assert opened.evaluate(SIDEWAYS) == [False]


@pytest.fixture(scope="module")
def large(chromium: Browser) -> Iterator[Browser]:
    """A browser whose reader chose letters of twice the size."""
    args = [*QUIET, "--blink-settings=defaultFontSize=32"]
    browser = chromium.browser_type.launch(executable_path=program(), args=args)
    yield browser
    browser.close()


@pytest.mark.parametrize("width", [390, 1280])
def test_letters_may_be_twice_as_large(large: Browser, site: Path, width: int) -> None:
    """WCAG 2.2, 1.4.4."""
    page = large.new_page(viewport={"width": width, "height": 844})
    for name in PAGES:
        page.goto(at(site, name))
        page.evaluate(OPEN)
        assert page.evaluate("getComputedStyle(document.documentElement).fontSize") == "40px"
        assert page.evaluate(SIDEWAYS) == [False], name
    page.close()


def test_nothing_moves_for_who_wants_no_motion(context: Callable[..., BrowserContext], site: Path) -> None:
    page = context(reduced_motion="reduce").new_page()
    page.goto(at(site, VISIT))
    moving: list[str] = page.evaluate("""() => Array.from(document.querySelectorAll("body, body *")).filter(item => {
      const look = getComputedStyle(item);
      return parseFloat(look.transitionDuration) > 0 || look.animationName !== "none" || look.scrollBehavior === "smooth";
    }).map(item => item.className)""")
    assert moving == []


def tab_to(page: Page, selector: str, most: int = 80) -> None:
    """Press Tab until an element has the focus."""
    for _ in range(most):
        if page.evaluate("selector => document.activeElement.matches(selector)", selector):
            return
        page.keyboard.press("Tab")
    pytest.fail(f"the keyboard does not come to {selector}")


def found_and_chosen(page: Page, site: Path) -> None:
    """A visit by keys alone, up to its start."""
    page.goto(at(site, "index.html"))
    tab_to(page, "#ut-query")
    page.keyboard.type("finch 16")
    expect(page.get_by_role("option").first).to_be_visible()
    page.keyboard.press("Enter")
    page.wait_for_url("**/finch-2014-2018.html*")
    tab_to(page, "input[name=job][value=dash]")
    page.keyboard.press("Space")
    tab_to(page, "input[name=variant-radio]")
    page.keyboard.press("ArrowDown")
    assert re.search("jobs=dash", page.url)


def test_a_visit_by_the_keyboard_alone(context: Callable[..., BrowserContext], site: Path) -> None:
    """Find, choose, do three steps, and back to the list. Nothing is clicked."""
    page = context(viewport={"width": 1280, "height": 900}).new_page()
    found_and_chosen(page, site)
    tab_to(page, "#ut-start", 200)
    page.keyboard.press("Enter")
    dialog = page.get_by_role("dialog", name="One step at a time")
    expect(dialog).to_be_visible()
    for step in range(1, 4):
        expect(page.locator(".ut-screen-where")).to_contain_text(str(step))
        tab_to(page, ".ut-done")
        while page.locator(".ut-done").text_content() == "Read on first":
            page.keyboard.press("Enter")
        page.keyboard.press("Enter")
        assert page.evaluate("document.activeElement.tagName") == "H2", "the new step's heading is read out"
    page.keyboard.press("Escape")
    expect(dialog).to_be_hidden()
    assert page.locator("[data-tick]:checked").count() == 3


def test_what_changes_is_announced(phone: Page, site: Path) -> None:
    phone.goto(at(site, "index.html"))
    phone.get_by_label("Make, model, year").fill("finch")
    expect(phone.get_by_role("status").filter(has_text="Is this your car?")).to_be_attached()
    phone.goto(at(site, VISIT))
    expect(phone.locator("output[aria-live=polite]")).to_contain_text("steps")
