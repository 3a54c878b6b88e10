"""Second-order crossovers, the capacitor before a tweeter and pads, against the complex transfer function of the ladder and a handbook's values."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.derive.electrical import crossovers, filters, tweeter_parts
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.crossovers import Alignment, SecondOrder

ALIGNMENTS: tuple[Alignment, ...] = ("butterworth", "linkwitz-riley")
corners, loads = st.floats(200, 12000), st.floats(1, 16)


def across(one: complex, other: complex) -> complex:
    """Two impedances side by side."""
    return one * other / (one + other)


def high(made: SecondOrder, load: float, frequency: float) -> complex:
    """Voltage at the load over that at the input: capacitor in series, coil across the load, by the divider in complex numbers."""
    s = 2j * math.pi * frequency
    shunt = across(s * made.inductance, load)
    return shunt / (shunt + 1 / (s * made.capacitance))


def low(made: SecondOrder, load: float, frequency: float) -> complex:
    """The same for the low-pass: coil in series, capacitor across the load."""
    s = 2j * math.pi * frequency
    shunt = across(1 / (s * made.capacitance), load)
    return shunt / (shunt + s * made.inductance)


def decibels(ratio: complex) -> float:
    return 20 * math.log10(abs(ratio))


# Normalised filter tables (any handbook of filters): second order Butterworth has Q = 1/sqrt(2) and -3.01 dB at its corner,
# Linkwitz-Riley Q = 0.5 and -6.02 dB, whatever the load.
@given(corners, loads, st.sampled_from(ALIGNMENTS))
def test_the_ladder_has_the_level_of_its_kind_at_the_corner(corner: float, load: float, alignment: Alignment) -> None:
    made, wanted = (
        crossovers.second_order(corner, load, alignment),
        {"butterworth": -3.0103, "linkwitz-riley": -6.0206},
    )
    assert decibels(high(made, load, corner)) == pytest.approx(wanted[alignment], abs=1e-3)
    assert decibels(low(made, load, corner)) == pytest.approx(wanted[alignment], abs=1e-3)


# 12 dB for each octave: far below the corner the level falls with the square of the frequency.
@pytest.mark.parametrize("alignment", ALIGNMENTS)
def test_it_falls_by_twelve_decibels_an_octave(alignment: Alignment) -> None:
    made = crossovers.second_order(3000, 4, alignment)
    assert decibels(high(made, 4, 30)) - decibels(high(made, 4, 15)) == pytest.approx(12.04, abs=0.01)


# Butterworth is |H|^2 = 1/(1 + (fc/f)^4) at every frequency: maximally flat.
@given(st.floats(20, 20000))
def test_butterworth_is_flat_as_the_closed_form(frequency: float) -> None:
    made = crossovers.second_order(3000, 4, "butterworth")
    assert abs(high(made, 4, frequency)) ** 2 == pytest.approx(1 / (1 + (3000 / frequency) ** 4), rel=1e-9)


# Linkwitz and Riley: the two ways with opposite polarity sum to the same level at every frequency.
@given(st.floats(20, 20000))
def test_linkwitz_riley_sums_flat_in_opposite_polarity(frequency: float) -> None:
    made = crossovers.second_order(3000, 4, "linkwitz-riley")
    assert abs(low(made, 4, frequency) - high(made, 4, frequency)) == pytest.approx(1, rel=1e-9)


# A handbook's table prints C = 0.1125/(R f), L = 0.2251 R/f and C = 0.0796/(R f), L = 0.3183 R/f.
@pytest.mark.parametrize(
    ("alignment", "c", "coil"), [("butterworth", 0.1125, 0.2251), ("linkwitz-riley", 0.0796, 0.3183)]
)
def test_the_constants_of_the_printed_table(alignment: Alignment, c: float, coil: float) -> None:
    made = crossovers.second_order(3000, 4, alignment)
    assert made.capacitance * 4 * 3000 == pytest.approx(c, abs=6e-5)
    assert made.inductance * 3000 / 4 == pytest.approx(coil, abs=6e-5)


# k = 10^(-A/20): 3 dB on 4 ohm is 1.17 ohm in series and 9.70 ohm across (worked by hand).
def test_a_pad_of_three_decibels() -> None:
    made = crossovers.pad(3, 4)
    assert [made.series, made.across] == [pytest.approx(1.17, abs=5e-3), pytest.approx(9.70, abs=5e-3)]


@given(st.floats(0.1, 40), loads)
def test_a_pad_keeps_the_load_and_takes_its_level(level: float, load: float) -> None:
    made = crossovers.pad(level, load)
    seen = across(made.across, load)
    assert abs(made.series + seen) == pytest.approx(load)
    assert decibels(seen / (made.series + seen)) == pytest.approx(-level)


# The three powers by the divider in complex numbers: I^2 R of each, against shares of what goes in.
@given(st.floats(0.1, 40), loads, st.floats(1, 500))
def test_the_heat_of_a_pad_is_what_its_resistors_take(level: float, load: float, power: float) -> None:
    made = tweeter_parts.pad(level, load, power)
    volts = math.sqrt(power * load)
    through = volts / (made.series + abs(across(made.across, load)))
    left = volts - through * made.series
    assert made.heat[0] * power == pytest.approx(through**2 * made.series)
    assert made.heat[1] * power == pytest.approx(left**2 / made.across)
    assert sum(made.heat) * power + left**2 / load == pytest.approx(power)
    assert [number.value for number in made.numbers if number.unit == "W"][1:] == [
        pytest.approx(part * power) for part in made.heat
    ]


@given(corners, loads, st.sampled_from(ALIGNMENTS))
def test_an_answer_has_the_parts_and_the_standard_values_around_them(
    corner: float, load: float, alignment: Alignment
) -> None:
    found, made = tweeter_parts.crossover(corner, load, alignment), crossovers.second_order(corner, load, alignment)
    assert (found.capacitance, found.inductance) == (made.capacitance, made.inductance)
    for part in (made.capacitance, made.inductance):
        below, above = filters.neighbours(part)
        assert below <= part * (1 + 1e-9) < above * (1 + 1e-9)
    assert decibels(high(made, load, corner)) == pytest.approx(crossovers.at_corner(alignment), abs=1e-6)


# 3 kHz into 4 ohm: 13.26 uF, and the standard value below is 12 uF with its corner at 3316 Hz; 60 W peak at sqrt(2 * 60 * 4) = 21.9 V.
def test_the_capacitor_before_a_tweeter() -> None:
    found = crossovers.series_capacitor(3000, 4, 60)
    assert found.exact == pytest.approx(13.263e-6, rel=1e-4)
    assert found.standard == pytest.approx(12e-6)
    assert found.corner == pytest.approx(3315.7, abs=0.1)
    assert found.volts == pytest.approx(21.91, abs=0.01)
    assert found.rated == 25


@given(corners, loads, st.floats(1, 2000))
def test_the_standard_capacitor_never_lets_lower_tones_through(corner: float, load: float, power: float) -> None:
    found = crossovers.series_capacitor(corner, load, power)
    at_corner = load / (load + 1 / (2j * math.pi * found.corner * found.standard))
    assert found.corner >= corner * (1 - 1e-9)
    assert decibels(at_corner) == pytest.approx(-3.0103, abs=1e-3)
    assert found.coarse <= found.standard <= found.exact * (1 + 1e-9)
    assert found.rated is None or found.rated >= found.volts


# IEC 60063: six and twelve values a decade, each the rounded power of the sixth or twelfth root of ten but for a few of history.
def test_series_of_preferred_values() -> None:
    assert list(filters.neighbours(13.26e-6, "e6")) == [pytest.approx(10e-6), pytest.approx(15e-6)]
    assert list(filters.neighbours(13.26e-6)) == [pytest.approx(12e-6), pytest.approx(15e-6)]


@pytest.mark.parametrize(("frequency", "load"), [(0, 4), (3000, 0), (math.inf, 4)])
def test_nonsense_is_refused(frequency: float, load: float) -> None:
    with pytest.raises(Refused):
        crossovers.second_order(frequency, load, "butterworth")


@pytest.mark.parametrize("level", [0, -3, math.nan])
def test_a_pad_takes_something_off(level: float) -> None:
    with pytest.raises(Refused):
        crossovers.pad(level, 4)
