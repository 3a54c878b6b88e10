"""What a wire of a recorded gauge carries, by 33 CFR 183.425, Table 5 (boats, 30 °C: a reference for cars, not their law)."""

from dataclasses import dataclass

from undertrim.derive.electrical.ampacity import Surroundings, ampacity
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.conductors import Size, size
from undertrim.resources import table


@dataclass(frozen=True, slots=True)
class Limit:
    """A current in A; `less` where the wire is thinner than all in the table and carries less than that."""

    current: float
    less: bool = False


def carries(gauge: str) -> Limit | None:
    """What a wire of `1.5 mm2` or `18 AWG` carries in the cabin; None for a gauge that does not exist.

    Counts as the thickest gauge of the table with no more copper. The insulation is the one in data/wire-check.toml.
    """
    area = _area(gauge)
    if area is None:
        return None
    around = Surroundings(int(table("wire-check")["insulation"]), "cabin")
    known = [size("awg", name) for name in table("electrical-ampacity")["gauges"]]
    held = [one for one in known if one.area <= area + 1e-9]
    current = ampacity(_thickest(held) if held else known[0], around)
    return Limit(current, less=not held) if current is not None else None


def _thickest(sizes: list[Size]) -> Size:
    return max(sizes, key=lambda one: one.area)


def _area(gauge: str) -> float | None:
    """In mm2."""
    number, _, unit = gauge.partition(" ")
    if unit == "mm2":
        return float(number) or None
    try:
        return size("awg", number).area
    except Refused:
        return None
