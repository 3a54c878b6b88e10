"""What a cable may carry without its insulation growing too hot, after 33 CFR 183.425, Table 5."""

import math
from dataclasses import dataclass

from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.conductors import Size
from undertrim.resources import table
from undertrim.words import Items, Message, message

PLACES = ("cabin", "engine")


@dataclass(frozen=True, slots=True)
class Surroundings:
    """Where a cable lies: what its insulation bears in °C, "cabin" or "engine", and its resistance against copper."""

    insulation: int
    place: str
    times: float = 1.0


def ampacity(size: Size, surroundings: Surroundings) -> float | None:
    """The current in A; None where the table has no row for so thin a cable. Raises Refused.

    A metal that resists more than copper carries 1/sqrt(times) as much, so that the same heat arises (derived, not in the table).
    """
    column = _column(surroundings)
    row = table("electrical-ampacity")["gauges"].get(size.gauge)
    if row is None:
        return None
    return float(row[column] * engine_factor(surroundings) / math.sqrt(surroundings.times))


def engine_factor(surroundings: Surroundings) -> float:
    """What is left of the ampacity in an engine space at 50 °C; 1 in the cabin. Raises Refused."""
    column = _column(surroundings)
    return float(table("electrical-ampacity")["engine"]["factors"][column]) if surroundings.place == "engine" else 1.0


def remembered(surroundings: Surroundings) -> bool:
    """Whether the factor of the engine space is from memory."""
    return (
        surroundings.place == "engine" and surroundings.insulation not in table("electrical-ampacity")["engine"]["sure"]
    )


def notes(size: Size, surroundings: Surroundings) -> tuple[Message, ...]:
    """How far the table can be relied on for this cable."""
    found = [message("electrical/table-for-boats")]
    if size.scheme == "metric":
        found.append(message("electrical/table-not-metric", gauge=size.gauge))
    if size.scheme == "sae":
        found.append(message("electrical/table-of-gauges"))
    if surroundings.times != 1:
        found.append(message("electrical/table-for-copper"))
    if remembered(surroundings):
        found.append(message("electrical/engine-from-memory"))
    if size.gauge == "18":
        found.append(message("electrical/thinnest-on-boats"))
    return (*found, message("electrical/bundle-carries-less"))


def _column(surroundings: Surroundings) -> int:
    columns = table("electrical-ampacity")["insulation"]
    if surroundings.insulation not in columns:
        known = Items(tuple(columns), "comma")
        raise Refused(message("electrical/no-insulation", insulation=surroundings.insulation, known=known))
    if surroundings.place not in PLACES:
        raise Refused(message("electrical/no-place", place=surroundings.place, known=Items(PLACES, "comma")))
    return int(columns.index(surroundings.insulation))
