"""What is typed of a time: years, months of build and ranges of them. Months are counted from year 0; every span is half-open."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive.finding.rows import Row, Vocabulary
from undertrim.words import Value, message

RANGE = ".."
"""Stands between two times in a word that means the span of both."""

_CENTURY = 60
"""Of two digits, those above are of the last century. A default of ours."""
_LEAST_MONTH = 3
"""So many letters of a month's name are enough."""
_NUMBER = r"'?\d{1,4}(?:[-/.]\d{1,4})?"
_DASHES = "-–—"


@dataclass(frozen=True, slots=True)
class Span:
    """From `start` until before `end`; `months` tells that the months of build decide, and not the model years."""

    start: int
    end: int
    months: bool
    words: Value


def read(word: str) -> list[Span]:
    """The times that one word may mean: "16" one, "05-16" two (May 2016, and 2005 to 2016), "finch" none."""
    if RANGE in word:
        first, _, last = word.partition(RANGE)
        return [_joined(one, other) for one in read(first)[:1] for other in read(last)[:1] if one.start < other.end]
    alone = _year(word)
    if alone is not None:
        return [_years(alone, alone)]
    parts = re.split(r"[-/.–—]", word)
    return _two(*parts) if len(parts) == 2 else []


def _two(one: str, other: str) -> list[Span]:
    first, last = _year(one), _year(other)
    month_first = _month(one) is not None and len(other) == 4  # "04/2016" is April 2016 and not from 2004 on
    found: list[Span] = []
    if first is not None and last is not None and first <= last and not month_first:
        found.append(_years(first, last))
    month = _month(other)
    if first is not None and month and not (found and len(other) == 4):
        found.append(_one_month(first, month))
    month = _month(one)
    if last is not None and month:
        found.append(_one_month(last, month))
    return found


def _year(text: str) -> int | None:
    if re.fullmatch(r"(19|20)\d\d", text, re.ASCII):
        return int(text)
    if not re.fullmatch(r"'?\d\d", text, re.ASCII):
        return None
    two = int(text[-2:])
    return 1900 + two if two > _CENTURY else 2000 + two


def _month(text: str) -> int | None:
    return int(text) if re.fullmatch(r"0?[1-9]|1[0-2]", text, re.ASCII) else None


def _years(first: int, last: int) -> Span:
    words = str(first) if first == last else message("finder/years", first=str(first), last=str(last))
    return Span(first * 12, (last + 1) * 12, False, words)


def _one_month(year: int, month: int) -> Span:
    at = year * 12 + month - 1
    return Span(at, at + 1, True, f"{year}-{month:02}")


def _joined(one: Span, other: Span) -> Span:
    words = message("finder/years", first=one.words, last=other.words)
    return Span(one.start, other.end, one.months or other.months, words)


def split(text: str, words: Vocabulary) -> list[str]:
    """Words apart; a month and its year, or two times, stay together: "05 / 2016", "march 2016", "2014 to 2018"."""
    named = _with_numbers(text, words)
    between = "|".join(map(re.escape, words.between))
    ranges = rf"(?<![^\s,;])({_NUMBER})\s*(?:[{_DASHES}]|{between})\s*({_NUMBER})(?![^\s,;])"
    ranged = re.sub(ranges, _as_range, named)
    joined = re.sub(r"(?<![^\s,;])('?\d{1,4})\s*[-–—/]\s*('?\d{1,4})(?![^\s,;])", _as_one, ranged)
    return [word for word in re.split(r"[\s,;/]+", joined) if word]


def _as_range(found: re.Match[str]) -> str:
    """Two times with a word or a dash between; two plain numbers with a dash may also be a month and its year, and stay for `read`."""
    one, other = found[1], found[2]
    if re.search(r"[-/.]", one + other):
        word = f"{one.replace('/', '-')}{RANGE}{other.replace('/', '-')}"
    else:
        word = f"{one}-{other}"
    return word if read(word) else found[0]


def _as_one(found: re.Match[str]) -> str:
    word = f"{found[1]}-{found[2]}"
    return word if read(word) else found[0]


def _with_numbers(text: str, words: Vocabulary) -> str:
    """Months by name become numbers, where a year stands beside them: "march 2016" is 2016-03."""
    pieces = re.split(r"([\s,;]+)", text)
    for at in range(0, len(pieces), 2):
        month = _named(pieces[at], words)
        for beside in (at + 2, at - 2) if month else ():
            year = _year(pieces[beside]) if 0 <= beside < len(pieces) else None
            if year is not None:
                pieces[min(at, beside)], pieces[max(at, beside)] = f"{year}-{month:02}", ""
                break
    return "".join(pieces)


def _named(text: str, words: Vocabulary) -> int | None:
    plain = text.rstrip(".")
    if len(plain) < _LEAST_MONTH:
        return None
    return next((number for number, name in enumerate(words.months, 1) if name.startswith(plain)), None)


def holds(spans: Sequence[Span], row: Row) -> bool:
    """Whether a vehicle is of one of the times: by model years for years, by months of build for months."""
    return any(span.start < end and start < span.end for span in spans for start, end in [_covered(span, row)])


def _covered(span: Span, row: Row) -> tuple[int, int]:
    if span.months and row.built_from:
        return _count(row.built_from), _count(row.built_to)
    return row.first_year * 12, (row.last_year + 1) * 12


def _count(month: str) -> int:
    year, number = map(int, month.split("-"))
    return year * 12 + number - 1
