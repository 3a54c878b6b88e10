"""The families of fastener drive and the sizes tools are made in, read once from data/drives.toml."""

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import Any

from undertrim.record.equivalents import rounded
from undertrim.record.numerals import mixed

INCH = Fraction(254, 10)  # mm, exactly


@dataclass(frozen=True, slots=True)
class Size:
    """One size of a series: `text` as printed, `value` in mm or a number, `unit` "mm", "in" or ""."""

    text: str
    value: Fraction
    unit: str
    rare: bool = False


@dataclass(frozen=True, slots=True)
class Family:
    """One family of drives; `closed` when a size outside `sizes` cannot be right, `by_hand` when no tool turns it."""

    key: str
    label: str
    example: str
    closed: bool
    sizes: tuple[Size, ...]
    by_hand: bool = False

    def find(self, value: Fraction, unit: str) -> Size | None:
        """The size of the series with this value in this unit, or None."""
        return next((size for size in self.sizes if (size.value, size.unit) == (value, unit)), None)

    def near(self, value: Fraction, unit: str) -> list[Size]:
        """The sizes next to a value on both sides, in the system it was typed in; rare sizes are left out."""
        known = [size for size in self.sizes if size.unit == unit and not size.rare]
        below = [size for size in known if size.value <= value]
        above = [size for size in known if size.value > value]
        return below[-1:] + above[:1]

    def named(self, size: Size) -> str:
        """The drive of this family in this size, as it is written."""
        return self.label.format(size=size.text)


@cache
def table() -> Mapping[str, Any]:
    """data/drives.toml as it stands."""
    text = files("undertrim.record").joinpath("data", "drives.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


@cache
def families() -> Mapping[str, Family]:
    """Every family of drives by its key."""
    return {key: _family(key, row) for key, row in table()["families"].items()}


def metric(value: Fraction) -> Size:
    """A size in mm."""
    return Size(f"{rounded(value, 6)} mm", value, "mm")


def inch(value: Fraction) -> Size:
    """A size given in inches; a fraction that no rule shows is printed as a decimal."""
    text = mixed(value) if value.denominator <= 128 and value.denominator & (value.denominator - 1) == 0 else ""
    return Size(f"{text or rounded(value, 6)} in", value * INCH, "in")


def number(text: str) -> Size:
    """A numbered size. Noughts count down from zero: "0" is 0, "00" is -1 and "000" is -2."""
    return Size(text, Fraction(int(text) if text.strip("0") else 1 - len(text)), "")


def _family(key: str, row: Mapping[str, Any]) -> Family:
    inches = [inch(Fraction(text)) for text in row.get("inch", ())]
    numbers = [number(text) for text in row.get("number", ())]
    sizes = (*_metric_series(row), *inches, *numbers)
    return Family(key, row["label"], row["example"], row["closed"], sizes, row.get("by_hand", False))


def _metric_series(row: Mapping[str, Any]) -> Iterable[Size]:
    for millimetres in row.get("mm", ()):
        size = metric(Fraction(str(millimetres)))
        yield Size(size.text, size.value, size.unit, millimetres in row.get("rare", ()))
