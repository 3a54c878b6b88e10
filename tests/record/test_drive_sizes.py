"""Which tool goes on which fastener: inch beside metric, and sizes against threads of the standards named beside each table."""

from fractions import Fraction

import pytest

from undertrim.record.drive_sizes import families
from undertrim.record.drives import near_equals, parse, thread_note
from undertrim.words import sentence

# ISO 272, ISO 4014, ISO 4017 and ISO 4032 across flats, and the older DIN 931 and DIN 933, in mm: table data
# named by standard; the older M10 to M14 are also in a mechanical engineer's handbook.
HEXAGONS = {
    "M1.6": (3.2, 3.2),
    "M2": (4, 4),
    "M2.5": (5, 5),
    "M3": (5.5, 5.5),
    "M3.5": (6, 6),
    "M4": (7, 7),
    "M5": (8, 8),
    "M6": (10, 10),
    "M8": (13, 13),
    "M10": (16, 17),
    "M12": (18, 19),
    "M14": (21, 22),
    "M22": (34, 32),
}
# ISO 14583 pan heads, and the numbers of ISO 10664 that they use: table data named by standard.
HEXALOBULARS = {"M2": 6, "M2.5": 8, "M3": 10, "M3.5": 15, "M4": 20, "M5": 25, "M6": 30, "M8": 45, "M10": 50}
# ISO 7046 with the drivers of ISO 4757: table data named by standard.
CROSSES = {"M1.6": 0, "M2": 0, "M2.5": 1, "M3": 1, "M3.5": 2, "M4": 2, "M5": 2, "M6": 3, "M8": 4, "M10": 4}


# Inch socket on metric hexagon: gap from 1 in = 25.4 mm exactly; verdicts are common practice, no source.
@pytest.mark.parametrize(
    ("socket", "hexagon", "gap", "verdict"),
    [
        ("1/8", "3.2", -0.025, "same"),
        ("5/32", "4", -0.031, "same"),
        ("3/16", "5", -0.238, ""),
        ("7/32", "5.5", 0.056, "usable"),
        ("1/4", "6", 0.350, ""),
        ("9/32", "7", 0.144, "marginal"),
        ("5/16", "8", -0.063, "usable"),
        ("11/32", "9", -0.269, ""),
        ("3/8", "10", -0.475, ""),
        ("7/16", "11", 0.113, "usable"),
        ("1/2", "13", -0.300, ""),
        ("9/16", "14", 0.288, "marginal"),
        ("19/32", "15", 0.081, "usable"),
        ("5/8", "16", -0.125, ""),
        ("11/16", "17", 0.463, ""),
        ("3/4", "19", 0.050, "usable"),
        ("25/32", "20", -0.156, ""),
        ("13/16", "21", -0.363, ""),
        ("7/8", "22", 0.225, "marginal"),
        ("15/16", "24", -0.188, ""),
        ("1 1/16", "27", -0.013, "same"),
    ],
)
def test_inch_socket_on_metric_hexagon(socket: str, hexagon: str, gap: float, verdict: str) -> None:
    found = {near.drive.label: near for near in near_equals(parse(f"hex {hexagon} mm"))}
    near = found.get(f"hex {socket} in")
    assert (near.verdict if near else "") == verdict
    assert Fraction(parse(f"hex {socket} in").size or 0) - Fraction(hexagon) == pytest.approx(gap, abs=6e-4)
    assert near is None or near.gap_mm == pytest.approx(gap, abs=6e-4)


@pytest.mark.parametrize(
    ("hexagon", "sockets"),
    [
        ("7/32 in", [("hex 5.5 mm", "usable")]),
        ("1/4 in", []),  # a 6.5 mm socket is rare and never offered
        ("1/2 in", [("hex 13 mm", "marginal")]),  # +0.300 is still on the limit
        ("5/16 in", [("hex 8 mm", "usable")]),
        ("11/16 in", []),
    ],
)
def test_metric_socket_on_inch_hexagon(hexagon: str, sockets: list[tuple[str, str]]) -> None:
    assert [(near.drive.label, near.verdict) for near in near_equals(parse(f"hex {hexagon}"))] == sockets


def test_near_equals_are_ordered_and_only_for_hexagons() -> None:
    for size in families()["hex"].sizes:
        gaps = [abs(near.gap_mm) for near in near_equals(parse(f"hex {size.text}"))]
        assert gaps == sorted(gaps)
    assert near_equals(parse("hex key 4 mm")) == []
    assert near_equals(parse("hand")) == []


def noted(thread: str, drive: str) -> str | None:
    """The note in words."""
    note = thread_note(thread, parse(drive))
    return sentence(note) if note else None


@pytest.mark.parametrize("thread", HEXAGONS)
def test_hexagons_of_both_standards_pass(thread: str) -> None:
    for across in HEXAGONS[thread]:
        assert thread_note(thread, parse(f"hex {across} mm")) is None
    assert thread_note(thread, parse("hex 36 mm"))


@pytest.mark.parametrize("thread", HEXALOBULARS)
def test_hexalobular_numbers_of_iso_14583(thread: str) -> None:
    right = HEXALOBULARS[thread]
    assert thread_note(thread, parse(f"T{right}")) is None
    assert thread_note(thread, parse(f"T{right} pin")) is None
    assert f"T{right}" in (noted(thread, "T60") or "")


@pytest.mark.parametrize("thread", CROSSES)
def test_cross_recesses_of_iso_7046(thread: str) -> None:
    right = CROSSES[thread]
    assert thread_note(thread, parse(f"PH{right}")) is None
    assert thread_note(thread, parse(f"PZ{right}")) is None
    assert f"(PH{right})" in (noted(thread, f"PH{(right + 1) % 5}") or "")


@pytest.mark.parametrize(
    ("thread", "drive", "note"),
    [
        ("M6", "hex 8 mm", "ISO 4014 gives an M6 hexagon 10 mm across flats"),
        ("M6x1", "hex 8 mm", "ISO 4014 gives an M6 hexagon 10 mm across flats"),
        ("m6 × 1", "hex 8 mm", "ISO 4014 gives an M6 hexagon 10 mm across flats"),
        ("M3", "hex 7/32 in", "ISO 4014 gives an M3 hexagon 5.5 mm across flats"),
        ("M10", "hex 15 mm", "ISO 4014 gives an M10 hexagon 16 mm across flats, the older DIN 931 17 mm"),
        ("M6", "T25", "ISO 14583 gives an M6 pan head the hexalobular drive T30"),
        ("M8", "T40", None),  # met under the older DIN 7985 heads
        ("M6", "PH2", "ISO 7046 gives an M6 screw cross recess number 3 (PH3)"),
        ("ST4.2", "PZ3", "an ST4.2 tapping screw usually takes PZ2"),
        ("ST4.2", "PH2", None),
        ("ST4.2", "hex 7 mm", None),
        ("M12", "T55", None),
        ("M7", "hex 8 mm", None),
        ("6", "hex 8 mm", None),
        ("M6", "hex key 4 mm", None),
        ("M6", "hand", None),
    ],
)
def test_thread_note(thread: str, drive: str, note: str | None) -> None:
    assert noted(thread, drive) == note
