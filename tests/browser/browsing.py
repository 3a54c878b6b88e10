"""A built site and a headless Chromium. Without one the tests are skipped, or fail where UNDERTRIM_BROWSER=required."""

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from undertrim.publish.build.building import build
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[2]
# The shell has the engine without the windows and services around it, and takes a sixth less time.
PROGRAMS = ["chromium-headless-shell", "chromium", "google-chrome"]
UNWANTED = [
    # What playwright leaves out too: the last such list is the one that counts.
    "AvoidUnnecessaryBeforeUnloadCheckSync", "DestroyProfileOnBrowserClose", "HttpsUpgrades", "HttpsFirstBalancedModeAutoEnable",
    "LensOverlay", "MediaRouter", "PaintHolding", "ThirdPartyStoragePartitioning", "AvoidCorsURLLoaderRestartOnRedirect",
    "TcpPortRandomizationWin", "OptimizationHints", "NetworkTimeServiceQuerying", "AimEnabled", "PreconnectToSearch",
    # Pages of the browser's own that every new context loads for an address bar that nobody sees: they took nine tenths of an empty page.
    "WebUIOmniboxPopup", "WebUIOmniboxFullPopup", "WebUIOmniboxAimPopup", "SpareRendererForSitePerProcess",
]  # fmt: skip
QUIET = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", f"--disable-features={','.join(UNWANTED)}",
]  # fmt: skip


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    for item in items:
        if item.path.is_relative_to(Path(__file__).parent):
            item.add_marker(pytest.mark.browser)


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site of the repository's records, without sheets."""
    out = tmp_path_factory.mktemp("built") / "site"
    made = build(Workspace(ROOT), out, sheets=False, progress=lambda _: None)
    assert not made.report.problems, made.report.problems
    return out


def program() -> str | None:
    """The browser of this machine."""
    return os.environ.get("UNDERTRIM_CHROMIUM") or next(filter(None, map(shutil.which, PROGRAMS)), None)


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    found = program()
    if not found:
        if os.environ.get("UNDERTRIM_BROWSER") == "required":
            pytest.fail("no Chromium on this machine, and UNDERTRIM_BROWSER=required")
        pytest.skip("no Chromium on this machine: install it, or name one in UNDERTRIM_CHROMIUM")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=found, args=QUIET)
        yield browser
        browser.close()


@pytest.fixture
def context(chromium: Browser) -> Iterator[Callable[..., BrowserContext]]:
    """Makes browser contexts with the given options and closes them."""
    made: list[BrowserContext] = []

    def make(**options: object) -> BrowserContext:
        made.append(chromium.new_context(**options))  # type: ignore[arg-type]
        return made[-1]

    yield make
    for one in made:
        one.close()


@pytest.fixture
def phone(context: Callable[..., BrowserContext]) -> Iterator[Page]:
    """A page of a phone's size with touch; an error in a script fails the test, at its end: who raises while the browser tells of
    something breaks off the talk with it, and with that every test that follows."""
    errors: list[str] = []
    page = context(viewport={"width": 390, "height": 844}, has_touch=True).new_page()
    page.on("pageerror", lambda error: errors.append(str(error)))
    yield page
    assert errors == [], "a script on the page failed"


def made_wide(page: Page, width: int, height: int = 844) -> None:
    """Another width, once the page has drawn itself for it."""
    page.set_viewport_size({"width": width, "height": height})
    page.evaluate("() => new Promise(drawn => requestAnimationFrame(() => requestAnimationFrame(drawn)))")
    assert page.evaluate("innerWidth") == width
