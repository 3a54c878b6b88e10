"""Button ladders as data: the band of each button in ohm."""

import math
from dataclasses import dataclass
from typing import Any

from undertrim.derive.wiring import ladder
from undertrim.publish.facts import doubts, words
from undertrim.publish.facts.meter import measured
from undertrim.record.model import Ladder, VehicleRecord

Data = dict[str, Any]


@dataclass(frozen=True, slots=True)
class RungWords:
    """A button and the resistance it shows, in words."""

    name: str
    band: str


def ladders(record: VehicleRecord) -> list[Data]:
    """Every ladder of a record."""
    return [_ladder(record, item) for item in record.ladders.values()]


def _ladder(record: VehicleRecord, item: Ladder) -> Data:
    return {
        "id": item.id,
        "name": item.id.replace("-", " "),
        "pin": item.pin,
        "against": item.return_,
        "tolerance": words.quantity(item.tolerance),
        "rungs": [RungWords(_named(rung), _band(rung)) for rung in ladder.rungs(item)],
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
        "conflicts": doubts.marks(record, ("ladders", item.id)),
        "source": list(item.source),
    }


def _named(rung: ladder.Rung) -> str:
    return "no button pressed" if rung.idle else rung.name.replace("-", " ")


def _band(rung: ladder.Rung) -> str:
    low = measured(rung.low, "ohm")
    return f"{low} and up" if math.isinf(rung.high) else f"{low} to {measured(rung.high, 'ohm')}"
