"""What axe-core (Deque Systems, https://github.com/dequelabs/axe-core) finds on each kind of page: nothing. The keyboard shows where it is."""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from axe_faults import faults
from browsing import ROOT
from playwright.sync_api import BrowserContext, Page
from serving import serving

from undertrim.publish.build.building import build
from undertrim.record.store import Workspace
from undertrim.words import ENGLISH
from undertrim.words.language import language, speaking, tags

PAGES = [
    "index.html",
    "makes/harrowby.html",
    "vehicles/kelbrook/finch-2014-2018.html?jobs=dash&radio=map",
    "vehicles/wexcombe/plover-2017-2022.openings.html",
    "vehicles/wexcombe/plover-2017-2022.wiring.html",
    "vehicles/kelbrook/finch-2014-2018.html?jobs=gone",
    "vehicles/kelbrook/finch-2014-2018.record.html",
    "safety.html",
    "writing-a-record.html",
    "rules/index.html",
    "rules/year-range.html",
    "reference/index.html",
    "calculators.html",
    "gear/pellworth-combe-52.html",
    "measuring.html",
    "glossary.html",
    "evidence/people.html",
    "nowhere.html",
    "vehicles/ashgrove/drover-2015-2020.questions.html",
    "new-car.html",
]

SPANISH = [
    f"es/{name}"
    for name in PAGES
    if name not in (PAGES[5], "writing-a-record.html", "rules/index.html", "reference/index.html")
]
"""Every kind of page once more: longer words, and a record's own in another language."""
COLOURED = [PAGES[0], *PAGES[2:6], "writing-a-record.html", "calculators.html"]
"""Pages that between them have every coloured thing of the site."""


@pytest.fixture(scope="module")
def served(site: Path) -> Iterator[str]:
    with serving(site, little=True) as made:
        yield made.at("")


def everything_open(page: Page) -> None:
    page.evaluate("document.querySelectorAll('details').forEach(item => { item.open = true; })")


@pytest.mark.parametrize(
    ("name", "scheme"), [*((name, "light") for name in (*PAGES, *SPANISH)), *((name, "dark") for name in COLOURED)]
)
def test_axe_finds_nothing(context: Callable[..., BrowserContext], served: str, name: str, scheme: str) -> None:
    language = "es-ES" if name in SPANISH else "en-US"
    page = context(viewport={"width": 390, "height": 844}, color_scheme=scheme, locale=language).new_page()
    page.goto(served + name)
    assert faults(page, whole=scheme == "light") == []


@pytest.mark.parametrize(
    "name",
    [
        "vehicles/kelbrook/finch-2014-2018.openings.html",
        "vehicles/kelbrook/finch-2014-2018.wiring.html",
        "vehicles/kelbrook/finch-2014-2018.record.html",
        "calculators.html",
    ],
)
def test_axe_finds_nothing_in_what_is_folded_away(phone: Page, served: str, name: str) -> None:
    phone.goto(served + name)
    everything_open(phone)
    assert faults(phone) == []


def test_axe_finds_nothing_in_what_the_finder_shows(phone: Page, served: str) -> None:
    phone.goto(served)
    phone.get_by_role("combobox").fill("finch")
    phone.get_by_role("option").first.wait_for()
    assert faults(phone) == []


def over_a_step(page: Page) -> None:
    page.locator("#ut-start").click()
    page.locator(".ut-screen").wait_for()


def where_gear_is_chosen(page: Page) -> None:
    page.locator(".ut-gear-toggle").first.click()
    page.locator(".ut-gear-pick").first.wait_for()


def in_the_report(page: Page) -> None:
    page.locator("#ut-desk > summary").click()
    page.locator("#ut-desk button").first.click()
    page.locator(".ut-report").wait_for()


def where_something_is_not_so(page: Page) -> None:
    page.locator(".ut-not-so button").last.click()
    for name in ("says", "with", "by"):
        page.locator(f".ut-claim [name={name}]").fill("2")
    page.locator(".ut-claim [type=submit]").click()
    page.locator(".ut-claim .ut-kept").wait_for()


