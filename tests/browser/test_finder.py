"""The finder: words in any order, times, jobs, slips of the finger, numbers, keyboard, and a collection large enough to be split."""

import re
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from undertrim.publish.web import finder


def row(address: str, make: str, model: str, first: int, last: int, phase: str = "", others: tuple[str, ...] = (), *built: str) -> finder.Entry:  # fmt: skip
    """A made-up vehicle as the index has it."""
    return [address, make, model, first, last, phase, list(others), *(built or ("", "")), ["van"], ["left"], "", [["dash", "Radio", "receiver"]], []]  # fmt: skip


MADE_UP = [
    row("alder/c-8-2010-2015", "Alder", "C-8", 2010, 2015),
    row("alder/400-gt-2001-2006", "Alder", "400 GT", 2001, 2006),
    row("birk/t-5-1995-2001", "Birk", "T 5", 1995, 2001, "facelift", ("Tee",)),
    row("birk/torrent-2014-2018", "Birk", "Torrent", 2014, 2018),
    row("birk/torr-2014-2018", "Birk", "Torr", 2014, 2018),
    row("öland/sång-2014-2018", "Öland", "Sång", 2014, 2018),
]


@pytest.fixture
def home(site: Path, tmp_path: Path) -> Path:
    """A copy of the home page with an index of made-up vehicles."""
    shutil.copytree(site, tmp_path / "site", ignore=shutil.ignore_patterns("vehicles", "reference", "rules"))
    return tmp_path / "site"


def put(home: Path, rows: list[finder.Entry]) -> str:
    for old in (home / "finder").glob("[0s]*.js"):
        old.unlink()
    for name, text in finder.files(rows).items():
        (home / name).write_text(text, encoding="utf-8")
    return (home / "index.html").as_uri()


def box(page: Page) -> Any:
    return page.get_by_role("combobox")


def found(page: Page, query: str) -> list[str]:
    """The vehicles that are offered once the index is there."""
    box(page).fill(query)
    expect(page.locator("#ut-said")).not_to_have_text(re.compile("^(Looking.*)?$"))
    return [name.inner_text() for name in page.locator(".ut-hit-vehicle b").all()]


@pytest.mark.parametrize(
    ("query", "expected"),
    [
        ("c-8", ["Alder C-8"]),
        ("c8", ["Alder C-8"]),
        ("C 8", ["Alder C-8"]),
        ("400gt", ["Alder 400 GT"]),
        ("400 gt 2003", ["Alder 400 GT"]),
        ("gt alder", ["Alder 400 GT"]),
        ("t5", ["Birk T 5"]),
        ("tee 98", ["Birk T 5"]),
        ("facelift", ["Birk T 5"]),
        ("torr 2016", ["Birk Torr", "Birk Torrent"]),
        ("2016 torrent", ["Birk Torrent"]),
        ("torrnet", ["Birk Torrent"]),
        ("oland sang", ["Öland Sång"]),
        ("birk 2019", []),
        ("nothing", []),
    ],
)
def test_finds(phone: Page, home: Path, query: str, expected: list[str]) -> None:
    phone.goto(put(home, MADE_UP))
    assert found(phone, query) == expected


BUILT = [
    row("kelbrook/finch-2014-2018", "Kelbrook", "Finch", 2014, 2018, "", (), "2014-03", "2018-09"),
    row("kelbrook/heron-2018-2022", "Kelbrook", "Heron", 2018, 2022, "", (), "2018-06", "2022-02"),
    row("harrowby/sedge-2011-2016", "Harrowby", "Sedge", 2011, 2016, "", (), "2011-05", "2016-04"),
    row("harrowby/sedge-2016-2021", "Harrowby", "Sedge", 2016, 2021, "facelift", (), "2016-04", "2021-10"),
    row("alder/c-8-2010-2015", "Alder", "C-8", 2010, 2015, "", (), "2010-01", "2015-12"),
]


@pytest.mark.parametrize(
    ("query", "expected"),
    [
        ("sedge 2016-03", ["2011–2016"]),
        ("sedge 2016-04", ["2016–2021 facelift"]),
        ("04/2016 sedge", ["2016–2021 facelift"]),
        ("sedge 4 / 2016", ["2016–2021 facelift"]),
        ("sedge 4.2016", ["2016–2021 facelift"]),
        ("finch 2018-08", ["2014–2018"]),
        ("finch 2018-09", []),
        ("sedge 2014-2018", ["2011–2016", "2016–2021 facelift"]),
        ("sedge 17-18", ["2016–2021 facelift"]),
        ("sedge 2017 to 2018", ["2016–2021 facelift"]),
        ("sedge 2017–2018", ["2016–2021 facelift"]),
        ("c-8 / 2012", ["2010–2015"]),
        ("c-8 12", ["2010–2015"]),
    ],
)
def test_months_of_build_and_ranges(phone: Page, home: Path, query: str, expected: list[str]) -> None:
    phone.goto(put(home, BUILT))
    found(phone, query)
    assert [item.inner_text() for item in phone.locator("#ut-found .ut-years").all()] == expected


