"""Screws in true size: a unit is a millimetre, sizes are those of the standards, and what is not known is not drawn."""

import itertools
import math
import re

import pytest

from svg_reading import parsed, points
from undertrim.derive.procedure.fastener_lines import coming_out
from undertrim.derive.procedure.steps import Step
from undertrim.publish.facts.true_size import true_sizes
from undertrim.publish.pictures.drawings import true_size
from undertrim.record.model import Fastener, Part
from undertrim.record.units import parse
from undertrim.resources import table


def drawn(family: str, across: float | None, thread: float | None, length: float | None) -> list[str]:
    text, wide = true_size.fastener("x", family, across, thread, length)
    root = parsed(text)
    _, _, width, height = map(float, root.get("viewBox", "").split())
    assert (root.get("width"), root.get("height")) == (f"{width:g}mm", f"{height:g}mm")
    assert width == pytest.approx(wide, abs=0.01)
    return [one.get("d", "") for one in root if one.get("d")]


@pytest.mark.parametrize("across", [5.5, 7, 10, 19])
def test_a_hexagon_is_as_wide_over_its_flats_as_it_is_called(across: float) -> None:
    corners = points(drawn("hex", across, None, None)[0])
    xs = [x for x, _ in corners]
    assert max(xs) - min(xs) == pytest.approx(across, abs=0.011)
    ys = [y for _, y in corners]
    assert max(ys) - min(ys) == pytest.approx(2 * across / math.sqrt(3), abs=0.011)


# ISO 10664, table 1, over the points: 30 as printed there, the rest from memory of it.
@pytest.mark.parametrize(("number", "across"), [("10", 2.80), ("20", 3.95), ("25", 4.50), ("30", 5.60), ("40", 6.75)])
def test_a_hexalobular_drive_is_as_wide_as_in_the_standard(number: str, across: float) -> None:
    assert table("recesses")["hexalobular"][number] == across
    tips = [
        float(y) for y in re.findall(r"-?[\d.]+ (-?[\d.]+)(?= A|$| Z)", drawn("hexalobular", across, None, None)[0])
    ]
    assert max(tips) - min(tips) == pytest.approx(across, abs=0.12 * across)


def test_a_shank_is_as_long_and_as_thick_as_recorded() -> None:
    shank = drawn("hexalobular", 3.95, 4.2, 16)[1]
    assert "h16 v4.2 h-16" in shank
    assert "h16" in drawn("phillips", None, None, 16)[0]
    assert len(drawn("phillips", None, None, 16)) == 2  # its cross goes by its head, of which nothing is recorded


def test_the_ruler_has_fifty_millimetres() -> None:
    text, wide = true_size.ruler("x")
    (path,) = (one.get("d", "") for one in parsed(text) if one.get("d"))
    ticks = sorted(float(x) for x in re.findall(r"M([\d.]+) 6 V2", path))
    assert [round(b - a, 2) for a, b in itertools.pairwise(ticks)] == [10.0] * 5
    assert wide == 51


def test_each_sort_stands_there_once_and_those_without_any_size_do_not() -> None:
    held = (
        Fastener("screw", "T20", length=parse("16 mm", "length")),
        Fastener("screw", "T20", length=parse("25 mm", "length"), thread="ST4.2"),
        Fastener("screw", "PH2"),
        Fastener("nut", "hex 10 mm", thread="M6"),
        Fastener("clip", "push"),
    )
    part = Part("panel", "Panel", "pull", held_by=held)
    step = Step(id="remove:panel", kind="remove", section="remove", title="Panel", fasteners=coming_out(part, {}))
    found = true_sizes([step, step])
    assert [(one.family, one.across, one.thread, one.length) for one in found] == [
        ("hexalobular", 3.95, None, 16),
        ("hexalobular", 3.95, 4.2, 25),
        ("hex", 10, 6, None),
    ]
