"""The scale of a section and where it stands on the sheet."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from undertrim.publish.pictures.drawings.axis import Axis, Section
from undertrim.publish.pictures.drawings.dimensions import Measure

LOWEST = 110.0
"""A picture is at least as high, so that a text beside it finds room."""
PAD = 14.0
"""Kept free at both sides of a picture."""
_HIGHEST = 220.0
_REACH = 1.15  # how far beyond the largest radius is drawn


@dataclass(frozen=True, slots=True)
class View:
    """From mm along and across the axis to drawing units; `half` mm are shown above the axis, which is the lower edge."""

    unit: float
    start: float
    bottom: float
    half: float
    low: float
    high: float

    def x(self, along: float) -> float:
        """Where a position along the axis is."""
        return round(self.start + (along - self.low) * self.unit, 3)

    def y(self, across: float) -> float:
        """Where a distance from the axis is."""
        return round(self.bottom - across * self.unit, 3)

    @property
    def top(self) -> float:
        """Upper edge of the picture."""
        return self.y(self.half)

    @property
    def right(self) -> float:
        """Right edge of the picture."""
        return self.x(self.high) + PAD

    def moved(self, top: float) -> "View":
        """The same with its upper edge at `top`."""
        return replace(self, bottom=top + self.half * self.unit)


def view(section: Section, axis: Axis, left: float, right: float) -> View:
    """The largest scale at which the section goes between two edges, no higher than it must be to be read."""
    known = [radius for measure in _across(section) if (radius := measure.half) is not None]
    low, high = min(axis.known), max(axis.known)
    if high - low < 1:
        low, high = low - 20, high + 20
    half = max(known) * _REACH if known and max(known) > 0 else 0.5 * (high - low)
    room = right - left - 2 * PAD
    half = max(half, *_least(axis, (low, high), LOWEST / room))
    leaning = axis.behind(half)
    low = low if leaning is None else min(low, leaning)
    unit = min(room / (high - low), _HIGHEST / half)
    half = max(half, LOWEST / unit)
    start = left + PAD + (room - (high - low) * unit) / 2
    return View(unit, start, half * unit, half, low, high)


def _least(axis: Axis, ends: tuple[float, float], share: float) -> Iterator[float]:
    """The least half height in mm of a picture that is as wide as what is known, and as where the thing behind leans to at that height.

    `share` is the least height over the width. In the second case the width grows with the height: half = share x (high - clear + slope x half).
    """
    low, high = ends
    yield share * (high - low)
    if axis.clear is not None:
        yield share * (high - axis.clear) / (1 - min((axis.slope or 0) * share, 0.9))


def _across(section: Section) -> Iterator[Measure]:
    yield section.hole
    if speaker := section.speaker:
        yield from (speaker.flange, speaker.basket, speaker.magnet)
