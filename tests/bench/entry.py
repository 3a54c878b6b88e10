"""Enters a car that is in no file by a phone's pages without signal, answers all that it wants to know, and counts what that took.

`make bench ARGS=--entry` prints taps, letters, answers, check runs, and the minutes that they come to at a stated speed. What the installer found is made up; it is
answered as one would who has the panels off. The time beside the car, to look and to measure, is not in it.
"""

import os
import re
import shutil
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from herd import ROOT
from playwright.sync_api import Browser, Locator, Page, sync_playwright

from undertrim import cli
from undertrim.derive.questions import questions
from undertrim.publish.build.building import build
from undertrim.record import claims
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

sys.path.append(str(ROOT / "tests" / "browser"))

LETTERS_A_MINUTE = 36.2 * 5
"""On a phone, at five letters a word: the mean of 37,370 people (Palin, Feit, Kim, Kristensson, Oulasvirta 2019, MobileHCI '19)."""
SECONDS_A_TAP = 1.2
"""To find and touch something. A default of ours, no source."""
WANTED = 9.0
"""Minutes of typing that it may take."""

NAME = "brindleway/heron-2015-2019"
LINES = {"by": "rk", "with": "Calliper 0.05 mm", "make": "Brindleway", "model": "Heron", "tell": "Grey grille", "from": "2015-02", "to": "2018-12", "year": "2016"}  # fmt: skip
CAR = ("Hatchback", "Left-hand drive", "A radio two slots high", "Front door", "Rear door")
SIZES = {"Wait": "3", "Width": "182", "Height": "111", "Clear depth": "68", "Diameter": "146", "Circle diameter": "160", "Room to the grille": "22", "Impedance": "4",
    "Depth": "200", "Length": "0.3", "From the battery": "0.3", "Least load": "4"}  # fmt: skip
"""What was measured, by the name of the field; in the unit that the page offers first."""
PANEL = {"Width": "190", "Height": "184"}
"""Of the flat panel round a hole."""
WORDS = {"Memory keeper": "forbidden", "Read faults first": "yes", "Crash pressure sensor": "no", "Underneath": "nothing", "Restraint module near": "no", "Net of 48 V": "no",
    "Kit": "needed", "Shape": "round", "Pattern": "circle", "Datum": "skin", "Over": "whole travel", "Obstruction": "glass", "Surface": "metal", "Fixings": "screws", "Air": "open",
    "Paint": "yes", "Switched on by": "wire", "Output": "speaker"}  # fmt: skip
NONE = ("Leans", "Factory spacer")
FREE = {"At": "Left seat bolt", "Nut": "hex 10 mm", "Screw": "T20", "Count": "4"}
WIRES = {"battery feed": "yellow, pin 4", "switched feed": "red, pin 7", "ground": "black, pin 8", "illumination": "orange, pin 6", "reverse": "data", "speed": "data",
    "parking brake": "absent", "wheel buttons": "data", "antenna feed": "blue, pin 5"}  # fmt: skip
"""Where a wire is, or how else the car provides a function; what is not here is not there."""


@dataclass(slots=True)
class Hand:
    """A finger, which counts."""

    page: Page
    taps: int = 0
    letters: int = 0
    seen: list[str] = field(default_factory=list)

    def tap(self, what: Locator) -> None:
        """Touch it."""
        what.tap()
        self.taps += 1

    def write(self, where: Locator, text: str) -> None:
        """Touch it and type."""
        if where.input_value() != text:
            self.tap(where)
            where.fill(text)
            self.letters += len(text)

    def on(self) -> None:
        """To the next screen."""
        self.page.locator(
            ".ut-screen-top p"
        ).tap()  # elsewhere first, uncounted: a finger as fast as this one counts as one that bounced
        self.tap(self.page.locator(".ut-asking .ut-done"))
        wrong = self.page.locator(".ut-asking .ut-screen-answer")
        if self.page.locator(".ut-asking[open]").count() and wrong.text_content():
            raise AssertionError(f"{self.page.locator('.ut-asking h2').text_content()}: {wrong.text_content()}")


@dataclass(frozen=True, slots=True)
class Entry:
    """What entering a car came to; `left` are its questions that are still open, `refused` the answers that were not taken, `errors` what the check finds."""

    taps: int
    letters: int
    answers: int
    checks: int
    refused: int
    errors: int
    left: int

    @property
    def minutes(self) -> float:
        """Of typing and touching."""
        return self.letters / LETTERS_A_MINUTE + self.taps * SECONDS_A_TAP / 60


def entry() -> int:
    """Print what it came to; 1 if it is more than is wanted, or not a whole record."""
    with tempfile.TemporaryDirectory() as held:
        found = entered(Path(held))
    for name in ("taps", "letters", "answers", "checks", "refused", "errors", "left"):
        sys.stdout.write(f"{name:<12}{getattr(found, name):>8}\n")
    speed = f"at {LETTERS_A_MINUTE:.0f} letters a minute and {SECONDS_A_TAP} s a tap; wanted at most {WANTED:.0f}"
    sys.stdout.write(f"{'minutes':<12}{found.minutes:>8.1f}  {speed}\n")
    return int(found.minutes > WANTED or bool(found.refused or found.errors or found.left))


