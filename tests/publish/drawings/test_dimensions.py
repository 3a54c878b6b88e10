"""Dimensions and lettering: exact lines, texts that nothing touches, widths held against a real face."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from svg_reading import assert_clear, assert_unstruck, extent, parsed, points
from undertrim.publish.pictures.drawings import dimensions, lettering, svg
from undertrim.publish.pictures.drawings.dimensions import Measure, Span
from undertrim.publish.pictures.drawings.lettering import Box
from undertrim.publish.pictures.drawings.pieces import Piece, Sheet
from undertrim.publish.printed.paper.metrics import face

LOW, HIGH = 6.0, 314.0
WORDS = st.text(st.sampled_from("mmii 12()/.aW×"), min_size=1, max_size=60).filter(str.strip)


def path_of(piece: Piece, name: str) -> list[str]:
    root = parsed(svg.element("svg", *piece.marks))
    return [one.get("d", "") for one in root.iter("path") if one.get("data-part") == name]


@pytest.mark.parametrize("char", [chr(code) for code in (*range(0x20, 0x7F), *range(0xA1, 0x180)) if code != 0xAD])
def test_no_character_of_the_face_of_the_sheets_is_wider_than_reckoned(char: str) -> None:
    """Source: the advance widths in the tables of Source Sans Pro itself."""
    font = face("Regular")
    if ord(char) in font.advances:
        assert lettering.width(char) >= font.advances[ord(char)] / font.em * lettering.SIZE


def test_combining_marks_take_no_room_and_wide_scripts_a_full_square() -> None:
    assert lettering.width("e\u0301") == lettering.width("e")
    assert lettering.width("中") >= lettering.SIZE


def test_a_number_stays_with_its_unit_and_its_fraction() -> None:
    for room in range(90, 300, 7):
        lines = lettering.wrapped("room to the grille 62 mm (2 7/16 in) or less", room)
        assert any("62 mm" in line for line in lines)
        assert any("2 7/16 in" in line for line in lines)
        assert " ".join(lines) == "room to the grille 62 mm (2 7/16 in) or less"


@given(WORDS, st.floats(20, 300))
def test_broken_lines_keep_to_the_room_and_lose_nothing(words: str, room: float) -> None:
    lines = lettering.wrapped(words, room)
    assert all(lettering.width(line) <= room for line in lines)
    assert "".join("".join(lines).split()) == "".join(words.split())


@st.composite
def spans(draw: st.DrawFn) -> list[Span]:
    made = []
    for place in range(draw(st.integers(1, 9))):
        start, end = draw(st.floats(20, 300)), draw(st.floats(20, 300))
        made.append(Span(str(place), draw(WORDS), round(start, 3), round(end, 3), 40, 60))
    return made


@pytest.mark.parametrize("upright", [False, True])
@given(made=spans())
@settings(max_examples=150, deadline=None)
def test_texts_touch_neither_each_other_nor_a_line_and_stay_inside(made: list[Span], upright: bool) -> None:
    piece = dimensions.beside(made, 80, LOW, HIGH) if upright else dimensions.below(made, 80, LOW, HIGH)
    assert_clear(piece.lines)
    assert_unstruck(piece.lines, path_of(piece, "extension"))
    for box in (line.box for line in piece.lines):
        along = (box.top, box.bottom) if upright else (box.left, box.right)
        out = (box.left, box.right) if upright else (box.top, box.bottom)
        assert along[0] >= LOW - 0.01
        assert along[1] <= HIGH + 0.01
        assert out[0] >= 80
        assert out[1] <= piece.end
    assert sum(len("".join(line.words.split())) for line in piece.lines) == sum(
        len("".join(span.words.split())) for span in made
    )


@given(made=spans())
def test_every_line_is_drawn_from_end_to_end_and_none_twice_at_one_height(made: list[Span]) -> None:
    piece = dimensions.below(made, 80, LOW, HIGH)
    for span in made:
        (path,) = path_of(piece, f"dimension {span.part}")
        (x, y), (to_x, to_y) = points(path)
        assert (x, to_x) == pytest.approx((span.start, span.end), abs=0.006)
        assert y == to_y > 80


def test_extension_lines_begin_where_they_are_asked_to_and_reach_the_dimension() -> None:
    piece = dimensions.below([Span("a", "x", 100, 200, 40, 60)], 80, LOW, HIGH)
    (path,) = path_of(piece, "extension")
    (dimension,) = path_of(piece, "dimension a")
    (x, top), (_, low), (to_x, to_top), (_, to_low) = points(path)
    assert (x, top, to_x, to_top) == (100, 40, 200, 60)
    assert low == to_low > extent(dimension).top


def test_arrows_stand_outside_a_short_length_and_inside_a_long_one() -> None:
    def arrows(long: float) -> list[tuple[float, float]]:
        """Tip and back of each."""
        piece = dimensions.below([Span("a", "x", 100, 100 + long, 0, 0)], 20, LOW, HIGH)
        paths = [one.get("d", "") for one in parsed(svg.element("svg", *piece.marks)).iter("path")]
        (drawn,) = [path for path in paths if "Z" in path]
        return [(points(one)[0][0], points(one)[1][0]) for one in drawn.split("Z") if one.strip()]

    assert arrows(60) == [(100, 107), (160, 153)]
    assert arrows(4) == [(100, 93), (104, 111)]


@given(
    st.floats(0, 100),
    st.lists(st.tuples(st.floats(0, 90), st.floats(1, 20), st.floats(0, 90), st.floats(1, 20)), max_size=6),
)
def test_a_broken_line_and_its_gaps_are_the_whole_line(along: float, boxes: list[tuple[float, ...]]) -> None:
    made = [Box(left, top, left + wide, top + high) for left, wide, top, high in boxes]
    parts = list(dimensions.broken(along, 0, 100, made))
    assert all(start < end for start, end in parts)
    for step in range(1001):
        y = step / 10
        hidden = any(box.left - 1 < along < box.right + 1 and box.top - 1 < y < box.bottom + 1 for box in made)
        if hidden:
            assert not any(start + 1e-6 < y < end - 1e-6 for start, end in parts)
        elif 0 < y < 100:
            assert any(start - 1e-6 <= y <= end + 1e-6 for start, end in parts)


def test_half_of_what_is_not_known_is_not_known() -> None:
    assert Measure(None).half is None
    assert Measure(7, "7 mm").half == 3.5


def test_a_sheet_too_narrow_for_a_dimension_is_refused() -> None:
    with pytest.raises(ValueError, match="'239' is too narrow for a drawing: 240 at least"):
        Sheet("x", 239, "20em")


def test_lettering_is_at_least_eleven_pixels_on_a_narrow_phone() -> None:
    assert math.floor(lettering.SIZE * 320 / 320) >= 11
