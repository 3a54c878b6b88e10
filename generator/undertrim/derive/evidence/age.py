"""How old evidence is."""

from datetime import date

from undertrim.words import Value, message

OLD_YEARS = 3
"""From this age on the words ask for a look. Our own choice, no source: about the time in which a car is facelifted."""


def age(on: str, today: date) -> Value:
    """The age of what was found out on a day (`2026-03-09`): `12 days old`, `8 months old`, `3 years old, check before relying on it`.

    Empty for no date. Days are counted up to a month, months up to two years; a part of one does not count.
    """
    if not on:
        return ""
    day = date.fromisoformat(on)
    if day > today:
        return message("ages/after-today")
    months = _months(day, today)
    if months == 0:
        days = (today - day).days
        return message("ages/days", count=days) if days else message("ages/today")
    return message("ages/months", count=months) if months < 24 else _years(months // 12)


def _months(day: date, today: date) -> int:
    """Whole months between two days."""
    return (today.year - day.year) * 12 + today.month - day.month - (today.day < day.day)


def _years(years: int) -> Value:
    return message("ages/many-years", count=years) if years >= OLD_YEARS else message("ages/years", count=years)
