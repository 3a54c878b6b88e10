"""The finder: words in any order, years, slips of the finger, keyboard, and a collection large enough to be split."""

import shutil
from pathlib import Path

import pytest
from playwright.sync_api import Page

from undertrim.publish.web import finder

MADE_UP = [
    ["alder/c-8-2010-2015", "Alder", "C-8", 2010, 2015, "", []],
    ["alder/400-gt-2001-2006", "Alder", "400 GT", 2001, 2006, "", []],
    ["birk/t-5-1995-2001", "Birk", "T 5", 1995, 2001, "facelift", ["Tee", "facelift"]],
    ["birk/torrent-2014-2018", "Birk", "Torrent", 2014, 2018, "", []],
    ["birk/torr-2014-2018", "Birk", "Torr", 2014, 2018, "", []],
    ["öland/sång-2014-2018", "Öland", "Sång", 2014, 2018, "", []],
]


@pytest.fixture
def home(site: Path, tmp_path: Path) -> Path:
    """A copy of the home page with an index of made-up vehicles."""
    shutil.copytree(site, tmp_path / "site", ignore=shutil.ignore_patterns("vehicles", "reference", "rules"))
    return tmp_path / "site"


def put(home: Path, rows: list[finder.Row]) -> str:
    shutil.rmtree(home / "finder")
    for name, text in finder.files(rows).items():
        path = home / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return (home / "index.html").as_uri()


def found(page: Page, query: str) -> list[str]:
    page.get_by_label("Make, model, year").fill(query)
    return [item.inner_text().split(" 1")[0].split(" 2")[0] for item in page.get_by_role("option").all()]


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
    ["kelbrook/finch-2014-2018", "Kelbrook", "Finch", 2014, 2018, "", [], "2014-03", "2018-09"],
    ["kelbrook/heron-2018-2022", "Kelbrook", "Heron", 2018, 2022, "", [], "2018-06", "2022-02"],
    ["harrowby/sedge-2011-2016", "Harrowby", "Sedge", 2011, 2016, "", [], "2011-05", "2016-04"],
    ["harrowby/sedge-2016-2021", "Harrowby", "Sedge", 2016, 2021, "facelift", ["facelift"], "2016-04", "2021-10"],
    ["alder/c-8-2010-2015", "Alder", "C-8", 2010, 2015, "", [], "2010-01", "2015-12"],
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
        ("sedge 2014-2018", ["2016–2021 facelift", "2011–2016"]),
        ("sedge 17-18", ["2016–2021 facelift"]),
        ("sedge 2017 to 2018", ["2016–2021 facelift"]),
        ("sedge 2017–2018", ["2016–2021 facelift"]),
        ("c-8 / 2012", ["2010–2015"]),
        ("c-8 12", ["2010–2015"]),
    ],
)
def test_months_of_build_and_ranges(phone: Page, home: Path, query: str, expected: list[str]) -> None:
    phone.goto(put(home, BUILT))
    phone.get_by_label("Make, model, year").fill(query)
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
        ("finsh 2016", "1 vehicle"),
        ("fnihc 2016", "Not in these records. Check the spelling, or pick the make below."),
    ],
)
def test_says_what_is_recorded_and_never_blames_the_spelling_for_a_year(
    phone: Page, home: Path, query: str, said: str
) -> None:
    phone.goto(put(home, BUILT))
    phone.get_by_label("Make, model, year").fill(query)
    assert phone.locator("#ut-said").inner_text() == said


def test_keyboard(phone: Page, home: Path) -> None:
    phone.goto(put(home, MADE_UP))
    box = phone.get_by_label("Make, model, year")
    box.fill("birk")
    assert box.get_attribute("aria-expanded") == "true"
    options = phone.get_by_role("option")
    assert options.nth(0).get_attribute("aria-selected") == "true"
    box.press("ArrowDown")
    assert options.nth(1).get_attribute("aria-selected") == "true"
    assert box.get_attribute("aria-activedescendant") == options.nth(1).get_attribute("id")
    box.press("Escape")
    assert box.input_value() == ""
    assert options.count() == 0


def test_enter_opens_the_marked_vehicle(phone: Page, site: Path) -> None:
    phone.goto((site / "index.html").as_uri())
    phone.get_by_label("Make, model, year").fill("drover")
    phone.get_by_label("Make, model, year").press("Enter")
    phone.wait_for_url("**/vehicles/ashgrove/drover-2015-2020.html")


def many(number: int) -> list[finder.Row]:
    """Invented vehicles: 200 makes with models of their own."""
    return [[f"make{n % 200}/m{n}-2010-2014", f"Make{n % 200}", f"Vane{n}", 2010, 2014, "", []] for n in range(number)]


def test_a_large_collection_is_split_and_still_found(phone: Page, home: Path) -> None:
    rows = many(5000)
    files = finder.files(rows)
    assert len(files) > 5
    phone.goto(put(home, rows))
    asked: list[str] = []
    phone.on("request", lambda request: asked.append(request.url))
    box = phone.get_by_label("Make, model, year")
    box.fill("vane4321 2012")
    phone.get_by_role("option").first.wait_for()
    assert phone.get_by_role("option").first.inner_text().startswith("Make121 Vane4321")
    assert 1 <= len([url for url in asked if "/finder/" in url]) <= 6


def test_a_name_is_text_never_markup(phone: Page, home: Path) -> None:
    phone.goto(put(home, [["x/y-2014-2018", "<img src=x onerror=alert(1)>", "</script><b>Bold", 2014, 2018, "", []]]))
    phone.get_by_label("Make, model, year").fill("bold")
    assert "<b>Bold" in phone.get_by_role("option").first.inner_text()
