"""The printed sheet of one visit: all that is in it and nothing else, short enough to carry."""

import io
import re
from datetime import date
from functools import cache
from pathlib import Path

import pytest
from pypdf import PdfReader

from pdf_text import texts
from undertrim.check.shelf import stock
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.visit import text
from undertrim.derive.visit.understanding import visit
from undertrim.derive.visit.visit import Visit
from undertrim.publish.facts.visit import of
from undertrim.publish.printed import pdf
from undertrim.publish.printed.sheet import visited
from undertrim.record.lookup import vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.photo_files import Album, album
from undertrim.record.store import Workspace

PLACE = Workspace(Path(__file__).parents[2])
DAY = date(2026, 5, 4)
FINCH = "finch-2014-2018?jobs=dash,front-door&radio=map&dash=skerrowe-broadside&front-door=tidewrack-haven-65"
URL = f"https://undertrim.invalid/vehicles/kelbrook/{FINCH}"


def photos(words: str) -> Album:
    return album(vehicle_file(PLACE, text.parse(words).vehicle))


def made(words: str) -> Visit:
    asked = text.parse(words)
    entry = PLACE.load(vehicle_file(PLACE, asked.vehicle))
    assert isinstance(entry.record, VehicleRecord)
    return visit(Vehicle(entry.record, entry.address, stock(PLACE), clearances()), asked)


@cache
def printed(words: str = FINCH) -> bytes:
    return pdf.render_visit(made(words), URL, "a4", DAY, photos(words))


@cache
def pages(words: str = FINCH) -> tuple[str, ...]:
    return tuple(re.sub(r"\s+", " ", page) for page in texts(printed(words)))


def bare(words: str) -> str:
    """Without blanks and the places where a long word may break."""
    return re.sub(r"[\s\u200b-]", "", words)


def test_radio_and_two_doors_are_six_pages_at_most() -> None:
    assert len(pages()) <= 6


def test_what_hides_what_stands_where_there_is_room_and_costs_no_page() -> None:
    first = bare(pages()[0])
    after = [
        first.index(bare(name)) for name in ("What hides what", "Upper vent trim", "Radio surround", "Radio opening")
    ]
    assert after[0] < after[1]
    assert first.count(bare("Front door panel")) == 1
    assert "Rear door" not in first
    assert "What hides what" not in " ".join(pages("bramble-2019-2023?jobs=dash,front-door"))


def test_the_first_page_is_the_job_at_a_glance() -> None:
    first = bare(pages()[0])
    for said in (
        "Kelbrook Finch 2014–2018",
        "A key marked MAP left of the screen",
        "Position antenna [Map radio]. The built-in map goes with the factory radio.",
        "I have been told what is lost. Signature",
        "Skerrowe Broadside fits with Sandmartin DK-F14 and Skerrowe H-F14",
        "2 × Tidewrack Haven 65, Front door speakers",
        "fuse 15 A for the lead 'battery'",
        "1 h 36 min of taking apart and refitting",
        "Together 71 55 4 12 0",
    ):
        assert bare(said) in first, said
    assert bare("Take off") not in first


def test_every_step_stands_there_once_in_order_with_its_cautions_before_it() -> None:
    whole, at = bare("".join(pages()[1:])), 0
    for number, step in enumerate(of(made(FINCH))["steps"], start=1):
        title = bare(f"{number} {step['verb']} {step['title']}")
        start, at = at, whole.index(title, at)
        for caution in step["cautions"]:
            assert bare(caution["hazard"]) in whole[start:at], (title, caution["hazard"])
        at += len(title)


def test_a_caution_in_full_is_not_farther_than_the_run_of_steps_that_share_it() -> None:
    shown = visited.view(made(FINCH), URL, "a4", DAY, photos(FINCH))
    rows = [row for section in shown["sections"] for row in section["steps"]]
    for before, row in zip([{"cautions": []}, *rows], rows, strict=False):
        known = {caution["hazard"] for caution in before["cautions"]}
        assert all(caution["hazard"] in known for caution in row["cautions"] if caution["short"])
    assert any(caution["short"] for row in rows for caution in row["cautions"])


def test_nothing_is_there_that_is_not_in_the_visit() -> None:
    whole = "".join(pages())
    vehicle = made(FINCH)
    chosen = {"skerrowe-broadside", "tidewrack-haven-65", "sandmartin-dk-f14", "skerrowe-h-f14"}
    others = [item.name for item in vehicle.known.stock.items if item.id not in chosen]
    assert [name for name in others if name in whole] == []
    for opening in vehicle.record.openings.values():
        assert (opening.name in whole) == (opening in vehicle.openings)


