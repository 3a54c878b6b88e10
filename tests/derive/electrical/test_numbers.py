"""How numbers are printed, against decimal arithmetic and pint."""

from decimal import ROUND_HALF_UP, Decimal

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.derive.electrical.numbers import Amount, shown
from undertrim.resources import table
from undertrim.words import Language, say


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (0, "0"),
        (5, "5"),
        (0.48909, "0.4891"),
        (1989.4367, "1989"),
        (41741.3, "41741"),
        (0.99996, "1"),
        (99995.5, "99996"),
        (-2.5, "-2.5"),
        (0.00000123456, "0.000001235"),
        (1e15, "1000000000000000"),
        (1.00045, "1"),
        (0.29999999999999998, "0.3"),
    ],
)
def test_four_digits_and_no_exponent(value: float, expected: str) -> None:
    assert shown(value) == expected


@given(st.decimals("0.0001", "999999", places=6).filter(lambda number: number > 0))
def test_rounding_is_decimals_own(number: Decimal) -> None:
    place = max(number.adjusted(), 3) if number >= 1000 else 3
    quantum = Decimal(1).scaleb(min(0, number.adjusted() - place))
    assert Decimal(shown(float(number))) == number.quantize(quantum, ROUND_HALF_UP)


# pint has the international inch and foot, the circular mil and the offset of Fahrenheit.
UNITS = {
    "A": ("ampere", {"mA": "milliampere", "A": "ampere"}),
    "V": ("volt", {"mV": "millivolt", "V": "volt"}),
    "ohm": ("ohm", {"mohm": "milliohm", "ohm": "ohm"}),
    "F": ("farad", {"µF": "microfarad"}),
    "H": ("henry", {"mH": "millihenry"}),
    "s": ("second", {"ms": "millisecond"}),
    "share": ("dimensionless", {"%": "percent"}),
    "degC": ("degC", {"°C": "degC", "°F": "degF"}),
    "m/s": ("meter / second", {"m/s": "meter / second", "ft/s": "foot / second"}),
    "mm2": ("millimeter ** 2", {"mm²": "millimeter ** 2", "cmil": "circular_mil"}),
    "ohm/m": ("ohm / meter", {"mohm-per-metre": "milliohm / meter", "ohm-per-1000-feet": "ohm / kilofoot"}),
    "m": ("meter", {"m": "meter", "in": "inch", "ft": "foot"}),
}
SAME = {"W", "Hz", "Ah", "days", "times", "dB"}  # printed as they are kept


@pytest.mark.parametrize("unit", sorted(table("electrical-print")))
def test_every_printed_unit_agrees_with_pint(unit: str) -> None:
    rows = table("electrical-print")[unit]
    rows = [*rows, *(row["other"] for row in rows if "other" in row)]
    if unit in SAME:
        assert [(row["scale"], _shown(row)) for row in rows] == [(1, unit)]
        return
    kept, printed = UNITS[unit]
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    for row in rows:
        expected = registry.Quantity(3.75, kept).to(printed[_shown(row)]).magnitude
        assert 3.75 * row["scale"] + row.get("offset", 0) == pytest.approx(expected, rel=1e-12), row


def _shown(row: dict[str, str]) -> str:
    return row.get("symbol") or row["word"]


def test_both_systems_and_prefixes() -> None:
    assert say(Amount(5, "m")) == "5 m (16.4 ft)"
    assert say(Amount(0.94, "m")) == "0.94 m (37.01 in)"
    assert say(Amount(0.05, "A")) == "50 mA"
    assert say(Amount(-40, "degC")) == "-40 °C (-40 °F)"
    assert say(Amount(0.03, "share")) == "3 %"


def test_one_day_and_the_mark_of_the_language() -> None:
    assert [say(Amount(value, "days")) for value in (1, 1.5, 12)] == ["1 day", "1.5 days", "12 days"]
    assert say(Amount(5.5, "m"), Language("xx", decimal_mark=",")) == "5,5 m (18,04 ft)"
