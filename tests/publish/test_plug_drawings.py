"""Drawn plugs: true in place, number, state and latch; escaped; wide enough to tap; printed by Typst with their texts."""

import re
import xml.etree.ElementTree as ET

import pytest
import typst

import pdf_text
from undertrim.publish.pictures.drawings import plugs, wires
from undertrim.publish.pictures.drawings.plugs import Edge, Position
from undertrim.publish.printed.sheet import glyphs
from undertrim.record import schema
from undertrim.resources import table

SVG = "{http://www.w3.org/2000/svg}"
NASTY = """<script>alert("x")</script> & 'quoted' ]]> \x00"""
EDGES: tuple[Edge, ...] = ("top", "bottom", "left", "right", "none", "unknown")
POSITIONS = [
    Position(1, 1, "pin", "1", "Pin 1: ground, black", "GND", "#1a1a1a", (), "#pin-main-1"),
    Position(1, 2, "pin", "2", "Pin 2: bass −", "BASS−", "#ffffff", ("#d0202a",), "#pin-main-2", some_cars=True),
    Position(1, 3, "pin", "3", "Pin 3: mute", "MUTE", link="#pin-main-3"),
    Position(2, 1, "blank", "4", "Position 4: looked at, empty"),
    Position(2, 2, "unknown", "5", "Position 5: not recorded"),
    Position(2, 3, "unknown", "", "Row 2, column 3: not recorded"),
]


def drawn(latch: Edge = "top", side: plugs.Side = "wires", title: str = "Main plug") -> ET.Element:
    return ET.fromstring(plugs.face(title, side, latch, (2, 3), POSITIONS))  # noqa: S314 - our own text


def places(root: ET.Element) -> dict[str, tuple[float, float]]:
    """Where each position is put, by its accessible name."""
    found = (item for item in root if item.tag in (f"{SVG}a", f"{SVG}g") and "aria-label" in item.attrib)
    return {item.attrib["aria-label"]: _moved(item) for item in found}


def _moved(item: ET.Element) -> tuple[float, float]:
    x, y = re.findall(r"[\d.]+", item.attrib["transform"])
    return float(x), float(y)


def texts(root: ET.Element) -> list[str]:
    return [item.text or "" for item in root.iter(f"{SVG}text")]


def test_positions_stand_in_their_rows_and_columns() -> None:
    found = places(drawn())
    assert len(found) == len(POSITIONS)
    x, y = found["1GND, Pin 1: ground, black"]
    assert found["3MUTE?, Pin 3: mute"] == (x + 2 * plugs.CELL, y)
    below = found["Row 2, column 3: not recorded"]
    assert below[0] == x + 2 * plugs.CELL
    assert below[1] > y + plugs.CELL


def test_contacts_are_links_and_the_rest_are_named_pictures() -> None:
    root = drawn()
    assert [item.attrib["href"] for item in root.iter(f"{SVG}a")] == ["#pin-main-1", "#pin-main-2", "#pin-main-3"]
    pictures = [item.attrib["aria-label"] for item in root if item.get("role") == "img"]
    assert pictures == [item.name for item in POSITIONS[3:]]
    assert root.attrib["role"] == "group"  # a picture would hide its links


@pytest.mark.parametrize(
    ("side", "words"), [("wires", "Looking at the wires"), ("contacts", "Looking at the contacts")]
)
def test_the_side_is_said_in_words_and_drawn(side: plugs.Side, words: str) -> None:
    assert texts(drawn(side=side))[0] == words
    other: plugs.Side = "contacts" if side == "wires" else "wires"
    bare = [ET.tostring(item) for item in drawn(side=side).iter(f"{SVG}a")]
    assert bare != [ET.tostring(item) for item in drawn(side=other).iter(f"{SVG}a")]


def test_numbers_marks_and_question_marks_are_text() -> None:
    assert texts(drawn())[2:] == ["1", "GND", "2", "BASS−", "3", "MUTE", "?", "4", "5", "?", "?"]


@pytest.mark.parametrize(
    ("latch", "words"),
    [
        ("top", "latch at the top"),
        ("bottom", "latch at the bottom"),
        ("left", "latch on the left"),
        ("right", "latch on the right"),
        ("none", "no latch"),
        ("unknown", "latch: not recorded"),
    ],
)
def test_the_latch_is_on_its_edge_and_in_words(latch: Edge, words: str) -> None:
    root = drawn(latch)
    assert texts(root)[1] == words
    tongues = [item.attrib["d"] for item in root if item.tag == f"{SVG}path"]
    if latch in ("none", "unknown"):
        assert not tongues
        return
    (tongue,) = tongues
    x, y, width, height = (float(value) for value in re.findall(r"[\d.]+", tongue)[:4])
    left, top = places(root)["1GND, Pin 1: ground, black"]
    right, bottom = left + 3 * plugs.CELL, places(root)["Position 4: looked at, empty"][1] * 2 - top
    beside = {"top": y + height <= top, "bottom": y >= bottom, "left": x + width <= left, "right": x >= right}
    assert [edge for edge, there in beside.items() if there] == [latch]


