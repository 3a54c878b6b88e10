"""Names for what has an id: the openings of a visit, kinds of car. What is typed in a command keeps its id beside the name."""

import math
from collections.abc import Mapping, Sequence

from undertrim.derive import cars
from undertrim.derive.procedure.planning import Target
from undertrim.record.model import VehicleRecord

Car = Mapping[str, str]


def job(record: VehicleRecord, target: Target) -> str:
    """An opening by its name, with its side: `Front door speaker, left`."""
    name = record.openings[target.opening].name
    return f"{name}, {target.side}" if target.side else name


def car(record: VehicleRecord, choices: Car) -> str:
    """A car by the labels of its choices: `Map radio, Left-hand drive`; empty where nothing is chosen."""
    known = cars.variants(record)
    return ", ".join(known[name].choices[choice].label for name, choice in choices.items())


def kinds_of_car(record: VehicleRecord, kinds: Sequence[Car]) -> str:
    """Kinds of car without the variants that make no difference: `Map radio or Plain radio, No amplifier`; empty for all."""
    known = cars.variants(record)
    chosen = {name: list(dict.fromkeys(kind[name] for kind in kinds)) for name in (kinds[0] if kinds else ())}
    if len(kinds) != math.prod(map(len, chosen.values())):
        return " or ".join(car(record, kind) for kind in kinds)
    return ", ".join(
        " or ".join(known[name].choices[choice].label for choice in choices)
        for name, choices in chosen.items()
        if len(choices) < len(known[name].choices)
    )
