"""What is no quantity is refused in a sentence with the way out, whatever is typed."""

import re
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.record.unit_table import kinds
from undertrim.record.units import UnitError, parse, show


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
        ("5-6 mm", "write one value, not a range: where the least counts, such as room, '5 mm'"),
        ("5 to 6 mm", "write one value, not a range: where the least counts, such as room, '5 mm'"),
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


@pytest.mark.parametrize("text", ["at least", "at least at least 60 mm", "at least 60", "at most 60 mm"])
def test_what_is_no_bound_is_refused(text: str) -> None:
    with pytest.raises(UnitError):
        parse(text, "length")
