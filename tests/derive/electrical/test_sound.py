"""Speakers, filters, levels, delays and rest, with published pairs and values worked by hand from the formulas beside them."""

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from refusing import lines, refused
from undertrim.derive.electrical import filters, impedance, levels
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.delay import delays, speed_of_sound
from undertrim.derive.electrical.rest import rest
from undertrim.resources import table
from undertrim.words import say, sentence, way_out


# 1 / sum(1/Z) and the sum
@pytest.mark.parametrize(
    ("text", "ohms"),
    [
        ("4|4", 2), ("4|4|4|4", 1), ("4|8", 2.667), ("4|2", 1.333), ("4+4", 8), ("4+4 | 4+4", 4), ("(4|4)+(4|4)", 4),
        ("4", 4), ("2.5 + 1.5", 4),
    ],
)  # fmt: skip
def test_arrangements(text: str, ohms: float) -> None:
    assert impedance.arranged(text).ohms == pytest.approx(ohms, abs=5e-4)


def test_lists_are_wired_one_way() -> None:
    assert impedance.wired([4, 4], "parallel").ohms == 2
    assert impedance.wired([4, 4], "series").ohms == 8


class Ohms(Fraction):
    """Python's own reading of the same notation: + binds closer than |."""

    def __add__(self, other: object) -> "Ohms":  # type: ignore[override]
        assert isinstance(other, Ohms)
        return Ohms(Fraction(self) + Fraction(other))

    def __or__(self, other: "Ohms") -> "Ohms":
        a, b = Fraction(self), Fraction(other)
        return Ohms(a * b / (a + b))


arrangements = st.recursive(
    st.integers(1, 30).map(str),
    lambda inner: st.one_of(
        st.lists(inner, min_size=2, max_size=3).map("+".join),
        st.lists(inner, min_size=2, max_size=3).map(" | ".join),
        inner.map("({})".format),
    ),
    max_leaves=10,
)


@given(arrangements)
def test_an_arrangement_is_read_as_python_reads_it(text: str) -> None:
    words = "".join(f"Ohms({part})" if part.isdigit() else part for part in _parts(text))
    expected = eval(words, {"Ohms": Ohms})  # noqa: S307 - our own digits and signs
    found = impedance.arranged(text)
    assert found.ohms == pytest.approx(float(expected), rel=1e-9)
    assert found.count == words.count("Ohms")


def _parts(text: str) -> list[str]:
    spaced = text
    for sign in "+|()":
        spaced = spaced.replace(sign, f" {sign} ")
    return spaced.split()


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "a speaker is missing at the end"),
        ("4+", "a speaker is missing at the end"),
        ("4||4", "a speaker is missing before '|'"),
        ("(4", "a bracket is not closed"),
        ("4)", "')' stands where it cannot"),
        ("4 4", "'4' stands where it cannot"),
        ("4 ohm", "'o' cannot be read in '4 ohm'"),
        ("4|0", "the load '0 mohm' cannot be right"),
        ("-4", "'-' cannot be read in '-4'"),
        ("(" * 30 + "4" + ")" * 30, "the brackets are too deep"),
        ("4+" * 200 + "4", "the arrangement is too long"),
    ],
)
def test_a_slip_in_an_arrangement_is_refused(text: str, message: str) -> None:
    with pytest.raises(Refused) as error:
        impedance.arranged(text)
    assert sentence(error.value.said).replace("speaker 2 ", "load ") == message
    assert way_out(error.value.said)


def test_a_load_below_what_outputs_allow_is_a_note_and_no_error() -> None:
    assert "below the 4 ohm that outputs usually allow (common practice)" in say(impedance.arranged("4|4").notes[0])
    assert "below" not in say(impedance.arranged("4|4", least=2).notes[0])
    assert "2 ohm is below the 3 ohm that the output allows" in say(impedance.arranged("4|4", least=3).notes[0])


# C = 1/(2 pi f R). Old charts take 0.159 for 1/(2 pi) and are 0.1 % low, so 0.2 % is allowed.
@pytest.mark.parametrize(
    ("hertz", "ohms", "micro"),
    [(100, 4, 397.9), (150, 4, 265.3), (300, 4, 132.6), (100, 8, 198.9), (3000, 4, 13.26), (100, 4, 397.5)],
)
def test_capacitor_of_a_high_pass(hertz: float, ohms: float, micro: float) -> None:
    found = filters.at(hertz, ohms)
    assert found.capacitance == pytest.approx(micro * 1e-6, rel=2e-3)


# f = 1/(2 pi R C): 10 uF at 8 ohm is a published example of a public forum (secondary), the others by hand
@pytest.mark.parametrize(("micro", "ohms", "hertz"), [(10, 8, 1989), (220, 4, 180.9), (470, 4, 84.7), (47, 4, 846.6)])
def test_corner_of_a_capacitor(micro: float, ohms: float, hertz: float) -> None:
    assert filters.of_capacitor(micro * 1e-6, ohms).frequency == pytest.approx(hertz, rel=6e-4)


