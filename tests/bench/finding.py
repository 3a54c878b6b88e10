"""Measures the finder in large collections: what is sent from the first page to a found vehicle, and how long a keystroke takes on a slow phone.

`make bench ARGS=--finder` builds the site of the shipped records, puts an index of as many invented vehicles beside them, and types. No vehicle of these has
a page: the one that is found is a shipped one. A keystroke is measured from the press to the end of the frame that shows its answer.
"""

import random
import shutil
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from herd import ROOT
from playwright.sync_api import Browser, Page, sync_playwright
from sizes import sent

from undertrim.publish.build.building import build
from undertrim.publish.encoding import said
from undertrim.publish.facts import finding
from undertrim.publish.web import finder
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

sys.path.append(str(ROOT / "tests" / "browser"))

COLLECTIONS = (1000, 5000, 10000)
SLOWER = 4
TRIES = 3
"""The quickest counts: the others are longer by what else the machine did."""
TYPED = ("drover 17 radio", "bramble saloon 2021", "drover rhd front spaekers")

_PHASES, _MODELS = 3, 16
_SYLLABLES = [
    "ka",
    "lo",
    "mer",
    "vin",
    "dor",
    "ash",
    "el",
    "wick",
    "ton",
    "bra",
    "sel",
    "quor",
    "ny",
    "thal",
    "gre",
    "ost",
    "ruf",
    "im",
    "per",
    "zan",
    "hol",
    "fen",
    "mar",
    "due",
    "sk",
]
KEY = """([text]) => new Promise((done) => {
  const box = document.getElementById("ut-query"), began = performance.now(), after = new MessageChannel();
  after.port1.onmessage = () => done(performance.now() - began);
  box.value = text;
  box.dispatchEvent(new Event("input", { bubbles: true }));
  requestAnimationFrame(() => { after.port2.postMessage(0); });
})"""


def finding_figures() -> int:
    """Print a line for each size of collection, below what is wanted."""
    heads = ("first, KB", "piece, KB", "to a found car, KB", "longest key, ms", "median key, ms")
    row = "{:<16}" + "{:>20}" * len(heads) + "\n"
    sys.stdout.write(row.format("vehicles", *heads) + row.format("wanted at most", "", "", "150", "50 at 5,000", ""))
    for size, figures in measured():
        sys.stdout.write(row.format(size, *figures))
    return 0


def measured() -> Iterator[tuple[int, tuple[str, ...]]]:
    """The figures by the size of the collection, in a Chromium."""
    from browsing import PROGRAMS, QUIET

    with tempfile.TemporaryDirectory() as held, sync_playwright() as playwright:
        out = Path(held) / "site"
        build(Workspace(ROOT), out, sheets=False, progress=lambda _: None)
        browser = playwright.chromium.launch(executable_path=next(filter(None, map(shutil.which, PROGRAMS))), args=QUIET)  # fmt: skip
        for size in COLLECTIONS:
            yield size, _of(browser, out, size)
        browser.close()


def _of(browser: Browser, out: Path, size: int) -> tuple[str, ...]:
    files = _index(out, size)
    pieces = [out / name for name in files if name != "finder/start.js"]
    way = _way(browser, out)
    keys = sorted(_keys(browser, out))
    largest = max(map(sent, pieces), default=0)
    figures = (sent(out / "finder/start.js"), largest, sum(map(sent, way)))
    return (*(f"{value / 1000:.1f}" for value in figures), f"{keys[-1]:.0f}", f"{keys[len(keys) // 2]:.0f}")


def _index(out: Path, size: int) -> list[str]:
    """Put an index of so many vehicles beside what else the finder has; the names of its files."""
    for old in (out / "finder").glob("[0-9s]*.js"):
        old.unlink()
    files = finder.files(vehicles(size))
    for name, text in files.items():
        (out / name).write_text(text, encoding="utf-8")
    return list(files)


def vehicles(size: int) -> list[finder.Entry]:
    """The shipped vehicles, and invented ones that are like them but for their names, years and how to tell them."""
    place, chance = Workspace(ROOT), random.Random(size)  # noqa: S311 - names that are the same every time
    entries = [place.load(path) for path in place.files([place.records / "vehicles"])]
    shipped = [said(list(finding.row(entry.record, entry.address))) for entry in entries if isinstance(entry.record, VehicleRecord)]  # fmt: skip
    found = list(shipped)
    while len(found) < size:
        found += _make(shipped, chance)
    return found[:size]


def _make(shipped: list[finder.Entry], chance: random.Random) -> Iterator[finder.Entry]:
    make = _word(chance, 3)
    for model in {_word(chance, 2) + chance.choice(["", "", f" {chance.randint(1, 9)}"]) for _ in range(_MODELS)}:
        year = chance.randint(1990, 2010)
        for _ in range(_PHASES):
            like = list(chance.choice(shipped))
            like[:5] = [f"{make}/{model}-{year}-{year + 5}".lower().replace(" ", "-"), make, model, year, year + 5]
            like[6:9] = [[], f"{year}-{chance.randint(1, 12):02}", f"{year + 5}-{chance.randint(1, 12):02}"]
            like[11] = " ".join(_word(chance, 2) for _ in range(8))
            yield like
            year += 5


def _word(chance: random.Random, syllables: int) -> str:
    return "".join(chance.choices(_SYLLABLES, k=syllables)).capitalize()


def _way(browser: Browser, out: Path) -> set[Path]:
    """The files of the site that are asked for from the first page until a vehicle's page is there."""
    page = browser.new_page()
    asked: set[Path] = set()
    page.on("request", lambda request: asked.add(_file(out, request.url)))
    page.goto((out / "index.html").as_uri())
    for end in range(1, len(TYPED[0]) + 1):
        page.evaluate(KEY, [TYPED[0][:end]])
    page.locator(".ut-hit-vehicle", has_text="Ashgrove Drover").wait_for()
    page.wait_for_load_state("networkidle")
    page.locator("#ut-query").press("Enter")
    page.wait_for_url("**/drover-2015-2020.html*")
    page.wait_for_load_state("networkidle")
    page.close()
    return {path for path in asked if path.is_file()}


def _file(out: Path, address: str) -> Path:
    return out / address.removeprefix(out.as_uri() + "/").partition("?")[0]


def _keys(browser: Browser, out: Path) -> Iterator[float]:
    """How long each keystroke took, the quickest of some tries, with all pieces here that what is typed asks for."""
    page = browser.new_page(viewport={"width": 390, "height": 844})
    page.goto((out / "index.html").as_uri())
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    for text in TYPED:
        _typed(page, text)
        page.wait_for_load_state("networkidle")
        tries = [list(_typed(page, text)) for _ in range(TRIES)]
        yield from map(min, zip(*tries, strict=True))
    page.close()


def _typed(page: Page, text: str) -> list[float]:
    return [page.evaluate(KEY, [text[:end]]) for end in range(1, len(text) + 1)]
