"""What a wire of a recorded gauge carries, by 33 CFR 183.425, Table 5 (boats, 30 °C: a reference for cars, not their law)."""

from dataclasses import dataclass

from undertrim.derive.electrical.ampacity import Surroundings, ampacity
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.conductors import Size, size
from undertrim.resources import table


@dataclass(frozen=True, slots=True)
class Limit:
    """A current in A; `derived` where the wire is thinner than all in the table and its current follows from the thinnest one's."""

    current: float
    derived: bool = False


def carries(gauge: str) -> Limit | None:
    """What a wire of `1.5 mm2` or `18 AWG` carries in the cabin; None for a gauge that does not exist.

    Counts as the thickest gauge of the table with no more copper. What is thinner than all of them carries less by the power 1.5 of the
    diameter: heat grows with current squared over area, and leaves by the surface (the form of Preece's law of 1884 for fuse wires).
    The insulation is the one in data/wire-check.toml.
    """
    area = _area(gauge)
    if area is None:
        return None
    around = Surroundings(int(table("wire-check")["insulation"]), "cabin")
    known = [size("awg", name) for name in table("electrical-ampacity")["gauges"]]
    held = [one for one in known if one.area <= area + 1e-9]
    nearest = max(held, key=_of_size) if held else min(known, key=_of_size)
    current = ampacity(nearest, around)
    if current is None:
        return None
    return Limit(current) if held else Limit(current * (area / nearest.area) ** 0.75, derived=True)


def _of_size(one: Size) -> float:
    return one.area


def _area(gauge: str) -> float | None:
    """In mm2."""
    number, _, unit = gauge.partition(" ")
    if unit == "mm2":
        return float(number) or None
    try:
        return size("awg", number).area
    except Refused:
        return None
