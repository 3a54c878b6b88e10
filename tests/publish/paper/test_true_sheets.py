"""Sheets of a template that are laid side by side: register crosses, overlap, margins."""

import math

import pytest
from pdf_strokes import Point, Walker
from template_strokes import ALL, CLOSE, DASH, EXACT, OVAL, PAPERS, SMALL, made, sized, walked

from undertrim.publish.printed.paper import Paper


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
