"""How tests answer what a car still wants to know: by touch, one question after another, and what is then on the device."""

import json
import re
from pathlib import Path
from typing import Any

from browsing import ROOT
from playwright.sync_api import Download, Page

from undertrim.record import claims
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

DABCHICK = "vehicles/wexcombe/dabchick-2015-2018"
DROVER = "vehicles/ashgrove/drover-2015-2020"
NEXT, HEAD, WRONG = ".ut-asking .ut-done", ".ut-asking h2", ".ut-asking .ut-screen-answer"
FINCH, BRAMBLE = "vehicles/kelbrook/finch-2014-2018", "vehicles/orlock/bramble-2019-2023"
NUMBERS = {"Height": "140", "Alternator": "120", "Fuse": "15", "Supply": "5"}
PNG = ROOT / "records/vehicles/kelbrook/photos/finch-2014-2018/map-key.png"


def opened(page: Page, site: Path, vehicle: str = DABCHICK) -> None:
    page.goto((site / f"{vehicle}.questions.html").as_uri())
    page.get_by_role("button", name=re.compile("^Answer |^Go on")).tap()


def on(page: Page) -> None:
    """Next; elsewhere first, or a finger as fast as this one counts as one that bounced."""
    page.locator(".ut-screen-top p").tap()
    page.locator(NEXT).tap()


def introduced(page: Page, year: str = "", tool: str = "Calliper 0.05 mm", **choices: str) -> None:
    """Say who you are and which car it is; of a variant that is not named the first choice."""
    page.locator("[name=by]").fill("rk")
    page.locator("[name=with]").fill(tool)
    on(page)
    page.locator("[name=year]").fill(year)
    on(page)
    while page.locator(".ut-asking .ut-asked-field").count() == 0:
        chosen = choices.get(page.locator(HEAD).text_content() or "")
        picks = page.locator(".ut-asking .ut-pick")
        (picks.filter(has_text=chosen) if chosen else picks).first.tap()
        on(page)


def answered(page: Page) -> None:
    """Give the question on the screen an answer that its form lets stand."""
    for box in page.locator(".ut-asked-field:visible").all():
        if box.locator("input[inputmode=decimal]").count():
            box.locator("input[inputmode=decimal]").fill(
                NUMBERS.get(box.locator("legend").first.text_content() or "", "4")
            )
        elif box.locator(".ut-pick").filter(has_text="By a wire").count() and "speed" in (
            page.locator(HEAD).text_content() or ""
        ):
            box.locator(".ut-pick").filter(has_text="By a wire").tap()
            page.locator(".ut-asked-field:visible input[type=text]").fill(
                "Behind the glove box, white with a black tracer."
            )
        elif box.locator(".ut-pick").filter(has_text="Not there at all").count():
            box.locator(".ut-pick").filter(has_text="Not there at all").tap()
        elif box.get_by_text("From the maker", exact=False).count():
            box.locator("input[value=maker]").check()
        elif box.locator(".ut-pick").count():
            box.locator(".ut-pick").first.tap()


def saved(page: Page, folder: Path, files: int = 1) -> Path:
    """Save what the device holds; the claims file, which is as its schema says, beside its photographs."""
    got: list[Download] = []
    page.on("download", lambda one: got.append(one))
    with page.expect_event("download", lambda _: len(got) == files):
        page.get_by_role("button", name="Save as a file").tap()
    for one in got:
        one.save_as(folder / one.suggested_filename)
    read = claims.read(folder / "undertrim-claims.json")
    assert (read.problems, read.bad) == ((), ())
    return read.path


def kept(page: Page) -> list[dict[str, Any]]:
    return list(json.loads(page.evaluate("localStorage.getItem('undertrim:claims')") or "[]"))


def record(root: Path, vehicle: str) -> tuple[VehicleRecord, Any]:
    entry = Workspace(root).load(root / "records" / f"{vehicle}.yaml")
    assert isinstance(entry.record, VehicleRecord)
    return entry.record, entry.source
