"""What a page must be for a gloved hand, poor light and poor signal: nothing from elsewhere, no sideways scroll, contrast, size."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from browsing import made_wide
from playwright.sync_api import BrowserContext, Page

PAGES = [
    "index.html",
    "makes/harrowby.html",
    "vehicles/kelbrook/finch-2014-2018.html",
    "vehicles/wexcombe/plover-2017-2022.html?jobs=dash,front-door",
    "vehicles/wexcombe/plover-2017-2022.openings.html",
    "vehicles/wexcombe/plover-2017-2022.wiring.html",
    "vehicles/wexcombe/plover-2017-2022.record.html",
    "rules/index.html",
    "reference/index.html",
]


@pytest.mark.parametrize("name", PAGES)
def test_asks_nothing_of_another_host(phone: Page, site: Path, name: str) -> None:
    asked: list[str] = []
    phone.on("request", lambda request: asked.append(request.url))
    phone.goto(f"{site.as_uri()}/{name}")
    phone.wait_for_load_state("networkidle")
    assert [url for url in asked if not url.startswith((site.as_uri(), "data:", "blob:"))] == []
    assert phone.evaluate("document.querySelectorAll('link[rel=preconnect], link[rel=dns-prefetch]').length") == 0


@pytest.mark.parametrize("name", PAGES)
def test_nothing_drags_the_page_sideways(context: Callable[..., BrowserContext], site: Path, name: str) -> None:
    page = context(viewport={"width": 320, "height": 800}).new_page()
    page.goto(f"{site.as_uri()}/{name}")
    for width in (320, 390, 1280):
        made_wide(page, width, 800)
        assert page.evaluate("document.documentElement.scrollWidth") <= width, width


OTHERS = ("openings", "wiring", "record")
"""A vehicle's pages beside that of the visit."""

CONTRAST = """(selector) => {
  const parse = text => text.match(/[\\d.]+/g).map(Number);
  const light = ([r, g, b]) => { const f = v => { v /= 255; return v <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; };
    return 0.2126 * f(r) + 0.7152 * f(g) + 0.0722 * f(b); };
  const ground = element => { for (let e = element; e; e = e.parentElement) { const c = parse(getComputedStyle(e).backgroundColor);
    if (c.length < 4 || c[3] > 0.99) return c; } return [255, 255, 255]; };
  return [...document.querySelectorAll(selector)].filter(e => e.offsetParent && e.textContent.trim()).map(e => {
    const a = light(parse(getComputedStyle(e).color)), b = light(ground(e));
    return [(Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05), e.className + ': ' + e.textContent.trim().slice(0, 30)];
  }).sort((x, y) => x[0] - y[0])[0];
}"""


READ = [
    (".ut-step .ut-title, .ut-step .ut-body p, .ut-step li, .ut-step b", 7.0),
    (".ut-signal, .ut-caution p", 7.0),
    (".ut p, .ut li, .ut dt, .ut dd, .ut td, .ut th, .ut small, .ut legend, .ut label, .ut h1, .ut h2, .ut h3", 4.5),
    (".ut a", 4.5),
]
"""What is read, and the least contrast of it: WCAG 2.2, 1.4.3 (4.5) and, for what is read in the bay, 1.4.6 (7)."""


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_contrast(context: Callable[..., BrowserContext], site: Path, scheme: str) -> None:
    page = context(viewport={"width": 390, "height": 844}, color_scheme=scheme).new_page()
    page.goto(f"{site.as_uri()}/vehicles/wexcombe/plover-2017-2022.html?jobs=dash,front-door")
    assert page.locator("body").get_attribute("data-md-color-scheme") == {"light": "default", "dark": "slate"}[scheme]
    pale = []
    for name in ("", *OTHERS):
        if name:
            page.goto(f"{site.as_uri()}/vehicles/wexcombe/plover-2017-2022.{name}.html")
        least = [(found, wanted) for selector, wanted in READ if (found := page.evaluate(CONTRAST, selector))]
        assert least, name
        pale += [(name, *found) for found, wanted in least if found[0] < wanted]
    assert pale == []


def test_what_is_pressed_is_large_enough_for_a_glove(phone: Page, site: Path) -> None:
    phone.goto(f"{site.as_uri()}/vehicles/kelbrook/finch-2014-2018.html?jobs=dash")
    assert phone.locator("#ut-start").evaluate("one => one.offsetHeight") >= 56
    heights = phone.evaluate(
        "[...document.querySelectorAll('.ut-pick, .ut-tick, .ut-button, .ut-views a')].filter(e => e.offsetParent).map(e => e.offsetHeight)"
    )
    assert min(heights) >= 48
    phone.goto((site / "index.html").as_uri())
    heights = phone.evaluate("[...document.querySelectorAll('.ut-makes a, #ut-query')].map(e => e.offsetHeight)")
    assert min(heights) >= 44


def test_without_scripts_everything_is_shown(context: Callable[..., BrowserContext], site: Path) -> None:
    page = context(viewport={"width": 390, "height": 844}, java_script_enabled=False).new_page()
    page.goto((site / "vehicles/kelbrook/finch-2014-2018.html").as_uri())
    html = (site / "vehicles/kelbrook/finch-2014-2018.html").read_text(encoding="utf-8")
    ids = re.findall(r'<li class="ut-step[^>]* id="step-([^"]+)"', html)
    assert len(ids) > 70
    assert page.locator(".ut-step:visible").count() == len(ids)
    assert page.locator(".ut-noscript").is_visible()
    page.goto((site / "index.html").as_uri())
    assert page.get_by_text("Scripts are off").is_visible()
    assert page.get_by_role("link", name="Kelbrook").is_visible()


def test_cautions_stand_before_the_step_they_guard(phone: Page, site: Path) -> None:
    phone.goto(f"{site.as_uri()}/vehicles/kelbrook/finch-2014-2018.html?jobs=dash")
    step = phone.locator("[id='step-remove:vent-trim']")
    caution, head = step.locator(".ut-caution").first.bounding_box(), step.locator(".ut-head").bounding_box()
    assert caution
    assert head
    assert caution["y"] < head["y"]
    signal = step.locator(".ut-signal").first
    assert signal.text_content() == "WARNING"
    assert signal.evaluate("one => getComputedStyle(one, '::before').content") == '"!"'
