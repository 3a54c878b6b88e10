"""What a cable may carry without its insulation growing too hot, after 33 CFR 183.425, Table 5."""

import math
from dataclasses import dataclass

from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.conductors import Size
from undertrim.resources import table

PLACES = ("cabin", "engine")


@dataclass(frozen=True, slots=True)
class Surroundings:
    """Where a cable lies: what its insulation bears in °C, "cabin" or "engine", and its resistance against copper."""

    insulation: int
    place: str
    times: float = 1.0


def ampacity(size: Size, around: Surroundings) -> float | None:
    """The current in A; None where the table has no row for so thin a cable. Raises Refused.

    A metal that resists more than copper carries 1/sqrt(times) as much, so that the same heat arises (derived, not in the table).
    """
    column = _column(around)
    row = table("electrical-ampacity")["gauges"].get(size.gauge)
    if row is None:
        return None
    return float(row[column] * engine_factor(around) / math.sqrt(around.times))


def engine_factor(around: Surroundings) -> float:
    """What is left of the ampacity in an engine space at 50 °C; 1 in the cabin. Raises Refused."""
    column = _column(around)
    return float(table("electrical-ampacity")["engine"]["factors"][column]) if around.place == "engine" else 1.0


def remembered(around: Surroundings) -> bool:
    """Whether the factor of the engine space is from memory."""
    return around.place == "engine" and around.insulation not in table("electrical-ampacity")["engine"]["sure"]


def notes(size: Size, around: Surroundings) -> tuple[str, ...]:
    """How far the table can be relied on for this cable."""
    words = ["the currents are from 33 CFR 183.425, Table 5, written for boats: a reference, not the law for cars"]
    if size.scheme == "metric":
        words.append(f"that table has no metric sizes: taken as {size.gauge} AWG, the next with less copper")
    if size.scheme == "sae":
        words.append("that table names gauges: the same numbers are used beside SAE areas (secondary marine tables)")
    if around.times != 1:
        words.append("that table is for copper: scaled down until the same heat arises (derived)")
    if remembered(around):
        words.append("the factor for the engine space is from memory for this insulation")
    if size.gauge == "18":
        words.append(
            "boats may have 18 AWG only inside a sheath, and 16 AWG at least as a single wire (33 CFR 183.425)"
        )
    return (*words, "cables in a bundle carry less, which is not computed here")


def _column(around: Surroundings) -> int:
    columns = table("electrical-ampacity")["insulation"]
    if around.insulation not in columns:
        offered = ", ".join(str(one) for one in columns)
        raise Refused(
            f"no table for insulation of '{around.insulation}' °C", f"write one of {offered}, or the next lower"
        )
    if around.place not in PLACES:
        raise Refused(f"no place '{around.place}' for a cable", f"write one of {', '.join(PLACES)}")
    return int(columns.index(around.insulation))