# L = R/(2 pi f)
@pytest.mark.parametrize(("hertz", "ohms", "milli"), [(3000, 4, 0.2122), (100, 4, 6.366)])
def test_coil_of_a_low_pass(hertz: float, ohms: float, milli: float) -> None:
    assert filters.at(hertz, ohms).inductance == pytest.approx(milli * 1e-3, rel=5e-4)


@given(st.floats(20, 20000), st.floats(1, 16))
def test_a_corner_is_where_half_the_power_is_left(hertz: float, ohms: float) -> None:
    """By complex arithmetic: |R / (R + 1/jwC)| and |R / (R + jwL)| are 1/sqrt(2)."""
    found, omega = filters.at(hertz, ohms), 2j * math.pi * hertz
    assert found.capacitance is not None
    assert found.inductance is not None
    assert abs(ohms / (ohms + 1 / (omega * found.capacitance))) == pytest.approx(math.sqrt(0.5))
    assert abs(ohms / (ohms + omega * found.inductance)) == pytest.approx(math.sqrt(0.5))
    assert filters.of_capacitor(found.capacitance, ohms).frequency == pytest.approx(hertz)
    assert filters.of_coil(found.inductance, ohms).frequency == pytest.approx(hertz)


def test_preferred_values_follow_the_twelfth_root_of_ten() -> None:
    """E12 (IEC 60063) rounds 10^(n/12), with 2.7, 3.3, 3.9, 4.7 and 8.2 as they grew by use: within 0.15."""
    assert [
        abs(10 ** (n / 12) - one) < 0.15 for n, one in enumerate(table("electrical-defaults")["series"]["e12"])
    ] == [True] * 12


@given(st.floats(1e-9, 1))
def test_preferred_values_stand_on_both_sides(value: float) -> None:
    below, above = filters.neighbours(value)
    assert below <= value * (1 + 2e-9)
    assert value < above
    assert above / below < 1.27


def test_the_next_preferred_capacitors_are_named_with_their_corners() -> None:
    assert say(filters.at(100, 4).notes[0]) == "next preferred values: 390 µF gives 102 Hz, 470 µF gives 84.66 Hz"


# V = sqrt(P R)
@pytest.mark.parametrize(
    ("watts", "ohms", "volts"),
    [(100, 4, 20.00), (75, 4, 17.32), (50, 4, 14.14), (500, 1, 22.36), (300, 2, 24.49), (1000, 1, 31.62)],
)
def test_gain_voltage(watts: float, ohms: float, volts: float) -> None:
    assert levels.gain(watts, ohms).volts == pytest.approx(volts, abs=5e-3)


@pytest.mark.parametrize(
    ("decibels", "voltage"), [(-5, 0.5623), (-10, 0.3162), (20, 10), (0, 1), (-3.0103, math.sqrt(0.5))]
)
def test_levels_both_ways(decibels: float, voltage: float) -> None:
    found = levels.change(decibels)
    assert found.voltage == pytest.approx(voltage, abs=5e-5)
    assert found.power == pytest.approx(voltage**2, abs=1e-4)
    assert levels.ratio(voltage, 1).decibels == pytest.approx(decibels, abs=2e-3)


# 343.2 m/s at 20 °C (ISO 9613-1, secondary); the others also from 331.3 sqrt(1 + T/273.15) (secondary)
@pytest.mark.parametrize(("celsius", "speed"), [(0, 331.3), (15, 340.3), (20, 343.2), (25, 346.1), (40, 354.7)])
def test_speed_of_sound(celsius: float, speed: float) -> None:
    assert speed_of_sound(celsius) == pytest.approx(speed, abs=0.06)
    assert speed_of_sound(celsius) == pytest.approx(331.3 * math.sqrt(1 + celsius / 273.15), rel=2e-4)


# (far - near) / c at 20 °C
@pytest.mark.parametrize(("far", "near", "milli"), [(2.0, 1.0, 2.914), (1.37, 0.94, 1.253), (0.8432, 0.5, 1.0)])
def test_delay(far: float, near: float, milli: float) -> None:
    assert delays([near, far], 20).seconds == pytest.approx((milli * 1e-3, 0), abs=5e-7)


def test_delays_keep_their_order_and_one_is_not_enough() -> None:
    assert [round(wait * 1000, 2) for wait in delays([1.0, 2.0, 1.5]).seconds] == [2.91, 0, 1.46]
    with refused("1 distance makes no delay"):
        delays([1.0])


# half of 60 Ah
@pytest.mark.parametrize(("milli", "days"), [(20, 62.5), (35, 35.7), (50, 25.0), (85, 14.7), (500, 2.5)])
def test_days_of_rest(milli: float, days: float) -> None:
    found = rest(60, milli / 1000)
    assert found.days == pytest.approx(days, abs=0.05)
    assert any("more than the usual 50 mA" in note for note in lines(found.notes)) == (milli > 50)
    assert rest(60, milli / 1000, 0.25).days == pytest.approx(found.days / 2)
