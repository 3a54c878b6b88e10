"""How long a battery bears a current at rest."""

from dataclasses import dataclass

from undertrim.derive.electrical.bounds import given, or_usual, usual
from undertrim.derive.electrical.numbers import Amount, Number, number
from undertrim.words import Message, message

_HOURS = 24


@dataclass(frozen=True, slots=True)
class Rest:
    """The days until so much of the capacity is used up."""

    days: float
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


def rest(capacity: float, current: float, share: float | None = None) -> Rest:
    """Days for a capacity in Ah, a current in A and the share of the capacity that may go. Raises Refused."""
    battery, drawn = given("capacity", capacity), given("rest", current)
    part = or_usual("share", share, "rest_share", message("electrical/capacity-share"))
    days = number(message("electrical/time"), battery.value * part.value / drawn.value / _HOURS, "days")
    headline = message(
        "electrical/rest-days", time=days.text, share=part.text, capacity=battery.text, current=drawn.text
    )
    return Rest(days.value, headline, (battery, drawn, part, days), tuple(_notes(drawn)))


def _notes(drawn: Number) -> list[Message]:
    found = [message("electrical/modules-sleep")]
    limit = usual("rest_limit")
    if drawn.value > limit * (1 + 1e-9):
        found.append(message("electrical/stays-awake", limit=Amount(limit, "A")))
    return found
