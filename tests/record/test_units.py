"""Typed quantities against exact definitions, pint, and the messages people will read."""

import re
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from itertools import product

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.record.equivalents import rounded
from undertrim.record.unit_table import kinds
from undertrim.record.units import UnitError, agree, parse, show

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
    ("text", "kind", "message", "hint"),
    [
        ("62", "length", "'62' has no unit", "write '62 mm' or '62 in'"),
        ("7/32", "length", "'7/32' has no unit", "write '7/32 in'"),
        ("10", "torque", "'10' has no unit", "write '10 N.m', '10 lbf.in' or '10 lbf.ft'"),
        ("12 min", "length", "'12 min' is a time, not a length", "write it in mm or in, such as '62 mm'"),
        ("12 m", "time", "'12 m' is a length, not a time", "write it in s, min or h, such as '12 min'"),
        ("4 mm", "count", "'4 mm' is a length, not a count", "write it without a unit, such as '4'"),
        ("4.5", "count", "'4.5' is not a whole number", "write it like '4'"),
        ("1/2", "count", "'1/2' is not a whole number", "write it like '4'"),
        (
            "-62 mm",
            "length",
            "'-62 mm' is negative, which a length cannot be",
            "write it without the minus sign",
        ),
        ("7/32 mm", "length", "'7/32 mm' is a fraction of a unit that has none", "write '7/32 in'"),
        ("1/2 h", "time", "'1/2 h' is a fraction of a unit that has none", "write a decimal number"),
        ("7/0 in", "length", "'7/0 in' divides by zero", "check the fraction"),
        ("19/16 in", "length", "the fraction in '19/16 in' is not below one", "write '1 3/16 in'"),
        ("2 19/16 in", "length", "the fraction in '2 19/16 in' is not below one", "check the fraction"),
        ("0.8", "share", "'0.8' has no unit", "write '80 %' for 0.8 of the whole"),
        ("0.05", "share", "'0.05' has no unit", "write '5 %' for 0.05 of the whole"),
        ("0.035", "share", "'0.035' has no unit", "write '3.5 %' for 0.035 of the whole"),
        ("1/3", "share", "'1/3' has no unit", "write '33.333 %' for 1/3 of the whole"),
        ("1", "share", "'1' has no unit", "write '100 %' for 1 of the whole, or '1 %'"),
        ("1.5", "share", "'1.5' has no unit", "write '1.5 %'"),
        ("80", "share", "'80' has no unit", "write '80 %'"),
        (
            "5 cNm",
            "torque",
            "unit 'cNm' in '5 cNm' is not known",
            "write it in N.m, lbf.in or lbf.ft, such as '10 N.m'",
        ),
        ("5 MHz", "frequency", "unit 'MHz' in '5 MHz' is not known", "write it in Hz or kHz, such as '100 Hz'"),
        ("5 mamps", "current", "unit 'mamps' in '5 mamps' is not known", "write it in mA or A, such as '150 mA'"),
        ("1 MOHM", "resistance", "unit 'MOHM' in '1 MOHM' is not known", "write it in ohm or kohm, such as '4 ohm'"),
        ("150 MA", "current", "unit 'MA' in '150 MA' is not known", "write '150 mA'"),
        ("10 nm", "torque", "unit 'nm' in '10 nm' is not known", "write '10 N.m'"),
        ("12 v", "voltage", "unit 'v' in '12 v' is not known", "write '12 V'"),
        ("6 milimetres", "length", "unit 'milimetres' in '6 milimetres' is not known", "write '6 mm'"),
        (
            "7/32 milimetre",
            "length",
            "unit 'milimetre' in '7/32 milimetre' is not known",
            "write it in mm or in, such as '62 mm'",
        ),
        (
            "62 furlong",
            "length",
            "unit 'furlong' in '62 furlong' is not known",
            "write it in mm or in, such as '62 mm'",
        ),
        (
            "1" * 41,
            "length",
            f"'{'1' * 39}…' is too long for a value",
            "write one number and one unit, and nothing else",
        ),
    ],
)
def test_messages(text: str, kind: str, message: str, hint: str) -> None:
    with pytest.raises(UnitError) as caught:
        parse(text, kind)
    assert (caught.value.message, caught.value.hint) == (message, hint)


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("6,2 mm", "write a decimal point: '6.2 mm'"),
        ("1,200 mm", "write it without the comma: '1200 mm' or '1.200 mm'"),
        ("1e3 mm", "write the number out, without an exponent"),
        ("2½ in", "write the fraction with a slash, such as '2 3/16 in'"),
        ("5-6 mm", "write one value, not a range"),
        ("5 to 6 mm", "write one value, not a range"),
        ("nan mm", "write one number and one unit, such as '62 mm'"),
        ("inf", "write one number and one unit, such as '62 mm'"),
        ("", "write one number and one unit, such as '62 mm'"),
        ("12.6.1 mm", "write one number and one unit, such as '62 mm'"),
        ("٦٢ mm", "write one number and one unit, such as '62 mm'"),
    ],
)
def test_unreadable_numbers(text: str, hint: str) -> None:
    with pytest.raises(UnitError) as caught:
        parse(text, "length")
    assert caught.value.message == f"'{text}' cannot be read as a number and a unit"
    assert caught.value.hint == hint


