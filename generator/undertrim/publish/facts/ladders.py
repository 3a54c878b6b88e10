"""Button ladders as data: the band of each button in ohm."""

from dataclasses import dataclass
from typing import Any

from undertrim.derive.wiring import ladder
from undertrim.publish.facts import doubts, words
from undertrim.publish.facts.meter import ranged
from undertrim.record.model import Ladder, VehicleRecord
from undertrim.words import Value, message, named

Data = dict[str, Any]


@dataclass(frozen=True, slots=True)
class RungWords:
    """A button and the resistance it shows, in words."""

    name: Value
    band: Value


def ladders(record: VehicleRecord) -> list[Data]:
    """Every ladder of a record."""
    return [_ladder(record, item) for item in record.ladders.values()]


def _ladder(record: VehicleRecord, item: Ladder) -> Data:
    return {
        "id": item.id,
        "name": item.written.replace("-", " "),
        "pin": item.pin,
        "against": item.return_,
        "tolerance": words.quantity(item.tolerance),
        "rungs": [RungWords(_named(rung), ranged(rung.low, rung.high, "ohm")) for rung in ladder.rungs(item)],
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
        "conflicts": doubts.marks(record, ("ladders", item.id)),
        "source": list(item.source),
    }


def _named(rung: ladder.Rung) -> Value:
    return message("ladders/none-pressed") if rung.idle else named("buttons", rung.name)
