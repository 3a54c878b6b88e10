"""How long a battery bears a current at rest."""

from dataclasses import dataclass

from undertrim.derive.electrical.bounds import given, or_usual, usual
from undertrim.derive.electrical.numbers import Number, number, said

_HOURS = 24


@dataclass(frozen=True, slots=True)
class Rest:
    """The days until so much of the capacity is used up."""

    days: float
    headline: str
    numbers: tuple[Number, ...]
    notes: tuple[str, ...]


def rest(capacity: float, current: float, share: float | None = None) -> Rest:
    """Days for a capacity in Ah, a current in A and the share of the capacity that may go. Raises Refused."""
    battery, drawn = given("capacity", capacity), given("rest", current)
    part = or_usual("share", share, "rest_share", "share of the capacity")
    days = number("time", battery.value * part.value / drawn.value / _HOURS, "days")
    headline = f"{days.text} until {part.text} of {battery.text} is gone at {drawn.text}"
    return Rest(days.value, headline, (battery, drawn, part, days), tuple(_notes(drawn)))


def _notes(drawn: Number) -> list[str]:
    words = ["read the current after all modules sleep: 20 to 60 min (common practice)"]
    limit = usual("rest_limit")
    if drawn.value > limit * (1 + 1e-9):
        words.append(
            f"more than the usual {said(limit, 'A')} (common practice; some cars draw more by design): look for what stays awake"
        )
    return words
