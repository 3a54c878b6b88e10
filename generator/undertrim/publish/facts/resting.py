"""What the car draws asleep, as data."""

from typing import Any

from undertrim.publish.facts import words
from undertrim.record.model import Blank, VehicleRecord
from undertrim.record.units import Quantity, show

Data = dict[str, Any]


def rest(record: VehicleRecord) -> Data:
    """The current at rest in A and the time to sleep in s; None where nobody has recorded it."""
    known = record.rest
    return {
        "current": _value(known.current) if known else None,
        "current_words": _words(known.current) if known else words.LOOK_UP,
        "asleep_after": _value(known.asleep_after) if known else None,
        "asleep_after_words": _words(known.asleep_after) if known else words.LOOK_UP,
        "source": list(known.source) if known else [],
    }


def _value(found: Quantity | Blank) -> float | None:
    return found.value if isinstance(found, Quantity) else None


def _words(found: Quantity | Blank) -> str:
    return show(found) if isinstance(found, Quantity) else words.LOOK_UP
