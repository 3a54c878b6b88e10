"""What the car draws asleep, as data."""

from dataclasses import dataclass

from undertrim.publish.facts import words
from undertrim.record.model import Blank, VehicleRecord
from undertrim.record.units import Quantity
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class Rest:
    """The current at rest in A and the time to sleep in s; None where nobody has recorded it."""

    current: float | None
    current_words: Value
    asleep_after: float | None
    asleep_after_words: Value
    source: tuple[str, ...]


def rest(record: VehicleRecord) -> Rest:
    """What the record has of the car asleep."""
    known = record.rest
    if not known:
        return Rest(None, words.LOOK_UP, None, words.LOOK_UP, ())
    current, asleep = known.current, known.asleep_after
    return Rest(_value(current), _words(current), _value(asleep), _words(asleep), known.source)


def _value(found: Quantity | Blank) -> float | None:
    return found.value if isinstance(found, Quantity) else None


def _words(found: Quantity | Blank) -> Value:
    return found if isinstance(found, Quantity) else words.LOOK_UP
