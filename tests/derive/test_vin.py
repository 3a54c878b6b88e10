"""Vehicle identification numbers: 49 CFR 565.15 with the examples that were published beside it."""

from datetime import date

import pytest

from undertrim.derive import vin

WORKED = [
    ("1M8GDM9AXKP042788", True, "the example that is printed beside the regulation: sum 351, remainder 10"),
    ("1G4AH59H45G118341", True, "49 CFR 565, the worked table of weights: sum 411, remainder 4"),
    ("1J9RP1A36A1644345", True, "the agency's outline for new manufacturers: sum 314, remainder 6"),
    ("1FAPP64R7LH123456", True, "published example: sum 403, remainder 7"),
    ("11111111111111111", True, "derived: the weights sum to 89, remainder 1"),
    ("1D8GDM9AXKP042788", True, "derived: M and D are both 4, which no check digit can tell apart"),
    ("1M8GDM9AXKP042789", False, "derived: one digit changed, remainder 1"),
    ("1M8GDM9AXKP024788", False, "derived: two digits exchanged, remainder 8"),
]


@pytest.mark.parametrize(("number", "right", "source"), WORKED)
def test_the_check_digit(number: str, right: bool, source: str) -> None:
    assert vin.is_vin(number)
    assert vin.checks(number) == right, source


def test_what_is_a_number() -> None:
    assert vin.in_pieces("1m8gdm9a xkp 042788")
    assert vin.in_pieces("1M8-GDM9AXKP-042788")
    assert not vin.in_pieces(
        "vane4321 2012 radar"
    )  # seventeen characters without the gaps, and what somebody looks for
    assert not vin.in_pieces("radar finch 12 05")
    assert not vin.is_vin("1M8GDM9AXKP04278")
    assert vin.misread("IM8GDM9AXKP042788")
    assert vin.misread("1M8GDM9AXKPO42788")
    assert not vin.is_vin("KELBROOKFLNCHFLVE")  # seventeen letters, and no number
    assert not vin.misread("KELBROOKFINCHFIVE")


@pytest.mark.parametrize(
    ("number", "light", "years"),
    [
        # 565.15(b): a digit at position 7 of a light vehicle before 2010, a letter from then on; it says nothing of heavier ones.
        ("1M8GDM9AXKP042788", None, (1989, 2019)),
        ("1M8GDM9AXKP042788", True, (1989,)),
        ("1J9RP1A36A1644345", True, (2010,)),
        ("1J9RP1A36A1644345", False, (1980, 2010)),
        # Elsewhere position 7 is the maker's own: both years, whatever the vehicle.
        ("00KFN1M10GX000001", True, (1986, 2016)),
        # No year at all in position 10.
        ("00KFN1M100X000001", True, ()),
        # 2027 is the newest that may be, 2035 is not yet.
        ("00KFN1M10VX000001", None, (1997, 2027)),
        ("00KFN1M105X000001", None, (2005,)),
    ],
)
def test_the_model_year(number: str, light: bool | None, years: tuple[int, ...]) -> None:
    assert vin.model_years(number, light=light, latest=2027) == years


def test_the_letters_of_the_years() -> None:
    assert [vin.letter_years(letter)[0] for letter in "AHJNPRTVY19"] == [1980, 1987, 1988, 1992, 1993, 1994, 1996, 1997, 2000, 2001, 2009]  # fmt: skip
    assert [vin.letter_years(letter) for letter in "IOQUZ0"] == [()] * 6
    assert date.max.year > vin.letter_years("9")[1] == 2039


def test_the_regulation_is_not_held_against_other_markets() -> None:
    assert vin.asks_check("1M8GDM9AXKP042789")
    assert not vin.asks_check("00KFN1M10GX000001")


PATTERNS = [("00KFN1P", {"radio": ["plain"]}), ("00KFN1M", {"radio": ["map"]}), ("00KFN1.1", {"drive-side": ["left"]})]


@pytest.mark.parametrize(
    ("number", "told"),
    [
        ("00KFN1M20GX000001", {"radio": ["map"]}),
        ("00KFN1P10GX000001", {"radio": ["plain"], "drive-side": ["left"]}),
        ("00KFN2M20GX000001", None),
    ],
)
def test_patterns_choose_the_car(number: str, told: dict[str, list[str]] | None) -> None:
    assert vin.answers(number, PATTERNS) == told


def test_patterns_that_agree_on_nothing_say_nothing() -> None:
    both = [("00K", {"radio": ["plain"]}), ("00KF", {"radio": ["map"]})]
    assert vin.answers("00KFN1M20GX000001", both) == {}
