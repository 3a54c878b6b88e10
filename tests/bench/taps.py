"""Measures what somebody with a phone waits for: from a found vehicle to the first step of a receiver and both front doors.

`make bench ARGS=--taps` prints a line for each shipped vehicle. A tap is measured from the press to the end of the frame that shows its answer, on a processor slowed
down four times. A vehicle without such openings takes what it has first.
"""

import gzip
import io
import shutil
import sys
import tempfile
from base64 import b64decode
from collections.abc import Iterator
from dataclasses import astuple, dataclass
from pathlib import Path

from herd import ROOT
from playwright.sync_api import Browser, Page, sync_playwright
from pypdf import PdfReader

from undertrim.publish.build.building import build
from undertrim.record.store import Workspace

sys.path.append(str(ROOT / "tests" / "browser"))

SLOWER = 4
TRIES = 3
"""The quickest counts: the others are longer by what else the machine did."""

HEADS = ("taps", "longest, ms", "elements before", "in the visit", "sent, B", "pages", "no scrolling")
WANTED = ("4", "100", "1400", "3000", "150000", "10", "yes")
TAP = """(box) => new Promise((done) => {
  const began = performance.now(), after = new MessageChannel();
  after.port1.onmessage = () => done(performance.now() - began);
  box.click();
  requestAnimationFrame(() => { after.port2.postMessage(0); });
})"""
ELEMENTS = "document.getElementsByTagName('*').length"
SHOWN = "((step) => step.top >= 0 && step.bottom <= innerHeight)(document.querySelector('.ut-screen h2').getBoundingClientRect())"


@dataclass(frozen=True, slots=True)
class Walk:
    """One vehicle: taps after its name is typed, the longest in ms, elements before and in the visit, bytes sent, pages of the print, and whether the first step is on the screen."""

    taps: int
    longest: int
    before: int
    within: int
    sent: int
    pages: int
    shown: str


def taps() -> int:
    """Print a line for each shipped vehicle, below what is wanted."""
    row = "{:<28}" + "{:>16}" * len(HEADS) + "\n"
    sys.stdout.write(row.format("vehicle", *HEADS) + row.format("wanted at most", *WANTED))
    for name, walk in walks(ROOT):
        sys.stdout.write(row.format(name, *astuple(walk)))
    return 0


def walks(root: Path) -> Iterator[tuple[str, Walk]]:
    """Every vehicle of a collection by its address, in each language of its site, in a Chromium."""
    from browsing import PROGRAMS, QUIET

    with tempfile.TemporaryDirectory() as held, sync_playwright() as playwright:
        out = Path(held) / "site"
        build(Workspace(root), out, sheets=False, progress=lambda _: None)
        browser = playwright.chromium.launch(executable_path=next(filter(None, map(shutil.which, PROGRAMS))), args=QUIET)  # fmt: skip
        for path in sorted([*out.glob("vehicles/*/*.html"), *out.glob("*/vehicles/*/*.html")]):
            if "." not in path.stem:
                place = path.relative_to(out).parts[0].replace("vehicles", "")
                every = [walk(browser, path, place or "en") for _ in range(TRIES)]
                yield f"{place} {path.parent.name}/{path.stem}".strip(), min(every, key=lambda one: one.longest)
        browser.close()


def walk(browser: Browser, path: Path, locale: str) -> Walk:
    """One vehicle on a phone on which nothing is kept, and whose browser is in the language of the page."""
    page = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True, locale=locale).new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(path.as_uri())
    slowed = page.context.new_cdp_session(page)
    slowed.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    before, taken = page.evaluate(ELEMENTS), list(tapped(page))
    page.wait_for_timeout(500)  # until it has scrolled by itself
    slowed.send("Emulation.setCPUThrottlingRate", {"rate": 1})
    found = Walk(
        taps=1 + len(taken),  # the first is on the vehicle's name
        longest=round(max(taken)),
        before=before,
        within=page.evaluate(ELEMENTS),
        sent=sum(map(sent, asked)),
        pages=pages(page),
        shown="yes" if page.evaluate(SHOWN) else "no",
    )
    page.context.close()
    return found


def tapped(page: Page) -> Iterator[float]:
    """How long each tap takes in ms."""
    every = page.locator(".ut-jobs > .ut-pick input, .ut-jobs .ut-both input")
    usual = page.locator("input[name=job][value=dash], [data-both=front-door]")
    for box in (usual if usual.count() == 2 else every).all()[:2]:
        yield box.evaluate(TAP)
    yield page.locator("#ut-start").evaluate(TAP)


def sent(url: str) -> int:
    """The bytes of a file of the site, packed as servers do."""
    path = Path(url.partition("?")[0].removeprefix("file://"))
    return len(gzip.compress(path.read_bytes())) if path.is_file() else 0


def pages(page: Page) -> int:
    """How many sheets of A4 the browser prints of it."""
    session = page.context.new_cdp_session(page)
    made = session.send("Page.printToPDF", {"preferCSSPageSize": True, "paperWidth": 8.27, "paperHeight": 11.69})
    return len(PdfReader(io.BytesIO(b64decode(made["data"]))).pages)
