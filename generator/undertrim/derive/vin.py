"""Vehicle identification numbers: what is one, its check digit, its model year, and which pattern of a record it is of.

Source: 49 CFR 565.15 and ISO 3779; the tables stand in `record/data/vin.toml`. Pure functions of text: nothing here keeps a number or hands it on.
The scripts of the pages do the same (`assets/undertrim/finder-vin.js`, held to this by `tests/node/test_vin_script.py`).
"""

import re
from collections.abc import Iterable, Mapping, Sequence

from undertrim import resources

MOST_LETTERS = 14
"""A number has at least three digits (its last four are nearly always digits): a name of 17 letters is none. A default of ours."""

_LETTERS_ALONE = 3
"""So many letters may stand together without a digit in a number that is typed with gaps; more are a word. A default of ours."""

Answers = Mapping[str, Sequence[str]]


def normal(text: str) -> str:
    """A number as it is written without gaps: capitals, no spaces and no hyphens."""
    return re.sub(r"[\s-]", "", text).upper()


def in_pieces(text: str) -> bool:
    """Whether a text of several words may be one number: it is one without the gaps, ends in four digits, and has no word in it."""
    whole, pieces = normal(text), re.split(r"[\s-]+", text.strip())
    return (
        is_vin(whole)
        and whole[-4:].isdigit()
        and not any(len(one) > _LETTERS_ALONE and one.isalpha() for one in pieces)
    )


def is_vin(text: str) -> bool:
    """Whether a text without gaps has the 17 characters of a number, none of them I, O or Q."""
    table = resources.table("vin")
    return _like(text) and all(letter in table["alphabet"] for letter in text)


def misread(text: str) -> bool:
    """Whether it would be one, but for letters that none has: I, O and Q, which are read for 1 and 0."""
    return _like(text) and not is_vin(text)


def _like(text: str) -> bool:
    length = resources.table("vin")["length"]
    return re.fullmatch(rf"[A-Z0-9]{{{length}}}", text) is not None and sum(map(str.isalpha, text)) <= MOST_LETTERS


def check_digit(vin: str) -> str:
    """What position 9 should hold by 49 CFR 565.15(c)."""
    table = resources.table("vin")["check"]
    values = table["values"]
    total = sum(int(values.get(one, one)) * weight for one, weight in zip(vin, table["weights"], strict=True))
    return "X" if total % 11 == 10 else str(total % 11)


def checks(vin: str) -> bool:
    """Whether position 9 holds it."""
    return vin[resources.table("vin")["check"]["position"] - 1] == check_digit(vin)


def asks_check(vin: str) -> bool:
    """Whether the regulation certainly asks for the check digit; elsewhere one that does not agree says nothing."""
    return vin[0] in resources.table("vin")["check"]["asking"]


def model_years(vin: str, *, light: bool | None, latest: int) -> tuple[int, ...]:
    """The model years that position 10 may mean, none of them after `latest`.

    `light` says whether it is a passenger car, or another vehicle of up to 4,536 kg; None where nobody knows. Position 7 decides between two
    only for these, and only where the regulation holds.
    """
    table = resources.table("vin")["year"]
    both = letter_years(vin[table["position"] - 1])
    if both and light and asks_check(vin):
        both = (both[0] if vin[table["span_position"] - 1].isdigit() else both[1],)
    return tuple(year for year in both if year <= latest)


def letter_years(letter: str) -> tuple[int, ...]:
    """The two model years that a character at position 10 stands for; none for I, O, Q, U, Z and 0."""
    table = resources.table("vin")["year"]
    at = table["letters"].find(letter)
    return () if at < 0 else (table["first"] + at, table["first"] + at + table["again"])


def is_of(vin: str, pattern: str) -> bool:
    """Whether a number is of a pattern: alike wherever the pattern has no full stop, as far as it goes."""
    return all(wanted in (".", one) for wanted, one in zip(pattern, vin, strict=False))


def answers(vin: str, patterns: Iterable[tuple[str, Answers]]) -> dict[str, Sequence[str]] | None:
    """What a number says of a car by the patterns of its record: of each variant the choices it may have; None where it is of no pattern."""
    found = [said for pattern, said in patterns if is_of(vin, pattern)]
    if not found:
        return None
    told: dict[str, Sequence[str]] = {}
    for name in dict.fromkeys(name for said in found for name in said):
        lists = [said[name] for said in found if name in said]
        shared = [choice for choice in lists[0] if all(choice in other for other in lists[1:])]
        if shared:
            told[name] = shared
    return told