def entered(root: Path) -> Entry:
    """A car described on a phone and taken into an empty collection, then its questions answered on its page and taken too."""
    from browsing import PROGRAMS, QUIET

    (root / "records/vehicles").mkdir(parents=True)
    shutil.copy(ROOT / "undertrim.toml", root)
    shutil.copytree(ROOT / "records/handbook", root / "records/handbook")
    shutil.copytree(ROOT / "records/vehicles/kelbrook", root / "records/vehicles/kelbrook")
    with sync_playwright() as playwright, _in(root):
        browser = playwright.chromium.launch(executable_path=next(filter(None, map(shutil.which, PROGRAMS))), args=QUIET)  # fmt: skip
        first = _hand(browser, _built(root), "new-car.html")
        described = _described(first, root)
        begun = cli.main(["take", str(described)])
        second = _hand(browser, _built(root), f"vehicles/{NAME}.questions.html")
        file = _answered(second, root)
        browser.close()
        refused = cli.main(["take", str(file)])
        errors = cli.main(["check"])
    made = Workspace(root).load(root / f"records/vehicles/{NAME}.yaml")
    assert isinstance(made.record, VehicleRecord)
    left = [one.about for one in questions(made.record, made.source) if one.fields]
    answers = len(claims.read(file).answers)
    return Entry(
        first.taps + second.taps, first.letters + second.letters, answers, 1, begun + refused, errors, len(left)
    )


@contextmanager
def _in(root: Path) -> Iterator[None]:
    before = Path.cwd()
    os.chdir(root)
    try:
        yield
    finally:
        os.chdir(before)


def _built(root: Path) -> Path:
    made = build(Workspace(root), root / "site", sheets=False, progress=lambda _: None)
    assert not made.report.errors, made.report.problems
    return root / "site"


def _hand(browser: Browser, site: Path, name: str) -> Hand:
    """A phone without signal, with the site in a folder."""
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True, locale="en", offline=True)
    page = context.new_page()
    page.goto((site / name).as_uri())
    return Hand(page)


def _described(hand: Hand, folder: Path) -> Path:
    hand.tap(hand.page.get_by_role("button", name="Describe this car"))
    while hand.page.locator(".ut-asking[open]").count():
        _lines(hand)
        for box in hand.page.locator(".ut-asking fieldset").all():
            picked = "Yes" if box.locator("legend").text_content() == "Boot or load space" else "No"
            for words in (picked, *CAR):
                exact = box.locator(".ut-pick").filter(has_text=re.compile(f"^{re.escape(words)}$", re.IGNORECASE))
                if exact.count():
                    hand.tap(exact)
        hand.on()
    return _saved(hand, folder)


def _lines(hand: Hand) -> None:
    for name, text in LINES.items():
        box = hand.page.locator(f".ut-asking [name={name}]")
        if box.count():
            hand.write(box, text)


def _answered(hand: Hand, folder: Path) -> Path:
    hand.tap(hand.page.get_by_role("button", name=re.compile("^Answer ")))
    while hand.page.locator(".ut-asking[open]").count():
        _lines(hand)
        for box in hand.page.locator(".ut-asked-field").all():
            if box.is_visible():
                _answer(hand, box)
        hand.on()
    return _saved(hand, folder)


def _answer(hand: Hand, box: Locator) -> None:
    """Give a field what was found."""
    title = box.locator("legend").first.text_content() or ""
    ask = hand.page.locator(".ut-asking h2").text_content() or ""
    wire = next((said for name, said in WIRES.items() if f"'{name}'" in ask), "absent")
    hand.seen.append(f"{ask}: {title}")
    if box.locator("input[value=maker]").count():
        hand.tap(box.locator(".ut-pick").filter(has=hand.page.locator("input[value=maker]")))
    elif title in NONE:
        hand.tap(box.locator(".ut-pick").filter(has_text="None there"))
    elif box.locator("input[inputmode=decimal]").count():
        sizes = SIZES | PANEL if "panel" in ask else SIZES
        if title in sizes:
            hand.write(box.locator("input[inputmode=decimal]"), sizes[title])
    elif title == "By":
        word = wire if wire in ("data", "absent") else "wire"
        hand.tap(box.locator(".ut-pick").filter(has=hand.page.locator(f"input[value={word}]")))
    elif title == "Where the wire is":
        hand.write(box.locator("input[type=text]"), wire)
    elif box.locator("input[type=text]").count():
        if title in FREE:
            hand.write(box.locator("input[type=text]").first, FREE[title])
    else:
        word = WORDS.get(title, "").replace(" ", "-")
        known = box.locator(".ut-pick").filter(has=hand.page.locator(f"input[value='{word}']"))
        hand.tap(known if known.count() else box.locator(".ut-pick").first)


def _saved(hand: Hand, folder: Path) -> Path:
    with hand.page.expect_download() as download:
        hand.tap(hand.page.get_by_role("button", name="Save as a file"))
    path = folder / download.value.suggested_filename
    download.value.save_as(path)
    return path
