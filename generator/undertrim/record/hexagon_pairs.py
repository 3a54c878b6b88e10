"""Which socket of one system goes on a hexagon of the other, by the gap between them."""

from collections.abc import Iterator
from fractions import Fraction

from undertrim.record.drive_sizes import Size, families, table


def verdict(gap: Fraction) -> str:
    """Judge tool size minus hexagon size in mm: "same", "usable", "marginal" or "" (do not use).

    Common practice, no source; the limits stand in data/drives.toml. A tool a little below the hexagon's
    nominal size still goes on, because hexagons are made below nominal (ISO 4014).
    """
    limits = table()["near"]
    low, high = (Fraction(str(limit)) for limit in limits["usable"])
    if abs(gap) <= Fraction(str(limits["same"])):
        return "same"
    if low <= gap <= high:
        return "usable"
    return "marginal" if high < gap <= Fraction(str(limits["marginal"])) else ""


def pairs(value: Fraction, unit: str) -> Iterator[tuple[Size, Fraction, str]]:
    """The sockets of the other system for a hexagon of `value` mm, typed in `unit`, with gap and verdict."""
    for size in families()["hex"].sizes:
        gap = size.value - value
        if size.unit != unit and not size.rare and (judged := verdict(gap)):
            yield size, gap, judged


def close_metric(value: Fraction) -> Size | None:
    """The metric hexagon nearest to an inch one, if a socket of either fits the other well; else None."""
    good = [(abs(gap), size) for size, gap, judged in pairs(value, "in") if judged != "marginal"]
    return min(good, key=lambda pair: pair[0], default=(None, None))[1]
