"""Typed quantities against exact definitions and pint; how they are shown, and when two agree."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.record.equivalents import rounded
from undertrim.record.unit_table import kinds
from undertrim.record.units import agree, parse, show

# Our unit names in pint's words, where they differ. pint has the international inch and pound definitions.
PINT_NAMES = {
    "in": "inch",
    "N.m": "newton * meter",
    "N.cm": "newton * centimeter",
    "lbf.in": "force_pound * inch",
    "lbf.ft": "force_pound * foot",
    "h": "hour",
    "kohm": "kiloohm",
    "mohm": "milliohm",
    "Mohm": "megaohm",
}
UNITS = [(kind.key, name) for kind in kinds().values() for name in kind.units if kind.key != "count"]


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry()


@pytest.mark.parametrize(("kind", "name"), UNITS)
def test_every_unit_agrees_with_pint(registry: pint.UnitRegistry[float], kind: str, name: str) -> None:
    canonical = kinds()[kind].canonical
    typed = registry.Quantity(3.75, PINT_NAMES.get(name, name))
    ours = parse(f"3.75 {kinds()[kind].units[name].spellings[0]}", kind)
    assert ours.value == pytest.approx(typed.to(PINT_NAMES.get(canonical, canonical)).magnitude, rel=1e-12)
    assert ours.unit == canonical


def test_every_spelling_means_its_own_unit() -> None:
    for kind in kinds().values():
        for unit in kind.units.values():
            values = {parse(f"4 {spelling}", kind.key).value for spelling in unit.spellings}
            assert values == {float(4 * unit.factor + unit.offset)}


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        ("1 in", "length", 25.4),  # international inch, exact
        ("7/32 in", "length", 5.55625),  # GNU Units 2.22
        ("2 3/16 in", "length", 55.5625),
        ("2-3/16 in", "length", 55.5625),
        ('2 3/16"', "length", 55.5625),
        ("2.19 in", "length", 55.626),
        (".5 in", "length", 12.7),
        ("62mm", "length", 62),
        ("  62   MM ", "length", 62),
        ("6.2 cm", "length", 62),
        ("0.4 m", "length", 400),
        ("12 min", "time", 720),
        ("1 h", "time", 3600),
        ("10 Nm", "torque", 10),
        ("10 N·m", "torque", 10),
        ("10 N m", "torque", 10),
        ("4 Ω", "resistance", 4),
        ("4 \N{OHM SIGN}", "resistance", 4),
        ("150 mA", "current", 0.15),
        ("12.6 V", "voltage", 12.6),
        ("5°", "angle", 5),
        ("-10 °C", "temperature", -10),
        ("50 °F", "temperature", 10),
        ("4", "count", 4),
    ],
)
def test_what_people_type(text: str, kind: str, value: float) -> None:
    assert parse(text, kind).value == value


@pytest.mark.parametrize("text", ["10 lbf.in", "10 in-lb", "10 lb-in", "10 IN LB"])
def test_ten_pound_inches(text: str) -> None:
    assert parse(text, "torque").value == pytest.approx(1.12985, abs=5e-6)  # GNU Units 2.22, pint


@pytest.mark.parametrize("text", ["1 lbf.ft", "1 ft-lb", "1 lb-ft", "1 ft-lbs"])
def test_one_pound_foot(text: str) -> None:
    assert parse(text, "torque").value == pytest.approx(1.35582, abs=5e-6)  # GNU Units 2.22, pint


@pytest.mark.parametrize(
    ("text", "kind", "step"),
    [
        ("62 mm", "length", 0.5),
        ("62.0 mm", "length", 0.05),
        ("6.2 cm", "length", 0.5),
        ("2.19 in", "length", 0.127),
        ("2 3/16 in", "length", 25.4 / 32),
        ("7/32 in", "length", 25.4 / 64),
        ("2 in", "length", 25.4 / 32),
        ("2 1/2 in", "length", 25.4 / 32),
        ("12 min", "time", 30),
        ("4", "count", 0),
    ],
)
def test_step_is_the_coarseness_typed(text: str, kind: str, step: float) -> None:
    assert parse(text, kind).step == pytest.approx(step, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "kind", "shown"),
    [
        ("62 mm", "length", "62 mm (2.44 in)"),
        ("6.2cm", "length", "6.2 cm (2.44 in)"),
        ("5.5 mm", "length", "5.5 mm (0.217 in)"),
        ("0.01 mm", "length", "0.01 mm (0.00039 in)"),
        ("0 mm", "length", "0 mm (0 in)"),
        ("5 m", "length", "5 m (16.4 ft)"),
        ('2-3/16"', "length", "2 3/16 in (55.6 mm)"),
        ("7/32 in", "length", "7/32 in (5.56 mm)"),
        ("1/8 in", "length", "1/8 in (3.18 mm)"),
        ("10 in", "length", "10 in (254 mm)"),
        ("10 ft", "length", "10 ft (3.05 m)"),
        ("10 Nm", "torque", "10 N·m (88.5 lbf·in)"),
        ("40 N.m", "torque", "40 N·m (29.5 lbf·ft)"),
        ("110 N.m", "torque", "110 N·m (81.1 lbf·ft)"),
        ("88 in-lb", "torque", "88 lbf·in (9.94 N·m)"),
        ("30 ft-lb", "torque", "30 lbf·ft (40.7 N·m)"),
        ("45 s", "time", "45 s"),
        ("90 s", "time", "1 min 30 s"),
        ("600 s", "time", "10 min"),
        ("12 min", "time", "12 min"),
        ("1.5 h", "time", "1 h 30 min"),
        ("0.5 s", "time", "0.5 s"),
        ("0 s", "time", "0 s"),
        ("25 days", "time", "25 days"),
        ("150 mA", "current", "150 mA"),
        ("4 ohm", "resistance", "4 Ω"),
        ("5 deg", "angle", "5°"),
        ("-10 degC", "temperature", "-10 °C (14 °F)"),
        ("32 °F", "temperature", "32 °F (0 °C)"),
        ("-18 °C", "temperature", "-18 °C (-0.4 °F)"),  # rounded to whole degrees it would be "-0"
        ("1.2 kg", "mass", "1.2 kg (2.65 lb)"),
        ("4", "count", "4"),
    ],
)
def test_show(text: str, kind: str, shown: str) -> None:
    assert show(parse(text, kind)) == shown


@pytest.mark.parametrize(
    ("a", "b", "kind", "same"),
    [
        ("2 3/16 in", "55.6 mm", "length", True),
        ("2 in", "50 mm", "length", False),  # a 2 in hole leaves 0.8 mm round a 50 mm part
        ("7 in", "180 mm", "length", False),
        ("2.19 in", "55.6 mm", "length", True),
        ("2.19 in", "2.19 mm", "length", False),
        ("62 mm", "62.5 mm", "length", True),
        ("62.0 mm", "62.5 mm", "length", False),
        ("40 N.m", "40 lb-ft", "torque", False),
        ("110 N.m", "81 lb-ft", "torque", True),
        ("120 s", "2 min", "time", True),
        ("4", "5", "count", False),
    ],
)
def test_agree(a: str, b: str, kind: str, same: bool) -> None:
    assert agree(parse(a, kind), parse(b, kind)) is same
    assert agree(parse(b, kind), parse(a, kind)) is same


def test_two_kinds_never_agree() -> None:
    assert not agree(parse("5 V", "voltage"), parse("5 A", "current"))


@given(st.integers(0, 99_999), st.integers(0, 3), st.sampled_from(UNITS))
def test_a_decimal_reads_as_itself(digits: int, places: int, unit: tuple[str, str]) -> None:
    kind, name = unit
    number = f"{digits / 10**places:.{places}f}"
    found = kinds()[kind].units[name]
    quantity = parse(f"{number} {found.spellings[0]}", kind)
    back = (quantity.value - float(found.offset)) / float(found.factor)
    assert back == pytest.approx(float(number), rel=1e-12, abs=1e-9)
    assert parse(quantity.text, kind) == quantity
    assert "(-0 " not in show(quantity)


@given(st.integers(0, 40), st.integers(1, 7), st.data())
def test_a_fraction_reads_as_its_decimal(whole: int, power: int, data: st.DataObject) -> None:
    bottom = 2**power
    top = data.draw(st.integers(1, bottom - 1))
    text = f"{whole} {top}/{bottom} in" if whole else f"{top}/{bottom} in"
    assert parse(text, "length").value == pytest.approx((whole + top / bottom) * 25.4, rel=1e-14)


@given(st.integers(1, 5000), st.sampled_from(["mm", "in"]))
def test_both_printed_values_agree(number: int, unit: str) -> None:
    quantity = parse(f"{number / 10} {unit}", "length")
    other = show(quantity).partition(" (")[2].rstrip(")")
    assert agree(quantity, parse(other, "length"))


@given(st.decimals(-10_000, 10_000, places=6), st.integers(0, 4))
def test_rounding_is_decimals_own(number: Decimal, decimals: int) -> None:
    expected = number.quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP)
    if not number or abs(number) >= Decimal(1).scaleb(-decimals):
        assert Decimal(rounded(Fraction(number), decimals)) == expected


def test_a_long_number_is_printed_whole() -> None:
    assert show(parse("1" + "0" * 34 + " mm", "length")).startswith("1" + "0" * 34 + " mm (")


@pytest.mark.parametrize(
    ("text", "value", "shown"),
    [
        ("at least 60 mm", 60, "at least 60 mm (2.36 in)"),
        ("At least 2 3/16 in", 55.5625, "at least 2 3/16 in (55.6 mm)"),  # international inch, exact
    ],
)
def test_a_lower_bound_is_a_quantity_that_says_so(text: str, value: float, shown: str) -> None:
    found = parse(text, "length")
    assert (found.least, found.value, show(found)) == (True, value, shown)
    assert not parse(text[9:], "length").least
