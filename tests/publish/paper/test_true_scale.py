"""Measures the printed templates: the geometry that stands in the PDF, and a raster of it made by another program.

The PDF is read operator by operator with the current transformation matrix (ISO 32000-1, 8.3 and 8.5). One unit of user space
is 1/72 in (8.3.2.3), an inch is 25.4 mm.
"""

import io
import math
import shutil
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from pypdf import PageObject, PdfReader
from pypdf.generic import ContentStream

from making import record
from undertrim.derive.fit.stock import Gear, Stocked
from undertrim.publish.printed import paper
from undertrim.publish.printed.paper import A4, LETTER, Paper, Template
from undertrim.record import build

MM = 25.4 / 72
CLOSE = pytest.approx
EXACT = 0.002  # mm; numbers in the file are 32-bit floats

Point = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]


@dataclass(frozen=True)
class Stroke:
    """A stroked path in mm from the upper left corner of the paper: its corners (ends of curves too), and points on its curves."""

    corners: tuple[Point, ...]
    curved: tuple[Point, ...]
    width: float
    dash: tuple[float, ...]

    @property
    def box(self) -> tuple[float, float, float, float]:
        xs, ys = [x for x, _ in self.corners], [y for _, y in self.corners]
        return min(xs), min(ys), max(xs), max(ys)

    @property
    def size(self) -> Point:
        left, top, right, bottom = self.box
        return right - left, bottom - top

    @property
    def middle(self) -> Point:
        left, top, right, bottom = self.box
        return (left + right) / 2, (top + bottom) / 2

    @property
    def round(self) -> bool:
        return bool(self.curved)


def times(a: Matrix, b: Matrix) -> Matrix:
    """`a` applied first, then `b`."""
    return (
        a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4], a[4] * b[1] + a[5] * b[3] + b[5],
    )  # fmt: skip


class Walker:
    """Follows the operators of a page and of the forms it uses."""

    def __init__(self, page: PageObject) -> None:
        self.page, self.height = page, float(page.mediabox.height)
        self.matrix: Matrix = (1, 0, 0, 1, 0, 0)
        self.width = 1.0  # the initial state, 8.4.1
        self.dash: tuple[float, ...] = ()
        self.saved: list[tuple[Matrix, float, tuple[float, ...]]] = []
        self.corners: list[Point] = []
        self.curved: list[Point] = []
        self.paths: list[Stroke] = []
        self.clips: list[Stroke] = []
        contents = page.get_contents()
        assert contents is not None
        self.walk(contents, page["/Resources"].get_object())

    def point(self, x: float, y: float) -> Point:
        a, b, c, d, e, f = self.matrix
        return (a * x + c * y + e) * MM, (self.height - (b * x + d * y + f)) * MM

    def walk(self, stream: Any, resources: Any) -> None:
        for operands, name in ContentStream(stream, self.page.pdf).operations:
            values = [float(value) for value in operands if isinstance(value, int | float)]
            self.state(name.decode(), values, operands)
            self.build(name.decode(), values)
            self.paint(name.decode())
            if name == b"Do":
                self.form(resources["/XObject"][operands[0]].get_object(), resources)

    def form(self, form: Any, resources: Any) -> None:
        assert form["/Subtype"] == "/Form"
        kept = self.matrix
        a, b, c, d, e, f = (float(value) for value in form.get("/Matrix", (1, 0, 0, 1, 0, 0)))
        self.matrix = times((a, b, c, d, e, f), self.matrix)
        self.walk(form, form.get("/Resources", resources))
        self.matrix = kept

    def state(self, name: str, values: list[float], operands: Any) -> None:
        if name == "q":
            self.saved.append((self.matrix, self.width, self.dash))
        elif name == "Q":
            self.matrix, self.width, self.dash = self.saved.pop()
        elif name == "cm":
            a, b, c, d, e, f = values
            self.matrix = times((a, b, c, d, e, f), self.matrix)
        elif name == "w":
            (self.width,) = values
        elif name == "d":
            self.dash = tuple(float(value) for value in operands[0])

    def build(self, name: str, values: list[float]) -> None:
        if name in ("m", "l"):
            self.corners.append(self.point(*values))
        elif name == "c":
            start, *others = self.corners[-1], *(self.point(*values[at : at + 2]) for at in (0, 2, 4))
            self.curved.extend(curve(start, *others))
            self.corners.append(others[-1])
        elif name == "re":
            x, y, width, height = values
            places = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
            self.corners.extend(self.point(*place) for place in places)
        assert name not in ("v", "y"), "a curve that is not read"

    def paint(self, name: str) -> None:
        if name not in ("S", "s", "f", "f*", "B", "B*", "b", "b*", "n"):
            return
        made = Stroke(tuple(self.corners), tuple(self.curved), self.width * MM, tuple(part * MM for part in self.dash))
        if self.corners and name in ("S", "s"):
            self.paths.append(made)
        elif self.corners and name == "n":
            self.clips.append(made)
        self.corners, self.curved = [], []


