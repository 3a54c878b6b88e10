"""Measures the printed templates: the geometry that stands in the PDF, and a raster of it made by another program."""

import io
import math
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest
from pdf_strokes import MM, Point, Walker
from pypdf import PdfReader
from template_strokes import ABOUT, ALL, CLOSE, DASH, EXACT, GEAR, OVAL, PAPERS, SMALL, made, sized, walked

from undertrim.publish.printed import paper
from undertrim.publish.printed.paper import A4, LETTER, Paper, Template


@ALL
@PAPERS
def test_every_sheet_has_a_bar_of_100_mm_with_its_ticks(asked: tuple[str, str], on: Paper) -> None:
    for page in walked(made(*asked, on=on)):
        (bar,) = sized(page, 100, 0)
        left, y, _, _ = bar.box
        ticks = [path for path in page.paths if path.size[0] < EXACT and path.box[3] == CLOSE(y, abs=EXACT)]
        ticks = [path for path in ticks if left - 1 < path.box[0] < left + 101]
        assert sorted(path.box[0] - left for path in ticks) == CLOSE([10 * number for number in range(11)], abs=EXACT)
        assert not bar.dash


@ALL
@PAPERS
def test_every_sheet_has_a_square_of_50_mm(asked: tuple[str, str], on: Paper) -> None:
    for page in walked(made(*asked, on=on)):
        (square,) = sized(page, 50, 50)
        assert not square.round
        assert len({(round(x, 2), round(y, 2)) for x, y in square.corners}) == 4


# ISO 216: A4 is 210 x 297 mm. ANSI/ASME Y14.1: size A is 8.5 x 11 in.
@pytest.mark.parametrize(("on", "size"), [(A4, (210, 297)), (LETTER, (8.5 * 25.4, 11 * 25.4))], ids=["a4", "letter"])
def test_the_page_is_the_paper_and_nothing_rescales_it(on: Paper, size: Point) -> None:
    reader = PdfReader(io.BytesIO(made(*OVAL, on=on)))
    for page in reader.pages:
        box = page.mediabox
        assert (float(box.left), float(box.bottom)) == (0, 0)
        assert (float(box.width) * MM, float(box.height) * MM) == CLOSE(size, abs=EXACT)
        assert page.cropbox == box
        assert "/UserUnit" not in page
        assert page.rotation == 0
    preferences: Any = reader.root_object["/ViewerPreferences"]
    assert preferences.get("/PrintScaling", "/None") == "/None"


def test_a_round_hole_and_its_gear_in_true_size() -> None:
    # The record says 119 mm; the speaker's says basket 115 mm, flange 146 mm.
    (page,) = walked(made(*SMALL))
    found = {across: sized(page, across, across) for across in (119, 115, 146)}
    for across, paths in found.items():
        (path,) = (path for path in paths if path.round)
        x, y = path.middle
        away = [math.dist((x, y), point) for point in path.curved]
        assert min(away) > across / 2 - 0.03
        assert max(away) < across / 2 + 0.03
    assert not found[119][0].dash
    assert found[115][0].dash == CLOSE((4, 2), abs=EXACT)
    assert found[146][0].width < found[119][0].width


def test_an_oval_in_true_size() -> None:
    # The record says 153 x 223 mm. Every point of an ellipse obeys (x/a)^2 + (y/b)^2 = 1.
    page = walked(made(*OVAL))[0]
    (hole,) = sized(page, 153, 223)
    x, y = hole.middle
    assert hole.round
    for at_x, at_y in hole.curved:
        assert math.hypot((at_x - x) / 76.5, (at_y - y) / 111.5) == CLOSE(1, abs=0.0005)


@PAPERS
def test_a_dash_opening_and_a_body_in_true_size(on: Paper) -> None:
    page = walked(made(*DASH, on=on))[0]
    (face,), (body,) = sized(page, 248, 146), sized(page, 180, 100)
    assert body.dash
    assert not face.dash
    assert body.middle == CLOSE(face.middle, abs=EXACT)


def bolt_marks(page: Walker, about: Point) -> list[Point]:
    """The middles of the crosses in circles of 4 mm, counted from a point; the sample in the key is smaller."""
    return sorted((path.middle[0] - about[0], path.middle[1] - about[1]) for path in sized(page, 4, 4) if path.round)