def test_message_stays_on_one_line() -> None:
    with pytest.raises(UnitError, match=r"^unit 'm\?m' in '62 m\?m' is not known$"):
        parse("62 m\x1bm", "length")


def test_a_kind_that_does_not_exist() -> None:
    with pytest.raises(KeyError):
        parse("62 mm", "lenght")


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


def read_or_refuse(text: str, kind: str) -> None:
    try:
        quantity = parse(text, kind)
    except UnitError as error:
        refusal = error
    else:
        assert show(quantity)
        return
    assert refusal.message.isprintable()
    assert refusal.hint.isprintable()


@given(st.text(max_size=45), st.sampled_from(sorted(kinds())))
def test_any_text_is_read_or_refused(text: str, kind: str) -> None:
    read_or_refuse(text, kind)


@given(st.text(alphabet="0123456789 ./-,⁄'\"minhNlbftΩ°CAVe", max_size=14), st.sampled_from(sorted(kinds())))
def test_likely_slips_are_read_or_refused(text: str, kind: str) -> None:
    read_or_refuse(text, kind)


@given(st.decimals(-10_000, 10_000, places=6), st.integers(0, 4))
def test_rounding_is_decimals_own(number: Decimal, decimals: int) -> None:
    expected = number.quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP)
    if not number or abs(number) >= Decimal(1).scaleb(-decimals):
        assert Decimal(rounded(Fraction(number), decimals)) == expected


def test_a_long_number_is_printed_whole() -> None:
    assert show(parse("1" + "0" * 34 + " mm", "length")).startswith("1" + "0" * 34 + " mm (")


@pytest.mark.parametrize("kind", sorted(kinds()))
def test_no_hint_is_of_another_scale(kind: str) -> None:
    """Every unit's name with a prefix put before it or changed: a hint never changes what a prefix said. M and m in one word are one slip."""
    names = {spelling for unit in kinds()[kind].units.values() for spelling in unit.spellings if spelling.isalpha()}
    scale = {"p": -12, "n": -9, "u": -6, "m": -3, "c": -2, "d": -1, "": 0, "k": 3, "G": 9}
    for name, prefix in product(names, scale):
        meant = re.fullmatch("write '5 (.*)'", hint_of(f"5 {prefix}{name}", kind))
        said = 10.0 ** scale[prefix] * parse(f"5 {name}", kind).value
        assert not meant or parse(f"5 {meant[1]}", kind).value == pytest.approx(said), (prefix, name, meant)


def hint_of(text: str, kind: str) -> str:
    """Empty for a text that can be read."""
    try:
        parse(text, kind)
    except UnitError as error:
        return error.hint
    return ""


def test_megohms_are_no_milliohms() -> None:
    """1e6 and 1e-3: SI prefixes."""
    assert parse("1 Mohm", "resistance").value == 1e6
    assert parse("1 mohm", "resistance").value == 1e-3
    assert parse("470 MFD", "capacitance").value == pytest.approx(470e-6)


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


@pytest.mark.parametrize("text", ["at least", "at least at least 60 mm", "at least 60", "at most 60 mm"])
def test_what_is_no_bound_is_refused(text: str) -> None:
    with pytest.raises(UnitError):
        parse(text, "length")