@pytest.mark.parametrize(
    ("query", "said"),
    [
        ("finch 2020", "No Kelbrook Finch of 2020; recorded: 2014 to 2018."),
        ("sedge 2025", "No Harrowby Sedge of 2025; recorded: 2011 to 2016, 2016 to 2021."),
        ("finch 2018-09", "No Kelbrook Finch of 2018-09; recorded: built from 2014-03 until before 2018-09."),
        ("finch 20-22", "No Kelbrook Finch of 2020 to 2022; recorded: 2014 to 2018."),
        ("kelbrook 2030", "None of 2030; recorded: Kelbrook Finch 2014 to 2018; Kelbrook Heron 2018 to 2022."),
        (
            "finch 2016-13",
            "Not read as a year or a month: 2016-13. Type 2016, 16, 2016-05, 05/2016 or 2014-2018.",
        ),
        ("finsh 2016", "Is this your car?"),
        ("fnihc 2016", "Not in these records. Check the spelling, or pick the make below."),
    ],
)
def test_says_what_is_recorded_and_never_blames_the_spelling_for_a_year(
    phone: Page, home: Path, query: str, said: str
) -> None:
    phone.goto(put(home, BUILT))
    found(phone, query)
    assert phone.locator("#ut-said > :first-child").inner_text().strip() == said


def test_keyboard(phone: Page, home: Path) -> None:
    phone.goto(put(home, MADE_UP))
    expect(box(phone)).to_be_focused()
    found(phone, "birk")
    expect(box(phone)).to_have_attribute("aria-expanded", "true")
    options = phone.get_by_role("option")
    expect(options.nth(0)).to_have_attribute("aria-selected", "true")
    box(phone).press("ArrowDown")
    expect(options.nth(1)).to_have_attribute("aria-selected", "true")
    assert box(phone).get_attribute("aria-activedescendant") == options.nth(1).get_attribute("id")
    box(phone).press("Escape")
    assert box(phone).input_value() == ""
    assert options.count() == 0
    expect(box(phone)).to_have_attribute("aria-expanded", "false")


def test_enter_opens_the_marked_vehicle_with_its_job(phone: Page, site: Path) -> None:
    phone.goto((site / "index.html").as_uri())
    assert found(phone, "drover 17 radio rhd") == ["Ashgrove Drover"]
    box(phone).press("Enter")
    phone.wait_for_url("**/vehicles/ashgrove/drover-2015-2020.html*")
    expect(phone.locator("#ut-visit-job")).to_have_text("Radio opening")
    expect(phone.locator("#ut-visit-car")).to_contain_text("right")


def test_results_answer_whether_it_is_this_car(phone: Page, site: Path) -> None:
    phone.goto((site / "index.html").as_uri())
    assert found(phone, "sedge 2016") == ["Harrowby Sedge", "Harrowby Sedge"]
    assert (
        phone.locator("#ut-said > :first-child").inner_text().strip() == "Two may be it. Was it built before 2016-07?"
    )
    assert [one.inner_text() for one in phone.locator(".ut-hit-answer").all()] == ["Yes: built before 2016-07", "No: built in 2016-07 or later"]  # fmt: skip
    assert "An open tray" in phone.get_by_role("option").first.inner_text()
    assert phone.locator(".ut-hit-vehicle .ut-silhouette").count() == 2
    assert found(phone, "sedge march 2016") == ["Harrowby Sedge"]
    assert "Built from 2011-03 until before 2016-07, van, left- or right-hand drive" in phone.get_by_role("option").inner_text()  # fmt: skip


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
        ("bezel", "bezel, surround", "glossary.html#word-bezel-surround"),
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


# Large collections


def many(number: int) -> list[finder.Entry]:
    """Invented vehicles: 200 makes with models of their own."""
    return [row(f"make{n % 200}/m{n}-2010-2014", f"Make{n % 200}", f"Vane{n}", 2010, 2014) for n in range(number)]


@pytest.mark.parametrize("query", ["vane4321 2012 radio", "make121 vane4321", "vnae4321"])
def test_a_large_collection_is_split_and_still_found(phone: Page, home: Path, query: str) -> None:
    rows = many(5000)
    files = finder.files(rows)
    assert len(files) > 50
    phone.goto(put(home, rows))
    asked: list[str] = []
    phone.on("request", lambda request: asked.append(request.url))
    box(phone).fill(query)
    expect(phone.get_by_role("option").first).to_contain_text("Make121 Vane4321")
    assert 1 <= len([url for url in asked if re.search(r"/finder/\d+", url)]) <= 6


def test_a_name_is_text_never_markup(phone: Page, home: Path) -> None:
    phone.goto(put(home, [row("x/y-2014-2018", "<img src=x onerror=alert(1)>", "</script><b>Bold", 2014, 2018)]))
    found(phone, "bold")
    assert "<b>Bold" in phone.get_by_role("option").first.inner_text()