def curve(a: Point, b: Point, c: Point, d: Point) -> Iterator[Point]:
    for t in (0.125, 0.25, 0.5, 0.75, 0.875):
        u = 1 - t
        shares = (u**3, 3 * u * u * t, 3 * u * t * t, t**3)
        xs, ys = zip(a, b, c, d, strict=True)
        yield sum(s * x for s, x in zip(shares, xs, strict=True)), sum(s * y for s, y in zip(shares, ys, strict=True))


ABOUT = record("""
    vehicle: {high_voltage: yes}
    parts: {panel: {}}
    openings:
      front-door:
        behind: [panel]
        crash_sensor: unknown
        hole: {shape: round, diameter: 119 mm}
        bolts: {pattern: circle, count: 4, diameter: 135 mm}
      rear-door:
        behind: [panel]
        hole: {shape: round, diameter: 138 mm}
        bolts: {pattern: circle, count: 3, diameter: 154 mm}
      side:
        behind: [panel]
        hole: {shape: round, diameter: 116 mm}
        bolts: {pattern: rectangle, count: 4, width: 92 mm, height: 92 mm}
      corner:
        behind: [panel]
        hole: {shape: oval, width: 153 mm, height: 223 mm}
        bolts: {pattern: rectangle, count: 4, width: 110 mm, height: 165 mm}
      shelf: {behind: [panel], hole: {shape: rectangle, width: 300 mm, height: 320 mm}}
      dash: {behind: [panel], face: {width: 248 mm, height: 146 mm}}
""")


def gear(**facts: Any) -> Gear:
    return Stocked(
        "tidewrack-x", build.gear({"format": "1", "gear": {"maker": "Tidewrack", "model": "X", **facts}}).gear
    )


GEAR = {
    "": None,
    "round": gear(
        kind="speaker",
        basket={"shape": "round", "diameter": "115 mm"},
        flange={"shape": "round", "diameter": "146 mm"},
        bolts={"pattern": "circle", "count": "4", "diameter": "135 mm"},
    ),
    "oval": gear(
        kind="speaker",
        basket={"shape": "oval", "width": "150 mm", "height": "220 mm"},
        flange={"shape": "oval", "width": "166 mm", "height": "237 mm"},
        bolts={"pattern": "rectangle", "count": "4", "width": "110 mm", "height": "165 mm"},
    ),
    "receiver": gear(kind="receiver", body={"width": "180 mm", "height": "100 mm"}),
    "plate": gear(
        kind="spacer",
        hole={"shape": "round", "diameter": "115 mm"},
        car_bolts={"pattern": "circle", "count": "3", "diameter": "154 mm"},
    ),
}


@cache
def made(opening: str, over: str = "", on: Paper = A4, margin: float = 10) -> bytes:
    return paper.render(Template("brindleway/otter-2014-2018", ABOUT, ABOUT.openings[opening], GEAR[over]), on, margin)


def walked(data: bytes) -> list[Walker]:
    return [Walker(page) for page in PdfReader(io.BytesIO(data)).pages]


def sized(walker: Walker, width: float, height: float) -> list[Stroke]:
    return [path for path in walker.paths if path.size == CLOSE((width, height), abs=EXACT)]


SMALL, OVAL, DASH = ("front-door", "round"), ("corner", "oval"), ("dash", "receiver")
ALL = pytest.mark.parametrize("asked", [SMALL, OVAL, DASH], ids=["round", "oval", "dash"])
PAPERS = pytest.mark.parametrize("on", [A4, LETTER], ids=["a4", "letter"])


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