def hole_of(page: Walker, across: float) -> Point:
    return next(path for path in sized(page, across, across) if path.round).middle


def test_four_bolts_on_a_circle_of_135_mm() -> None:
    # Euclid, Elements IV.6: the square in a circle has its corners at r / sqrt(2) along both axes.
    (page,) = walked(made(*SMALL))
    at = 67.5 / math.sqrt(2)
    expected = [(-at, -at), (-at, at), (at, -at), (at, at)]
    for found, wanted in zip(bolt_marks(page, hole_of(page, 119)), expected, strict=True):
        assert found == CLOSE(wanted, abs=EXACT)
    gear = [path for path in sized(page, 6, 6) if len(path.corners) > 2]
    assert len(gear) == 4


def test_three_bolts_on_a_circle_of_154_mm() -> None:
    # Euclid, Elements IV.2: the equilateral triangle in a circle has sides of r * sqrt(3) and its base r / 2 below the middle.
    (page,) = walked(made("rear-door"))
    found = bolt_marks(page, hole_of(page, 138))
    side = 77 * math.sqrt(3)
    expected = [(-side / 2, 38.5), (0, -77), (side / 2, 38.5)]
    for place, wanted in zip(found, expected, strict=True):
        assert place == CLOSE(wanted, abs=EXACT)


def test_bolts_at_the_corners_of_92_by_92_mm() -> None:
    (page,) = walked(made("side"))
    found = bolt_marks(page, hole_of(page, 116))
    for place, wanted in zip(found, [(-46, -46), (-46, 46), (46, -46), (46, 46)], strict=True):
        assert place == CLOSE(wanted, abs=EXACT)


def test_holes_of_a_plate_towards_the_car_are_triangles() -> None:
    # Three sides of 2 * sqrt(3) * 2 mm about each of the corners of the triangle above.
    (page,) = walked(made("rear-door", "plate"))
    x, y = hole_of(page, 138)
    bases = [path.middle for path in sized(page, 4 * math.sqrt(3), 0)]
    side = 77 * math.sqrt(3)
    expected = [(-side / 2, 38.5 + 2), (0, -77 + 2), (side / 2, 38.5 + 2)]
    for (base_x, base_y), wanted in zip(sorted(bases), expected, strict=True):
        assert (base_x - x, base_y - y) == CLOSE(wanted, abs=EXACT)


def test_the_same_input_gives_the_same_bytes() -> None:
    again = paper.render(Template("brindleway/otter-2014-2018", ABOUT, ABOUT.openings["corner"], GEAR["oval"]))
    assert again == made(*OVAL)
    assert again != made(*OVAL, on=LETTER)


# Poppler's rasteriser, 300 dots an inch: 100 mm are 1181.1 dots, 50 mm are 590.6. A line of 0.2 mm adds 2.4 dots to either.
PIXELS = pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="pdftoppm (poppler-utils) is not on this machine")


@PIXELS
@PAPERS
def test_bar_and_square_in_pixels(on: Paper, tmp_path: Path) -> None:
    file = tmp_path / "template.pdf"
    file.write_bytes(made(*OVAL, on=on))
    subprocess.run(["pdftoppm", "-r", "300", "-gray", file, tmp_path / "page"], check=True)
    pictures = sorted(tmp_path.glob("page*.pgm"))
    assert len(pictures) == 2
    for picture in pictures:
        rows = pixels(picture)
        across = {run for row in rows for run in runs(row)}
        assert any(1182 <= run <= 1185 for run in across)
        assert any(592 <= run <= 595 for run in across)
        columns = (bytes(row[x] for row in rows) for x in range(100, 160))  # the left edge of the square is 118 dots in
        assert any(592 <= run <= 595 for column in columns for run in runs(column))


DARK = bytes(value < 128 for value in range(256))


def pixels(picture: Path) -> list[bytes]:
    """The rows of a binary portable graymap."""
    data = picture.read_bytes()
    kind, width, height, most = data[:40].split()[:4]
    assert (kind, most) == (b"P5", b"255")
    start = len(data) - int(width) * int(height)
    return [data[start + row * int(width) : start + (row + 1) * int(width)] for row in range(int(height))]


def runs(row: bytes) -> list[int]:
    """The lengths of what is darker than half, of 500 dots and more."""
    dark = row.translate(DARK)
    return [len(run) for run in dark.split(b"\0") if len(run) >= 500]
