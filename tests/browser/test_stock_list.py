"""What of the stock fits an opening is ranked on its page when somebody opens the list, as the program ranks it."""

from collections.abc import Callable
from pathlib import Path

from browsing import ROOT
from playwright.sync_api import BrowserContext, Page

from undertrim.check.shelf import stock
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.publish.facts.fit import verdict_words
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import say

FINCH = "vehicles/kelbrook/finch-2014-2018.openings.html"
LIST = "#opening-dash details.ut-stock"


def vehicle() -> Vehicle:
    entry = Workspace(ROOT).load(ROOT / "records/vehicles/kelbrook/finch-2014-2018.yaml")
    assert isinstance(entry.record, VehicleRecord)
    return Vehicle(entry.record, entry.address, stock(Workspace(ROOT)), clearances())


def test_the_list_has_the_stock_in_the_order_and_the_words_of_the_program(phone: Page, site: Path) -> None:
    known = vehicle()
    (found,) = answer(known, known.record.openings["dash"], None, {"radio": "map", "drive_side": "left"})
    phone.goto(f"{(site / FINCH).as_uri()}?jobs=dash&radio=map")
    assert phone.locator(".ut-verdict").count() == 0
    phone.locator(f"{LIST} > summary").tap()
    phone.locator(f"{LIST} .ut-verdict").first.wait_for()
    shown = phone.locator(f"{LIST} .ut-verdict").all()
    assert [one.get_attribute("data-gear") for one in shown] == [fit.gear for fit in found.fits]
    for one, fit in zip(shown, found.fits, strict=True):
        assert say(verdict_words(fit)) in one.locator("summary").inner_text()
        assert say(fit.reason) in one.locator("summary").inner_text()
    shown[0].locator("summary").tap()
    checks = shown[0].locator(".ut-checks tbody tr").all()
    assert [row.locator("th").inner_text().split(" ", 1)[1] for row in checks] == [say(one.words) for one in found.fits[0].checks]  # fmt: skip
    assert 'undertrim fit "finch-2014-2018?jobs=dash&radio=map"' in phone.locator(LIST).inner_text()


def test_a_kind_that_no_script_works_out_says_where_its_answer_is(phone: Page, site: Path) -> None:
    places = [one.id for one in vehicle().record.openings.values() if one.kind == "amplifier"]
    assert places
    phone.goto((site / FINCH).as_uri())
    for place in places:
        phone.locator(f"#opening-{place} details.ut-stock > summary").tap()
        told = phone.locator(f"#opening-{place} details.ut-stock")
        told.get_by_text("A page cannot work out whether it fits. Ask where the records are: undertrim fit").wait_for()
        assert told.locator(".ut-verdict").count() == 0


def test_with_scripts_off_the_page_says_where_the_stock_is_ranked(
    context: Callable[..., BrowserContext], site: Path
) -> None:
    bare = context(java_script_enabled=False).new_page()
    bare.goto((site / FINCH).as_uri())
    assert bare.get_by_text("ask where the records are: undertrim fit").is_visible()
    assert not bare.locator(LIST).is_visible()
