"""What is found out about gear: from its page, from the list of what fits and from the report of a job, to a claim that is as its schema says."""

import json
from pathlib import Path
from typing import Any

from in_bay import FINCH, start
from playwright.sync_api import Page, expect

from undertrim.record import claims

GEAR, OPENINGS = "gear/sandmartin-sprit-65.html", "vehicles/kelbrook/finch-2014-2018.openings.html"
TRIED = "gear/tried/kelbrook/finch-2014-2018"


def saved(page: Page) -> list[dict[str, Any]]:
    """The answers of the file of all claims, which is as its schema says; each without its day."""
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    path = Path(str(download.value.path()))
    read = claims.read(path)
    assert (read.problems, read.bad) == ((), ())
    data = json.loads(path.read_text(encoding="utf-8"))
    shared = {name: value for name, value in data.items() if name in claims.SHARED}
    return [
        {name: value for name, value in {**shared, **one}.items() if name not in ("on", "car")}
        for one in data["answers"]
    ]


def say_no(page: Page, size: str, hit: str) -> None:
    page.get_by_role("radio", name="It did not go in").check()
    page.locator(".ut-claim [name=size]").select_option(size)
    page.locator(".ut-claim [name=hit]").fill(hit)
    page.locator(".ut-claim [name=by]").fill("rk")
    page.get_by_role("button", name="Keep it").click()


def test_a_size_that_is_not_so_is_a_claim_about_the_gear(phone: Page, site: Path) -> None:
    phone.goto((site / GEAR).as_uri())
    expect(phone.locator(".ut-conflict")).to_contain_text("47 mm (e1) or 48 mm (e3). Reckoned with 48 mm")
    phone.get_by_role("button", name="A size of it is not so").click()
    expect(phone.locator(".ut-claim h2")).to_have_text("A size of it is not so")
    expect(phone.locator(".ut-claim [name=year]")).to_be_hidden()
    phone.get_by_label("What is not so?").select_option("gear/magnet")
    for label, value in {"by": "rk", "with": "Calliper 0.05 mm", "says": "87 mm"}.items():
        phone.locator(f".ut-claim [name={label}]").fill(value)
    phone.get_by_role("button", name="Keep it").click()
    claim = {"gear": "sandmartin-sprit-65", "about": "gear/magnet", "says": "87 mm", "was": "84 mm"}
    assert saved(phone) == [claim | {"how": "measured", "by": "rk", "with": "Calliper 0.05 mm"}]


def from_its_page(page: Page, site: Path) -> None:
    page.goto((site / GEAR).as_uri())
    line = page.locator("#ut-places li").filter(has_text="Kelbrook Finch").filter(has_text="Front door")
    expect(line.locator(".ut-tried")).to_contain_text("Tried: it went in (rk, 2026-03-02, 2016")
    line.get_by_role("button").click()
    say_no(page, "depth", "Window glass")
    told = "sandmartin-sprit-65 did not go into kelbrook/finch-2014-2018/front-door"
    expect(page.locator(".ut-kept")).to_contain_text(told)


def from_what_fits(page: Page, site: Path) -> None:
    page.goto(f"{(site / OPENINGS).as_uri()}?jobs=front-door&radio=map")
    page.locator("#opening-front-door details.ut-stock > summary").tap()
    entry = page.locator("#opening-front-door [data-gear=tidewrack-bar-57]")
    expect(entry.locator("summary")).to_contain_text("Tried: it did not go in: basket, met: Edge of the hole")
    entry.locator("summary").tap()
    entry.get_by_role("button", name="I tried it here: Tidewrack Bar 57").click()
    page.get_by_role("button", name="Keep it").click()
    expect(page.locator(".ut-claim .ut-try-wrong")).to_have_text("Say whether it went in.")
    page.get_by_role("radio", name="It went in").check()
    expect(page.locator(".ut-claim [name=hit]")).to_be_hidden()
    page.get_by_role("button", name="Keep it").click()
    expect(page.locator(".ut-kept li")).to_have_count(2)


def from_the_report(page: Page, site: Path) -> None:
    start(page, site, f"{FINCH}&dash=skerrowe-broadside")
    page.get_by_role("button", name="List", exact=True).click()
    page.locator("#ut-desk > summary").click()
    page.locator("#ut-desk button").first.click()
    page.locator(".ut-report-tried").get_by_role("button", name="I tried it here: Skerrowe Broadside").click()
    say_no(page, "plug_room", "Heater pipe")


def test_gear_that_did_not_go_in_is_a_claim_from_wherever_it_is_shown(phone: Page, site: Path) -> None:
    for way in (from_its_page, from_what_fits, from_the_report):
        way(phone, site)
    first, second, third = saved(phone)
    by = {"how": "seen", "by": "rk"}
    assert first == {"gear": "sandmartin-sprit-65", "about": f"{TRIED}/front-door", "says": "no", "size": "depth", "hit": "Window glass", **by}  # fmt: skip
    assert second == {"gear": "tidewrack-bar-57", "about": f"{TRIED}/front-door", "says": "yes", **by}
    assert third == {"gear": "skerrowe-broadside", "about": f"{TRIED}/dash", "says": "no", "size": "plug_room", "hit": "Heater pipe", **by}  # fmt: skip
