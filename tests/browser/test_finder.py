"""The finder: words in any order, times, jobs, slips of the finger, keyboard, and a collection large enough to be split."""

import re
import shutil
from pathlib import Path

import pytest
from boxed import box, found, row
from playwright.sync_api import Page, expect

from undertrim.publish.web import finder

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
        ("fnihc 2016", "Not in these records. Check the spelling, or look through the makes."),
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
