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
from undertrim.words import Message, say

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


def test_amplifiers_are_ranked_with_what_feeds_them(phone: Page, site: Path) -> None:
    known = vehicle()
    place = next(one for one in known.record.openings.values() if one.kind == "amplifier")
    found = answer(known, place, None, {})
    phone.goto((site / FINCH).as_uri())
    phone.locator(f"#opening-{place.id} details.ut-stock > summary").tap()
    shown = phone.locator(f"#opening-{place.id} details.ut-stock details.ut-verdict")
    shown.first.wait_for()
    assert {one.get_attribute("data-gear") for one in shown.all()} == {fit.gear for one in found for fit in one.fits}
    feed = next(note for one in found for fit in one.fits for note in fit.notes if isinstance(note, Message) and note.code == "fit-amplifier/main")  # fmt: skip
    assert say(feed) in (phone.locator(f"#opening-{place.id} details.ut-stock").text_content() or "")


def test_with_scripts_off_the_page_says_where_the_stock_is_ranked(
    context: Callable[..., BrowserContext], site: Path
) -> None:
    bare = context(java_script_enabled=False).new_page()
    bare.goto((site / FINCH).as_uri())
    assert bare.get_by_text("ask where the records are: undertrim fit").is_visible()
    assert not bare.locator(LIST).is_visible()
