"""Button ladders: the band of each button, where bands overlap, and which button a resistance belongs to."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations
from typing import Literal

from undertrim import resources
from undertrim.record.model import Blank, Ladder
from undertrim.record.units import Quantity

IDLE = "idle"


@dataclass(frozen=True, slots=True)
class Rung:
    """The resistances in ohm that count as one button, or as none pressed (`idle`), ends included."""

    name: str
    low: float
    high: float
    idle: bool = False


@dataclass(frozen=True, slots=True)
class Overlap:
    """Resistances in ohm that two rungs share."""

    first: Rung
    second: Rung
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Found:
    """What a resistance means: one button, idle, none (between bands), or ambiguous with all rungs that hold it."""

    kind: Literal["button", "idle", "none", "ambiguous"]
    rungs: tuple[Rung, ...]
    below: Rung | None = None
    above: Rung | None = None


def rungs(ladder: Ladder) -> tuple[Rung, ...]:
    """The bands of a ladder, the lowest first: R(1-t) to R(1+t). A button without a recorded value has none.

    An idle line that is open begins where data/functions.toml says; one whose resistance is not recorded has no band.
    """
    share = _share(ladder)
    known = [(name, nominal) for name, nominal in ladder.buttons.items() if isinstance(nominal, Quantity)]
    buttons = [Rung(name, *_band(nominal.value, share)) for name, nominal in known]
    return tuple(sorted((*buttons, *_idle(ladder, share)), key=lambda rung: (rung.low, rung.high, rung.name)))


def _share(ladder: Ladder) -> Fraction:
    typed = ladder.tolerance
    return Fraction(repr(typed.value)) / 100 if isinstance(typed, Quantity) else Fraction(0)


def _band(nominal: float, share: Fraction) -> tuple[float, float]:
    """Exact, then rounded once: a reading on the edge, read as a decimal, then compares as it would on paper."""
    if nominal == 0:
        return 0.0, float(_usual("zero_to"))
    exact = Fraction(repr(nominal))
    return float(exact * (1 - share)), float(exact * (1 + share))


def _idle(ladder: Ladder, share: Fraction) -> list[Rung]:
    if ladder.idle is Blank.NONE:
        return [Rung(IDLE, float(_usual("open_from")), math.inf, idle=True)]
    if isinstance(ladder.idle, Quantity):
        return [Rung(IDLE, *_band(ladder.idle.value, share), idle=True)]
    return []


def overlaps(steps: Sequence[Rung]) -> tuple[Overlap, ...]:
    """Every two rungs that share a resistance; a shared end is an overlap."""
    pairs = ((a, b, max(a.low, b.low), min(a.high, b.high)) for a, b in combinations(steps, 2))
    return tuple(Overlap(a, b, low, high) for a, b, low, high in pairs if low <= high)


def place(steps: Sequence[Rung], ohms: float) -> Found:
    """What a resistance in ohm means; infinite for an open line."""
    holding = tuple(rung for rung in steps if rung.low <= ohms <= rung.high)
    if len(holding) > 1:
        return Found("ambiguous", holding)
    if holding:
        return Found("idle" if holding[0].idle else "button", holding)
    below = max((rung for rung in steps if rung.high < ohms), key=lambda rung: rung.high, default=None)
    above = min((rung for rung in steps if rung.low > ohms), key=lambda rung: rung.low, default=None)
    return Found("none", (), below, above)


def leads_matter(ohms: float) -> bool:
    """Whether so few ohm were read that those of the meter's own leads count."""
    return ohms < _usual("leads_below")


def _usual(name: str) -> float:
    return float(resources.table("functions")["ladder"][name])
