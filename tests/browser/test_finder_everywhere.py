"""The box that finds on every page: VINs, which go nowhere, and what the site has besides vehicles."""

from collections.abc import Callable
from pathlib import Path

import pytest
from boxed import box, found
from playwright.sync_api import BrowserContext, Page, expect

from undertrim.record.identity import slug

# Numbers


def test_a_number_chooses_vehicle_and_variant(phone: Page, site: Path) -> None:
    phone.goto((site / "index.html").as_uri())
    assert found(phone, "00KFN1M20GX000001") == ["Kelbrook Finch"]
    said = phone.locator("#ut-said").inner_text()
    assert "model year 2016." in said
    assert "outside the United States" in said
    assert "This one: Map radio" in phone.get_by_role("option").inner_text()
    box(phone).press("Enter")
    phone.wait_for_url("**/finch-2014-2018.html?radio=map")


@pytest.mark.parametrize(
    ("number", "said"),
    [
        (
            "1M8GDM9AXKP042788",
            "model year 1989 or 2019",
        ),  # by the example beside the regulation; nobody knows the weight
        ("1M8GDM9A1KP042788", "position 9 should be X"),
        ("IM8GDM9AXKP042788", "no I, O or Q"),
        ("1M8GDM9AXKP042788", "No record here says how such a number begins"),
    ],
)
def test_a_number_that_is_no_shipped_vehicle_s(phone: Page, site: Path, number: str, said: str) -> None:
    phone.goto((site / "index.html").as_uri())
    box(phone).fill(number)
    expect(phone.locator("#ut-said")).to_contain_text(said)


NUMBER = "00KFN1M20GX000001"
EVERYTHING = "() => JSON.stringify([{...localStorage}, {...sessionStorage}, document.cookie, history.state, location.href, document.title])"


def test_a_number_goes_nowhere_and_stays_nowhere(context: Callable[..., BrowserContext], site: Path) -> None:
    """Whatever the browser asks for or keeps, it is not in it; and a page that comes back has forgotten it."""
    made = context()
    asked: list[str] = []
    made.on("request", lambda request: asked.append(f"{request.url} {request.post_data} {request.headers}"))
    page = made.new_page()
    page.goto((site / "index.html").as_uri())
    found(page, NUMBER)
    kept = [page.evaluate(EVERYTHING)]
    box(page).press("Enter")
    page.wait_for_url("**/finch-2014-2018.html*")
    kept += [page.evaluate(EVERYTHING), str(made.storage_state()), *asked]
    assert not [text for text in kept if "KFN1M2" in text.upper()]
    page.go_back()
    expect(box(page)).to_have_value("")


TRADE = {
    "ACC": "ACC, switched feed", "earth": "earth, ground", "christmas tree": "christmas tree, fir-tree clip", "pry": "pry tool, trim tool", "SWC": "SWC, wheel buttons",
    "permanent live": "permanent live, battery feed", "vapour barrier": "vapour barrier, door liner, shield", "loom": "loom, harness",
}  # fmt: skip
"""What people of the trade say, which stands first in the glossary. A tailgate or a head unit is first of all in some car."""


# On every page


def test_the_box_is_on_every_page_and_has_the_focus_on_the_first_alone(phone: Page, site: Path) -> None:
    for name in ("safety.html", "rules/index.html", "makes/harrowby.html", "vehicles/kelbrook/finch-2014-2018.html"):
        phone.goto((site / name).as_uri())
        expect(box(phone)).to_be_visible()
        expect(box(phone)).not_to_be_focused()
        assert found(phone, "drover") == ["Ashgrove Drover"]
    box(phone).press("Enter")
    phone.wait_for_url("**/vehicles/ashgrove/drover-2015-2020.html")


@pytest.mark.parametrize(
    ("query", "title", "place"),
    [
        ("airbags and belts", "Airbags and belts", "safety.html#airbags-and-belts"),
        ("bezel", "fascia, bezel, surround", "glossary.html#word-fascia-bezel-surround"),
        *((word.lower(), row, f"glossary.html#word-{slug(row)}") for word, row in TRADE.items()),
        ("depth-without-datum", "depth-without-datum", "rules/depth-without-datum.html"),
        ("depth without datum", "depth-without-datum", "rules/depth-without-datum.html"),
    ],
)
def test_the_same_box_finds_the_handbook_its_words_and_rules(phone: Page, site: Path, query: str, title: str, place: str) -> None:  # fmt: skip
    phone.goto((site / "index.html").as_uri())
    box(phone).fill(query)
    first = phone.get_by_role("option").first
    expect(first.locator("b")).to_have_text(title)
    assert str(first.get_attribute("href")).endswith(place)
    first.click()
    phone.wait_for_url(f"**/{place}")
    if "#" in place:
        assert phone.locator(f"[id='{place.partition('#')[2]}']").is_visible()


def test_a_word_of_a_text_leads_to_its_section(phone: Page, site: Path) -> None:
    phone.goto((site / "index.html").as_uri())
    box(phone).fill("licensed practice")
    expect(phone.get_by_role("group", name="Handbook").get_by_role("option", name="Safety")).to_be_visible()


@pytest.mark.parametrize(
    ("query", "title", "place"),
    [
        ("grey", "front right +", "finch-2014-2018.wiring.html?jobs=dash#pin-radio-main-1"),
        ("grey/black", "front right −", "finch-2014-2018.wiring.html?jobs=dash#pin-radio-main-2"),
        ("vent trim", "Upper vent trim", "finch-2014-2018.html?jobs=dash#step-remove%3Avent-trim"),
        ("main radio plug", "Main radio plug", "finch-2014-2018.wiring.html?jobs=dash#plug-radio-main"),
        ("rear door panel", "Rear door panel, left", "finch-2014-2018.html?jobs=dash#step-remove%3Arear-door-panel%40left"),
    ],
)  # fmt: skip
def test_on_a_vehicle_s_pages_it_finds_what_is_in_that_car(phone: Page, site: Path, query: str, title: str, place: str) -> None:  # fmt: skip
    phone.goto((site / "vehicles/kelbrook/finch-2014-2018.record.html").as_uri() + "?jobs=dash")
    box(phone).fill(query)
    first = phone.get_by_role("group", name="In this car").get_by_role("option").first
    expect(first.locator("b")).to_have_text(title)
    assert str(first.get_attribute("href")).endswith(place)
    first.click()
    phone.wait_for_url(f"**/{place}")
    expect(
        phone.locator(f"[id='{place.partition('#')[2].replace('%3A', ':').replace('%40', '@')}']")
    ).to_be_in_viewport()


def test_colours_keep_their_order(phone: Page, site: Path) -> None:
    """Base first: white with a red tracer is another wire than red with a white one."""
    phone.goto((site / "vehicles/kelbrook/finch-2014-2018.wiring.html").as_uri())
    box(phone).fill("grey/black")
    expect(phone.get_by_role("group", name="In this car")).to_be_visible()
    box(phone).fill("black/grey")
    expect(phone.get_by_role("group", name="In this car")).to_have_count(0)