def test_states_look_different_without_colour() -> None:
    lines = {item.attrib["aria-label"]: ET.tostring(item).decode() for item in drawn() if "aria-label" in item.attrib}
    assert "stroke-dasharray" in lines["2BASS−, Pin 2: bass −"]
    assert "stroke-dasharray" not in lines["1GND, Pin 1: ground, black"]
    assert "M6 20 L38 54" in lines["Position 4: looked at, empty"]
    assert "M6 20 L38 54" not in lines["Position 5: not recorded"]


def test_the_wire_is_the_one_drawn_elsewhere() -> None:
    text = plugs.face("x", "wires", "top", (2, 3), POSITIONS)
    assert wires.swatch("#ffffff", ["#d0202a"], "Pin 2: bass −", size="36px") in text
    assert text.count("<svg") == 3  # the plug and two wires: the third colour is not known


def test_only_wires_carry_colour() -> None:
    bare = plugs.face("x", "wires", "top", (1, 1), [Position(1, 1, "pin", "1", "Pin 1", "GND", some_cars=True)])
    used = {item.get(key) for item in ET.fromstring(bare).iter() for key in ("fill", "stroke")}  # noqa: S314
    assert used <= {"none", "currentColor", None}


def test_a_title_cannot_break_out() -> None:
    root = drawn(title=NASTY)
    assert root.attrib["aria-label"] == NASTY.replace("\x00", "")
    assert not list(root.iter(f"{SVG}script"))


@pytest.mark.parametrize("latch", EDGES)
def test_eight_columns_fit_a_phone_of_360_px_at_44_px_each(latch: Edge) -> None:
    assert plugs.CELL >= 44
    assert 8 * plugs.CELL <= plugs.least_width(8, latch) <= 360
    assert plugs.least_width(20, latch) >= 20 * plugs.CELL


@pytest.mark.parametrize("latch", EDGES)
@pytest.mark.parametrize("columns", [1, 3, 8, 20])
def test_nothing_is_cut_off(latch: Edge, columns: int) -> None:
    ends = [Position(1, column, "unknown", "", f"at {column}") for column in (1, columns)][: min(columns, 2)]
    root = ET.fromstring(plugs.face("x", "wires", latch, (1, columns), ends))  # noqa: S314
    width = plugs.least_width(columns, latch)
    assert root.attrib["width"] == f"{width}px"
    xs = [x for x, _ in places(root).values()]
    assert min(xs) >= 1
    assert max(xs) + plugs.CELL <= width - 1


@pytest.mark.parametrize(
    ("positions", "message"),
    [
        ([Position(3, 1, "blank", "1", "x")], "row 3, column 1 is not in a plug of 2 by 3"),
        ([Position(1, 0, "blank", "1", "x")], "row 1, column 0 is not in a plug of 2 by 3"),
        ([Position(1, 1, "blank", "1", "x"), Position(1, 1, "pin", "2", "y")], "two positions at one place"),
        ([Position(1, 1, "pin", "1\x07", "x")], r"'1\\x07' '' cannot be printed"),
    ],
)
def test_what_cannot_be_drawn_is_refused(positions: list[Position], message: str) -> None:
    with pytest.raises(ValueError, match=message):
        plugs.face("x", "wires", "top", (2, 3), positions)


def test_every_function_has_a_short_mark_of_its_own() -> None:
    marks = table("plug-marks")["mark"]
    assert list(marks) == schema.load("vehicle")["$defs"]["functionName"]["enum"]
    assert len(set(marks.values())) == len(marks)
    assert max(map(len, marks.values())) <= 5
    assert {ord(char) for mark in marks.values() for char in mark} <= glyphs.covered()


def test_typst_prints_the_texts() -> None:
    """The sheets' own fonts and no others: a family that is not among them would print nothing at all."""
    document = '#set document(title: "x")\n#image(bytes(sys.inputs.svg), format: "svg", alt: "a plug")'
    fonts = typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(glyphs.folder())])
    made = typst.compile(
        document.encode(),
        format="pdf",
        font_paths=fonts,
        ignore_system_fonts=True,
        sys_inputs={"svg": plugs.face("x", "contacts", "left", (2, 3), POSITIONS)},
        pdf_standards=["ua-1"],
    )
    assert isinstance(made, bytes)
    printed = pdf_text.texts(made)[0].split()
    assert {"Looking", "contacts", "BASS−", "MUTE", "?", "4"} <= set(printed)