def where_a_word_is_explained(page: Page) -> None:
    page.locator(".ut-term").first.click()
    page.locator(".ut-meaning").wait_for()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize(
    "there", [over_a_step, where_gear_is_chosen, in_the_report, where_a_word_is_explained, where_something_is_not_so]
)
def test_axe_finds_nothing_in_what_opens(
    context: Callable[..., BrowserContext], served: str, there: Callable[[Page], None], scheme: str
) -> None:
    page = context(viewport={"width": 390, "height": 844}, color_scheme=scheme).new_page()
    page.goto(served + PAGES[2])
    there(page)
    assert faults(page) == []


def test_axe_finds_nothing_in_what_opens_in_spanish(context: Callable[..., BrowserContext], served: str) -> None:
    """One after the other on one page, since the look is that of the other language."""
    page = context(viewport={"width": 390, "height": 844}, locale="es-ES").new_page()
    page.goto(f"{served}es/{PAGES[2]}")
    for there in (where_gear_is_chosen, in_the_report, where_something_is_not_so, over_a_step):
        there(page)
        assert faults(page) == [], there.__name__
        page.keyboard.press("Escape")


@pytest.fixture(scope="module", params=[tag for tag in tags() if tag != ENGLISH.tag])
def told_otherwise(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site of the first make's vehicles in each other language there is."""
    root, out = tmp_path_factory.mktemp("records"), tmp_path_factory.mktemp("told") / "site"
    shutil.copytree(ROOT / "records/vehicles/harrowby", root / "records/vehicles/harrowby")
    with speaking(language(request.param)):
        assert not build(Workspace(root), out, sheets=False, progress=lambda _: None).report.errors
    return out


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_in_another_language(
    context: Callable[..., BrowserContext], told_otherwise: Path, scheme: str
) -> None:
    page = context(viewport={"width": 390, "height": 844}, color_scheme=scheme).new_page()
    vehicle = next(path for path in sorted(told_otherwise.glob("vehicles/*/*.openings.html"))).with_suffix("").stem
    place = told_otherwise / "vehicles/harrowby"
    for name in ("index.html", "calculators.html", "measuring.html"):
        page.goto((told_otherwise / name).as_uri())
        assert faults(page) == [], name
    for view in (f"{vehicle}.openings.html", f"{vehicle}.wiring.html", f"{vehicle}.record.html", f"{vehicle}.html"):
        page.goto((place / view).as_uri())
        assert faults(page) == [], view
    page.locator("input[name=job]").first.check()
    over_a_step(page)
    assert faults(page) == []


SPOILED = """(look) => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(look);
  document.adoptedStyleSheets.push(sheet);
}"""


@pytest.mark.parametrize(
    ("name", "look"), [(PAGES[2], "#ut-steps p { color: #bbb }"), (PAGES[3], "summary { color: #aaa }")]
)
def test_a_pale_text_is_found_wherever_it_stands(phone: Page, served: str, name: str, look: str) -> None:
    phone.goto(served + name)
    phone.evaluate(SPOILED, look)
    assert [found for found in faults(phone, whole=False) if found.startswith("color-contrast: ")] != []


# What has the focus, or the label that stands for a control of which nothing is seen, and how it is marked.
MARKED = """() => {
  const at = document.activeElement;
  if (!at || at === document.body) return null;
  const hidden = getComputedStyle(at).opacity === "0" || at.offsetWidth === 0;
  const shown = hidden && at.labels && at.labels[0] ? at.nextElementSibling || at.labels[0] : at;
  const look = getComputedStyle(shown);
  return {
    name: at.tagName + " " + (at.id || at.className || at.textContent.trim().slice(0, 30)),
    marked: look.outlineStyle !== "none" && parseFloat(look.outlineWidth) >= 2 && !/, 0\\)$/.test(look.outlineColor),
  };
}"""


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize(
    "name",
    ["index.html", PAGES[2], PAGES[3], "safety.html", "rules/index.html", "calculators.html"],
)  # WCAG 2.2, 2.4.7
def test_the_keyboard_shows_where_it_is(
    context: Callable[..., BrowserContext], served: str, name: str, scheme: str
) -> None:
    page = context(viewport={"width": 1280, "height": 900}, color_scheme=scheme).new_page()
    page.goto(served + name)
    seen = []
    for _ in range(60):
        page.keyboard.press("Tab")
        if found := page.evaluate(MARKED):
            seen.append(found)
    assert len(seen) > 5
    assert [found["name"] for found in seen if not found["marked"]] == []
