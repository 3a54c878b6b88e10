"""Days and months that were typed in another order than a record has them: what each may mean, for hints alone."""

import re
from datetime import date

_PARTS = re.compile(r"[0-9]+|[^\W\d_]+")
_MONTHS = ("jan ene", "feb", "mar", "apr abr", "may", "jun", "jul", "aug ago", "sep", "oct", "nov", "dec dic")
"""How the names of the months begin, in English and in Spanish."""


def days(text: str) -> list[str]:
    """The days that a text may mean, as year-month-day, the day before the month first; none where it cannot be told."""
    parts = _parts(text)
    if len(parts) != 3:
        return []
    begins_with_year = parts[0] >= _YEARS
    orders = ((0, 1, 2), (0, 2, 1)) if begins_with_year else ((2, 1, 0), (2, 0, 1))
    found = dict.fromkeys(day for order in orders if (day := _day(*(parts[place] for place in order))))
    return list(found)[: 1 if begins_with_year else 2]


def months(text: str) -> list[str]:
    """The months that a text may mean, as year-month."""
    parts = _parts(text)
    if len(parts) == 2:
        year, month = max(parts), min(parts)
        return [f"{year}-{month:02}"] if year >= _YEARS and 1 <= month <= 12 else []
    return list(dict.fromkeys(day[:7] for day in days(text)))


_YEARS = 1900


def _parts(text: str) -> list[int]:
    found = [_number(part) for part in _PARTS.findall(text[:40])]
    return [] if 0 in found else found


def _number(part: str) -> int:
    """A number, or that of a month by its name; 0 for any other word."""
    if part.isdecimal():
        return int(part) if len(part) <= 4 else 0
    begun = part[:3].casefold()
    return next((number for number, names in enumerate(_MONTHS, 1) if begun in names.split()), 0)


def _day(year: int, month: int, day: int) -> str:
    try:
        return date(year, month, day).isoformat() if year >= _YEARS else ""
    except ValueError:
        return ""
