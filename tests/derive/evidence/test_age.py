"""Ages in words, from fixed days."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.derive.evidence.age import age
from undertrim.words import say


@pytest.mark.parametrize(
    ("on", "today", "words"),
    [
        ("2026-03-09", "2026-03-09", "of today"),
        ("2026-03-09", "2026-03-10", "1 day old"),
        ("2026-03-09", "2026-04-08", "30 days old"),
        ("2026-03-09", "2026-04-09", "1 month old"),
        ("2026-01-31", "2026-02-28", "28 days old"),
        ("2026-01-31", "2026-03-01", "1 month old"),
        ("2026-03-09", "2026-11-25", "8 months old"),
        ("2025-12-31", "2026-01-01", "1 day old"),
        ("2026-03-09", "2028-03-08", "23 months old"),
        ("2026-03-09", "2028-03-09", "2 years old"),
        ("2026-03-09", "2029-03-08", "2 years old"),
        ("2026-03-09", "2029-03-09", "3 years old, check before relying on it"),
        ("2024-02-29", "2025-02-28", "11 months old"),
        ("2026-03-09", "2026-03-08", "dated after today, check the date"),
        ("", "2026-03-08", ""),
    ],
)
def test_words(on: str, today: str, words: str) -> None:
    assert say(age(on, date.fromisoformat(today))) == words


@given(st.dates(date(1990, 1, 1), date(2050, 1, 1)), st.integers(0, 12000))
def test_the_age_in_words_is_the_number_of_whole_units_that_have_passed(on: date, days: int) -> None:
    today = on + timedelta(days)
    words = say(age(on.isoformat(), today))
    number = int(words.split()[0]) if words != "of today" else 0
    longest = {"day": 1, "month": 31, "year": 366}[words.split()[1].rstrip("s")] if number else 1
    shortest = {"day": 1, "month": 28, "year": 365}[words.split()[1].rstrip("s")] if number else 1
    assert number * shortest <= days < (number + 1) * longest
    assert ("check" in words) == (words.endswith("relying on it")) == (days >= 1096 or "3 years" in words)
