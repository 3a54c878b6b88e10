"""How old evidence is, in words."""

from datetime import date

OLD_YEARS = 3
"""From this age on the words ask for a look. Our own choice, no source: about the time in which a car is facelifted."""


def age(on: str, today: date) -> str:
    """The age of what was found out on a day (`2026-03-09`): `12 days old`, `8 months old`, `3 years old, check before relying on it`.

    Empty for no date. Days are counted up to a month, months up to two years; a part of one does not count.
    """
    if not on:
        return ""
    day = date.fromisoformat(on)
    if day > today:
        return "dated after today, check the date"
    months = _months(day, today)
    if months == 0:
        return _old((today - day).days, "day")
    return _old(months, "month") if months < 24 else _years(months // 12)


def _months(day: date, today: date) -> int:
    """Whole months between two days."""
    return (today.year - day.year) * 12 + today.month - day.month - (today.day < day.day)


def _years(years: int) -> str:
    return _old(years, "year") + (", check before relying on it" if years >= OLD_YEARS else "")


def _old(number: int, unit: str) -> str:
    return f"{number} {unit}{'' if number == 1 else 's'} old" if number else "of today"