def test_the_joint_is_that_of_the_gear_and_what_stands_between() -> None:
    assert "Joint with Skerrowe Broadside" in pages()[-1]
    assert "Harness: Skerrowe H-F14." in pages()[-1]
    by_hand = " ".join(pages(f"{FINCH}&dash.harness=none"))
    assert "Skerrowe H-F14" not in by_hand


def test_what_the_gear_says_for_the_hands_is_there() -> None:
    whole = " ".join(" ".join(pages()).split())
    speaker, receiver = (item for item in made(FINCH).gear.values())
    assert {speaker.id, receiver.id} == {"tidewrack-haven-65", "skerrowe-broadside"}
    assert "Known as 6.5 in (a name, not a dimension). Terminals" in whole
    assert "Known as double height" in whole


def test_airbags_are_named_where_the_visit_works() -> None:
    named = {
        words: visited.view(made(words), URL, "a4", DAY, photos(words))["restraints"]
        for words in (FINCH, "finch-2014-2018?jobs=rear-door")
    }
    assert [len(areas) for areas in named.values()] == [1, 0]


def test_leads_that_nobody_recorded_are_said() -> None:
    assert "No joint can be given: " in " ".join(pages("gant-1998-2003?jobs=dash&dash=sandmartin-creek-1"))


def test_cars_left_open_are_asked_for_and_counted_apart() -> None:
    whole = " ".join(pages("finch-2014-2018?jobs=dash"))
    for said in ("Which radio is in the dash?", "Plain radio: ", "Map radio: ", "For: Plain radio", "For: Map radio"):
        assert said in whole


def test_steps_are_eleven_points_high() -> None:
    sizes: dict[float, int] = {}

    def seen(words: str, _: object, matrix: list[float], __: object, size: float) -> None:
        high = round(abs(size * matrix[3]), 1)
        sizes[high] = sizes.get(high, 0) + len(words)

    reader = PdfReader(io.BytesIO(printed()))
    reader.pages[2].extract_text(visitor_text=seen)
    assert max(sizes, key=sizes.__getitem__) == pytest.approx(11)


def test_the_same_input_gives_the_same_bytes() -> None:
    assert pdf.render_visit(made(FINCH), URL, "a4", DAY, photos(FINCH)) == printed()


@pytest.mark.parametrize(
    "words", ["finch-2014-2018?jobs=load-side&load-side=pellworth-weald-2", "drover-2015-2020?jobs=front-door"]
)
def test_other_visits_print_on_the_other_paper(words: str) -> None:
    (width, height) = (
        PdfReader(io.BytesIO(pdf.render_visit(made(words), URL, "us-letter", DAY, photos(words)))).pages[0].mediabox[2:]
    )
    assert (float(width), float(height)) == pytest.approx((612, 792), abs=0.1)  # ANSI/ASME Y14.1 size A, in points


def images(words: str, of: Album | None) -> int:
    """How many photographs the sheet holds."""
    reader = PdfReader(io.BytesIO(pdf.render_visit(made(words), URL, "a4", DAY, of)))
    return sum(len(page.images) for page in reader.pages)


def test_photographs_stand_in_the_step_that_shows_them_each_once_with_its_marks() -> None:
    rows = [
        row
        for section in visited.view(made(FINCH), URL, "a4", DAY, photos(FINCH))["sections"]
        for row in section["steps"]
    ]
    shown = {
        row["title"]: [(one["title"][:22], one["marks"]) for one in row["photos"]] for row in rows if row["photos"]
    }
    assert shown == {
        "Factory radio": [
            (
                "The radio with its sur",
                ["1 Upper left screw", "2 Upper right screw", "3 Lower left screw", "4 Lower right screw"],
            ),
            ("The plug from the side", ["1 Latch"]),
        ],
        "Compare plugs and gear: Radio opening": [
            ("The bay with the radio", ["1 Cross-beam, the first thing behind a new radio"]),
        ],
    }
    assert images(FINCH, photos(FINCH)) == 3


def test_a_sheet_without_an_album_has_no_photographs(tmp_path: Path) -> None:
    assert images(FINCH, None) == 0
    assert images(FINCH, album(tmp_path / "finch-2014-2018.yaml")) == 0


def test_many_notes_are_rows() -> None:
    """A few stand behind each other; nine notes on an amplifier would be a wall."""
    whole = "finch-2014-2018?jobs=load-floor&radio=map&load-floor=skerrowe-quay-4"
    notes = visited.view(made(whole), URL, "a4", DAY)["fitted"][0]["cars"][0]["notes"]
    starts = [line for line in texts(printed(whole))[-1].splitlines() if line.strip().startswith(chr(0x2022))]
    assert len(notes) > 8
    assert len(starts) >= len(notes)
