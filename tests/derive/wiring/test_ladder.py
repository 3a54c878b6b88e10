"""Button ladders: bands by hand and by fractions, overlaps of preferred values, and which button a reading is."""

import math
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.derive.wiring.ladder import leads_matter, overlaps, place, rungs
from undertrim.record.model import Blank, Ladder
from undertrim.record.units import Quantity, parse
from undertrim.resources import table

# IEC 60063: preferred values of a decade, with the tolerance that each series was made for (values from memory).
SERIES = {
    20: (10, 15, 22, 33, 47, 68),  # E6
    10: (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),  # E12
    5: (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),  # E24
}


def ladder(tolerance: str, idle: str | None = None, **buttons: str) -> Ladder:
    known: dict[str, Quantity | Blank] = {name: _quantity(text) for name, text in buttons.items()}
    rest = None if idle is None else _quantity(idle)
    return Ladder("wheel", "radio-main/15", parse(tolerance, "share"), known, idle=rest)


def _quantity(text: str) -> Quantity | Blank:
    return Blank(text) if text in tuple(Blank) else parse(text, "resistance")


def bands(item: Ladder) -> dict[str, tuple[float, float]]:
    return {rung.name: (rung.low, rung.high) for rung in rungs(item)}


def test_bands_by_hand() -> None:
    found = bands(ladder("5 %", "10 kohm", up="330 ohm", down="680 ohm", mute="4.7 kohm"))
    assert found == {"up": (313.5, 346.5), "down": (646, 714), "mute": (4465, 4935), "idle": (9500, 10500)}


@given(st.integers(1, 99999), st.integers(0, 2), st.integers(1, 400))
def test_bands_are_the_exact_ones_rounded_once(digits: int, decimals: int, tenths: int) -> None:
    """R(1 - t) and R(1 + t) with the fractions module."""
    nominal, share = Fraction(digits, 10**decimals), Fraction(tenths, 1000)
    text = f"{digits / 10**decimals:.{decimals}f} ohm"
    low, high = bands(ladder(f"{tenths / 10:.1f} %", up=text))["up"]
    assert (low, high) == (float(nominal * (1 - share)), float(nominal * (1 + share)))


@pytest.mark.parametrize("tolerance", SERIES)
def test_neighbours_of_a_series_touch_at_its_own_tolerance(tolerance: int) -> None:
    """Which neighbours touch, worked in whole numbers: a(100 + t) >= b(100 - t)."""
    values = [*SERIES[tolerance], SERIES[tolerance][0] * 10]
    pairs = list(pairwise(values))
    touching = {(a, b) for a, b in pairs if a * (100 + tolerance) >= b * (100 - tolerance)}
    for a, b in pairs:
        found = overlaps(rungs(ladder(f"{tolerance} %", one=f"{a}0 ohm", two=f"{b}0 ohm")))
        assert bool(found) == ((a, b) in touching), (a, b)
    assert touching
    finer = [overlaps(rungs(ladder("1 %", one=f"{a}0 ohm", two=f"{b}0 ohm"))) for a, b in pairs]
    assert not any(finer)


def test_a_shared_end_is_an_overlap() -> None:
    """By hand: 90 x 1.10 = 99 and 110 x 0.90 = 99."""
    (both,) = overlaps(rungs(ladder("10 %", a="90 ohm", b="110 ohm")))
    assert (both.first.name, both.second.name, both.low, both.high) == ("a", "b", 99, 99)
    assert place(rungs(ladder("10 %", a="90 ohm", b="110 ohm")), 99.0).kind == "ambiguous"


@pytest.mark.parametrize(
    ("ohms", "kind", "names"),
    [
        (330, "button", ["up"]),
        (313.5, "button", ["up"]),
        (346.5, "button", ["up"]),
        (313.49, "none", []),
        (346.51, "none", []),
        (690, "ambiguous", ["down", "mute"]),
        (10000, "idle", ["idle"]),
        (0, "none", []),
        (math.inf, "none", []),
    ],
)
def test_a_reading_is_one_button_idle_none_or_ambiguous(ohms: float, kind: str, names: list[str]) -> None:
    steps = rungs(ladder("5 %", "10 kohm", up="330 ohm", down="680 ohm", mute="700 ohm"))
    found = place(steps, ohms)
    assert (found.kind, [rung.name for rung in found.rungs]) == (kind, names)


def test_between_bands_the_neighbours_are_named() -> None:
    found = place(rungs(ladder("5 %", up="330 ohm", down="680 ohm")), 500)
    assert found.below is not None
    assert found.above is not None
    assert (found.below.name, found.above.name) == ("up", "down")
    lowest = place(rungs(ladder("5 %", up="330 ohm")), 5)
    assert lowest.below is None


def test_idle_that_is_open() -> None:
    steps = rungs(ladder("5 %", "none", up="330 ohm"))
    assert place(steps, math.inf).kind == "idle"
    assert place(steps, float(table("functions")["ladder"]["open_from"])).kind == "idle"
    assert place(steps, 400e3).kind == "none"


@pytest.mark.parametrize("idle", [None, "unknown"])
def test_idle_that_nobody_recorded_stays_unknown(idle: str | None) -> None:
    assert place(rungs(ladder("5 %", idle, up="330 ohm")), math.inf).kind == "none"


def test_a_button_near_idle_overlaps_it() -> None:
    (both,) = overlaps(rungs(ladder("5 %", "10 kohm", up="9.6 kohm")))
    assert {both.first.name, both.second.name} == {"up", "idle"}
    (open_,) = overlaps(rungs(ladder("5 %", "none", up="999 kohm")))
    assert (open_.low, open_.high) == (1e6, 999e3 * 1.05)


def test_a_button_that_shorts_the_line_reads_what_the_leads_read() -> None:
    steps = rungs(ladder("5 %", press="0 ohm", up="330 ohm"))
    assert place(steps, 0.6).rungs[0].name == "press"
    assert place(steps, 5).kind == "none"
    assert leads_matter(0.6)
    assert not leads_matter(330)


def test_a_button_without_a_value_has_no_band() -> None:
    assert list(bands(ladder("5 %", up="330 ohm", down="unknown"))) == ["up"]


@given(st.lists(st.integers(1, 5000), min_size=1, max_size=8, unique=True), st.integers(1, 30), st.floats(0, 7000))
def test_the_kind_follows_from_how_many_bands_hold_it(nominal: list[int], tolerance: int, ohms: float) -> None:
    item = ladder(f"{tolerance} %", **{f"b{value}": f"{value} ohm" for value in nominal})
    share = Fraction(tolerance, 100)
    exact = [value for value in nominal if value * (1 - share) <= Fraction(ohms) <= value * (1 + share)]
    near_an_end = any(abs(ohms - end) < 1e-9 for rung in rungs(item) for end in (rung.low, rung.high))
    if not near_an_end:
        found = place(rungs(item), ohms)
        assert sorted(rung.name for rung in found.rungs) == sorted(f"b{value}" for value in exact)
        assert found.kind == ("none" if not exact else "button" if len(exact) == 1 else "ambiguous")
