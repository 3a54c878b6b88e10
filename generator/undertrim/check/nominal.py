"""What holes usually measure that go by a nominal size (data/nominal-sizes.toml): common practice, never a dimension."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from undertrim.check.outlines import KnownOutline
from undertrim.record import units
from undertrim.resources import table
from undertrim.words import Message, message

_INCH_MARKS = re.compile(r"\s*(?:inch(?:es)?|in\b\.?|\"|″|”|'')")
_TIMES = re.compile(r"\s*[x×*]\s*|\s+by\s+")


@dataclass(frozen=True, slots=True)
class Size:
    """One nominal size: its names, and the usual cut-outs in mm on the short and on the long side."""

    names: tuple[str, ...]
    short: tuple[float, float]
    long: tuple[float, float]

    @property
    def said(self) -> Message:
        """The range as a message says it."""
        short, long = (message("nominal/range", low=low, high=high) for low, high in (self.short, self.long))
        return short if self.short == self.long else message("nominal/two", short=short, long=long)

    def allows(self, hole: KnownOutline) -> bool:
        """Whether a hole or basket may go by this name, within the slack."""
        slack = float(table("nominal-sizes")["slack"])
        sides = sorted((hole.across.value, hole.up.value))
        ranges = zip(sides, (self.short, self.long), strict=True)
        return all(low - slack <= side <= high + slack for side, (low, high) in ranges)


@cache
def sizes() -> tuple[Size, ...]:
    """Every nominal size of the table."""
    return tuple(_size(row) for row in table("nominal-sizes")["size"])


def _size(row: dict[str, list[str]]) -> Size:
    names = (*(f"{name} in" for name in row["inches"]), *(f"{name} mm" for name in row.get("mm", ())))
    low, high = map(float, row["short"])
    long_low, long_high = map(float, row.get("long", row["short"]))
    return Size(names, (low, high), (long_low, long_high))


def find(said: str) -> Size | None:
    """The size that a text names, typed in inches (`6 1/2"`, `6.5`, `6x9 in`) or mm (`165 mm`, `16.5 cm`); None for any other text."""
    name = _name(said)
    return next((size for size in sizes() if name in size.names), None)


def going_by(hole: KnownOutline) -> Iterator[str]:
    """The names under which a hole of these measurements usually goes."""
    return (size.names[0] for size in sizes() if size.allows(hole))


def _name(said: str) -> str:
    """The text as the table has it: `6.5 in`, `6x9 in`, `165 mm`; empty where it is no plain size."""
    text = said.casefold().strip()
    if re.search(r"mm|cm", text):
        return f"{value:g} mm" if (value := _read(text)) else ""
    parts = [_read(f"{_INCH_MARKS.sub('', part).strip()} in") for part in _TIMES.split(text)]
    if not parts or not all(parts):
        return ""
    return f"{'x'.join(f'{part / 25.4:g}' for part in sorted(filter(None, parts)))} in"


def _read(text: str) -> float | None:
    """A length in mm; None for what is none."""
    try:
        return round(units.parse(text, "length").value, 6)
    except units.UnitError:
        return None
