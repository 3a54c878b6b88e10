"""A usual caution: one that the program has of itself, in words of its own; a record's cautions are its own text."""

from dataclasses import dataclass
from typing import TypeAlias

from undertrim.record.model import ALWAYS, Caution, When
from undertrim.resources import table
from undertrim.words import Value, word


@dataclass(frozen=True, slots=True)
class UsualCaution:
    """A hazard with its consequence and how to avoid it; `state` is what it takes for granted of the car."""

    signal: str
    hazard: Value
    consequence: Value
    avoid: Value
    state: tuple[tuple[str, str], ...] = ()
    when: When = ALWAYS


AnyCaution: TypeAlias = Caution | UsualCaution


def usual_caution(name: str) -> UsualCaution:
    """The usual caution of this name in the data table."""
    entry = table("cautions")["caution"][name]
    hazard, consequence, avoid = (word("cautions", "caution", name, key) for key in ("hazard", "consequence", "avoid"))
    return UsualCaution(entry["signal"], hazard, consequence, avoid, tuple(entry.get("state", {}).items()))