def crosses(page: Walker) -> list[Point]:
    """The middles of the register crosses: two strokes of 9 mm that halve each other."""
    flat, steep = sized(page, 9, 0), sized(page, 0, 9)
    return [a.middle for a in flat for b in steep if math.dist(a.middle, b.middle) < EXACT]


@pytest.mark.parametrize(("asked", "size"), [(OVAL, (153, 223)), (DASH, (248, 146))], ids=["oval", "dash"])
@PAPERS
def test_register_crosses_land_at_the_same_place_of_the_drawing(asked: tuple[str, str], size: Point, on: Paper) -> None:
    pages = walked(made(*asked, on=on))
    assert len(pages) == 2
    places = []
    for page in pages:
        (outline,) = sized(page, *size)
        (clip,) = page.clips
        x, y = outline.middle
        left, top, right, bottom = clip.box
        found = crosses(page)
        assert len(found) == 2
        for cross_x, cross_y in found:  # both arms show whole on either sheet
            assert left + 4.5 <= cross_x + EXACT
            assert cross_x - EXACT <= right - 4.5
            assert top + 4.5 <= cross_y + EXACT
            assert cross_y - EXACT <= bottom - 4.5
        places.append(sorted((cross_x - x, cross_y - y) for cross_x, cross_y in found))
    for one, other in zip(*places, strict=True):
        assert one == CLOSE(other, abs=EXACT)


@pytest.mark.parametrize(("asked", "size"), [(OVAL, (166, 237)), (DASH, (248, 146))], ids=["oval", "dash"])
def test_together_the_sheets_show_the_whole_and_overlap_by_10_mm(asked: tuple[str, str], size: Point) -> None:
    windows = []
    for page in walked(made(*asked)):
        (outline,), (clip,) = sized(page, *size), page.clips
        x, y = outline.middle
        left, top, right, bottom = clip.box
        windows.append((left - x, top - y, right - x, bottom - y))
    one, other = windows
    across, up = one[2] - other[0], one[3] - other[1]
    assert min(across, up) == CLOSE(10, abs=EXACT)
    assert min(one[0], other[0]) <= -size[0] / 2
    assert max(one[2], other[2]) >= size[0] / 2
    assert min(one[1], other[1]) <= -size[1] / 2
    assert max(one[3], other[3]) >= size[1] / 2


def test_four_sheets_where_both_directions_are_too_large() -> None:
    pages = walked(made("shelf"))
    assert len(pages) == 4
    found = [{(round(x, 2), round(y, 2)) for x, y in relative(page, (300, 320))} for page in pages]
    assert all(len(places) == 4 for places in found)
    assert len(set.union(*found)) == 8  # each of two sheets, none of one alone
    assert [len(found[0] & other) for other in found[1:]] == [2, 2, 0]


def relative(page: Walker, size: Point) -> list[Point]:
    (outline,) = sized(page, *size)
    return [(x - outline.middle[0], y - outline.middle[1]) for x, y in crosses(page)]


@ALL
@PAPERS
@pytest.mark.parametrize("margin", [5, 25])
def test_nothing_is_drawn_in_the_margin(asked: tuple[str, str], on: Paper, margin: float) -> None:
    for page in walked(made(*asked, on=on, margin=margin)):
        (clip,) = page.clips
        left, top, right, bottom = clip.box
        edges = (margin - EXACT, margin - EXACT, on.width - margin + EXACT, on.height - margin + EXACT)
        assert left >= edges[0]
        assert top >= edges[1]
        assert right <= edges[2]
        assert bottom <= edges[3]
        outside = [path for path in page.paths if path.box[1] > bottom]
        assert len(outside) > 12
        assert min(path.box[0] for path in outside) >= edges[0]
        assert max(path.box[2] for path in outside) <= edges[2]
        assert max(path.box[3] for path in outside) <= edges[3]


def test_a_margin_that_leaves_no_width_is_refused() -> None:
    for margin in (-1, 40):
        with pytest.raises(ValueError, match="margin"):
            made(*SMALL, margin=margin)


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
