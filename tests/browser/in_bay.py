"""How tests go through a visit in the bay: one step at a time."""

from pathlib import Path
from typing import Any

from playwright.sync_api import Page

FINCH = "vehicles/kelbrook/finch-2014-2018.html?jobs=dash,front-door&radio=map"
OTHERS = [
    "vehicles/wexcombe/plover-2017-2022.html?jobs=dash,front-door",
    "vehicles/harrowby/sedge-2016-2021.html?jobs=dash,front-door",
]
WHERE, DONE, BACK, TRAY = ".ut-screen-where", ".ut-done", ".ut-back", ".ut-screen-tray"


def at(site: Path, name: str) -> str:
    path, _, words = name.partition("?")
    return f"{(site / path).as_uri()}?{words}"


def start(page: Page, site: Path, name: str = FINCH) -> None:
    page.goto(at(site, name))
    page.locator("#ut-start").click()


def press(page: Page) -> None:
    """Done, after every caution was read."""
    button = page.locator(DONE)
    while button.inner_text() == "Read on first":
        button.click()
    button.click()


def clear_waits(page: Page) -> None:
    """As if all that was done, and every clock that was started again, were of yesterday."""
    page.evaluate("""() => Object.keys(localStorage).filter((key) => key.startsWith("undertrim:visit:")).forEach((key) => {
      const kept = JSON.parse(localStorage[key]);
      [kept.waits, kept.done].forEach((times) => Object.keys(times).forEach((step) => { times[step] -= 86400000; }));
      localStorage[key] = JSON.stringify(kept);
    })""")


def kept(page: Page) -> dict[str, Any]:
    """The one visit that is kept."""
    found = page.evaluate(
        "Object.keys(localStorage).filter((key) => key.startsWith('undertrim:visit:')).map((key) => JSON.parse(localStorage[key]))"
    )
    assert len(found) == 1
    return dict(found[0])


def to_the_desk(page: Page, name: str = "") -> None:
    """From a step to what is done with the visit as a whole, which may get a name."""
    page.get_by_role("button", name="List", exact=True).click()
    page.locator("#ut-desk > summary").click()
    if name:
        page.get_by_label("What you call it").fill(name)
