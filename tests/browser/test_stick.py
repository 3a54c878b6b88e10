"""The whole site in one file, opened from disk where nothing else is: find, choose, do, reload, go back; and nothing foreign runs in it."""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from in_bay import press
from playwright.sync_api import BrowserContext, Page, expect

from undertrim.publish.build import stick

WATCH = """
window.refused = [];
document.addEventListener("securitypolicyviolation", (event) => window.refused.push(event.violatedDirective + " " + event.blockedURI));
"""


@pytest.fixture(scope="module")
def packed(site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    file = tmp_path_factory.mktemp("stick of a shop") / "undertrim.html"
    file.write_text(stick.whole(site, "Undertrim"), encoding="utf-8")
    return file


@pytest.fixture
def opened(context: Callable[..., BrowserContext], packed: Path) -> Iterator[Page]:
    """The file in a browser; what goes wrong, and what is asked for beside the file, fails the test."""
    page = context(viewport={"width": 390, "height": 844}, has_touch=True).new_page()
    wrong: list[str] = []
    page.add_init_script(WATCH)
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.on(
        "request",
        lambda request: (
            None if request.url.startswith((packed.as_uri(), "data:", "blob:")) else wrong.append(request.url)
        ),
    )
    page.goto(packed.as_uri())
    yield page
    assert wrong == []
    assert page.evaluate("window.refused") == []


def found(page: Page) -> None:
    page.get_by_label("Make, model, year").fill("finch 16")
    page.get_by_role("option").first.wait_for()
    page.keyboard.press("Enter")
    page.get_by_role("heading", name="Kelbrook Finch").wait_for()


def chosen(page: Page) -> None:
    found(page)
    page.locator("input[name=job][value=dash]").check()
    page.locator("input[value=map]").check()


def test_a_visit_is_found_chosen_and_done(opened: Page) -> None:
    chosen(opened)
    assert "?jobs=dash&radio=map#/vehicles/kelbrook/finch-2014-2018.html" in opened.url
    opened.locator("#ut-start").click()
    press(opened)
    expect(opened.locator(".ut-screen-where")).to_contain_text("2")
    opened.reload()
    expect(opened.locator("#ut-start")).to_contain_text("2")
    assert opened.locator("input[name=job][value=dash]").is_checked()


def test_links_lead_to_its_pages_and_back(opened: Page) -> None:
    chosen(opened)
    opened.locator(".ut-views").get_by_role("link", name="Wiring").click()
    expect(opened).to_have_title("Kelbrook Finch 2014–2018: wiring - Undertrim")
    assert "?jobs=dash&radio=map#/vehicles/kelbrook/finch-2014-2018.wiring.html" in opened.url
    opened.go_back()
    expect(opened).to_have_title("Kelbrook Finch 2014–2018 - Undertrim")
    opened.locator(".ut-path a").first.click()
    expect(opened.get_by_label("Make, model, year")).to_be_visible()


def test_gear_and_what_is_not_so_are_packed_too(opened: Page) -> None:
    chosen(opened)
    opened.locator(".ut-gear-toggle").first.click()
    expect(opened.locator(".ut-gear-pick").first).to_be_visible()
    opened.get_by_role("button", name="Something here is not so on my car").click()
    expect(opened.get_by_role("dialog", name="Not so on my car")).to_be_visible()


def test_a_written_page_has_its_drawings_words_and_look(opened: Page, packed: Path) -> None:
    opened.goto("about:blank")
    opened.goto(f"{packed.as_uri()}#/how-to-measure.html#room-to-the-grille")
    opened.locator(".ut-term").first.click()
    expect(opened.locator(".ut-meaning")).to_be_visible()
    assert opened.locator(".ut-sketch svg").count() > 6
    assert opened.evaluate("getComputedStyle(document.querySelector('.ut-book h2')).borderTopWidth") == "3px"


def test_a_sheet_or_data_of_a_vehicle_opens(opened: Page, packed: Path) -> None:
    opened.goto("about:blank")
    opened.goto(f"{packed.as_uri()}#/vehicles/kelbrook/finch-2014-2018.record.html")
    with opened.expect_popup() as popup:
        opened.get_by_role("link", name="Data").first.click()
    assert popup.value.url.startswith("blob:")


def test_it_is_in_each_language(context: Callable[..., BrowserContext], packed: Path) -> None:
    """Who reads another language is led to it, finds and does in it, and finds the way back."""
    page = context(viewport={"width": 390, "height": 844}, has_touch=True, locale="es-MX").new_page()
    page.goto(f"{packed.as_uri()}#/safety.html")
    page.wait_for_url("**#/es/safety.html")
    page.get_by_role("combobox").fill("finch 16")
    page.get_by_role("option").first.wait_for()
    page.keyboard.press("Enter")
    page.wait_for_url("**#/es/vehicles/kelbrook/finch-2014-2018.html")
    page.locator("input[name=job][value=dash]").check()
    page.locator("#ut-start").click()
    expect(page.locator(".ut-done")).to_have_text("Hecho")
    page.locator(".ut-screen-top button").click()
    page.locator(".ut-languages a").click()
    expect(page.locator("html")).to_have_attribute("lang", "en")
    assert page.url.endswith("?jobs=dash#/vehicles/kelbrook/finch-2014-2018.html")
    expect(page.locator("input[name=job][value=dash]")).to_be_checked()


INTRUDERS = {
    "in place": "<script>window.intruded = 1</script>",
    "beside it": '<script src="beside.js"></script>',
    "handler": '<img src="data:," onerror="window.intruded = 1">',
}


@pytest.mark.parametrize("what", INTRUDERS)
def test_what_gets_into_the_file_does_not_run(
    context: Callable[..., BrowserContext], packed: Path, tmp_path: Path, what: str
) -> None:
    (tmp_path / "beside.js").write_text("window.intruded = 1;", encoding="utf-8")
    file = tmp_path / "undertrim.html"
    shutil.copy(packed, file)
    file.write_text(file.read_text(encoding="utf-8").replace("</body>", INTRUDERS[what] + "</body>"), encoding="utf-8")
    page = context().new_page()
    page.goto(file.as_uri())
    page.get_by_label("Make, model, year").wait_for()
    assert page.evaluate("window.intruded") is None


def test_without_scripts_it_says_what_it_needs(context: Callable[..., BrowserContext], packed: Path) -> None:
    page = context(java_script_enabled=False).new_page()
    page.goto(packed.as_uri())
    expect(page.get_by_text("All pages are packed in this file.")).to_be_visible()
