"""Passive crossovers beyond the first order, the capacitor before a tweeter, and pads that keep the load: values alone, in SI units."""

import math
from dataclasses import dataclass
from typing import Literal

from undertrim.derive.electrical import filters
from undertrim.derive.electrical.bounds import given
from undertrim.resources import table

Alignment = Literal["butterworth", "linkwitz-riley"]

QUALITY: dict[Alignment, float] = {"butterworth": 1 / math.sqrt(2), "linkwitz-riley": 0.5}
"""The quality Q of a second order: |H| at the corner is Q, so -3.01 dB and -6.02 dB (filter theory; polynomial s^2 + s/Q + 1)."""


@dataclass(frozen=True, slots=True)
class SecondOrder:
    """The capacitor in F and the coil in H of both ways: the high-pass has the capacitor in series and the coil across the load."""

    capacitance: float
    inductance: float


def second_order(frequency: float, load: float, alignment: Alignment) -> SecondOrder:
    """C = Q/(2 pi f R) and L = R/(2 pi f Q) for a corner in Hz and a load in ohm; the low-pass takes the same two. Raises Refused.

    With a pure resistance as load: a voice coil is one only near its nominal impedance.
    """
    round_per_second = 2 * math.pi * given("frequency", frequency).value
    ohms, quality = given("load", load).value, QUALITY[alignment]
    return SecondOrder(quality / (round_per_second * ohms), ohms / (round_per_second * quality))


def at_corner(alignment: Alignment) -> float:
    """The level at the corner, in dB: 20 log10 Q."""
    return 20 * math.log10(QUALITY[alignment])


@dataclass(frozen=True, slots=True)
class Pad:
    """Two resistors in ohm that keep the load: one in `series` before, one `across` the tweeter."""

    series: float
    across: float


def pad(decibels: float, load: float) -> Pad:
    """R1 = Z(1 - k) and R2 = Z k/(1 - k) with k = 10^(-A/20), for a level taken off (A > 0, in dB) a load in ohm. Raises Refused."""
    ohms, kept = given("load", load).value, 10 ** (-given("taken-off", decibels).value / 20)
    return Pad(ohms * (1 - kept), ohms * kept / (1 - kept))


@dataclass(frozen=True, slots=True)
class Series:
    """A capacitor in series with a tweeter: what is reckoned, and the standard value at or below it (in F), with its rated voltage in V.

    `coarse` is the same of the coarser series (E6). `corner` in Hz is that of the standard value, `volts` the peak that it must bear, `rated` the next standard rating (None above all).
    """

    exact: float
    standard: float
    coarse: float
    corner: float
    volts: float
    rated: float | None


def series_capacitor(frequency: float, load: float, power: float) -> Series:
    """A first-order high-pass that begins at `frequency` in Hz or above, for a load in ohm driven with a power in W. Raises Refused.

    The lower standard value has the higher corner, so it protects. Below the corner nearly the whole voltage is across the capacitor:
    it must bear the peak, sqrt(2 P R).
    """
    exact = filters.capacitance(given("frequency", frequency).value, given("load", load).value)
    (standard, _), (coarse, _) = filters.neighbours(exact), filters.neighbours(exact, "e6")
    volts = math.sqrt(2 * given("power", power).value * load)
    return Series(exact, standard, coarse, 1 / (2 * math.pi * load * standard), volts, rated(volts))


def rated(volts: float) -> float | None:
    """The next standard voltage of capacitors at or above, in V; None where none is (electrical-defaults.toml)."""
    ratings: list[float] = table("electrical-defaults")["series"]["capacitor_volts"]
    return next((rating for rating in ratings if rating >= volts), None)
