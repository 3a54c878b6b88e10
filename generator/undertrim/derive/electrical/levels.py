"""Voltages for setting gain, and what decibels are."""

import math
from dataclasses import dataclass

from undertrim.derive.electrical.bounds import given
from undertrim.derive.electrical.numbers import Number, number


@dataclass(frozen=True, slots=True)
class Gain:
    """The voltage in V (RMS) at which an output gives its power."""

    volts: float
    headline: str
    numbers: tuple[Number, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Level:
    """A change of level in dB with the factors of voltage and power that it is."""

    decibels: float
    voltage: float
    power: float
    headline: str
    numbers: tuple[Number, ...]
    notes: tuple[str, ...]


def gain(power: float, load: float) -> Gain:
    """U = sqrt(P R) for a power in W into a load in ohm. Raises Refused."""
    watts, ohms = given("power", power), given("load", load)
    volts = number("output voltage", math.sqrt(power * load), "V")
    headline = f"{watts.text} into {ohms.text}: {volts.text} RMS"
    notes = (
        "set with a steady sine at full level, tone controls flat, speakers taken off (common practice)",
        "for music below full level turn up no further: a signal that clips harms speakers at any voltage",
    )
    return Gain(volts.value, headline, (watts, ohms, volts), notes)


def change(decibels: float) -> Level:
    """A change in dB: voltage by 10^(dB/20), power by 10^(dB/10). Raises Refused."""
    level = given("level", decibels)
    return _level(
        level, number("voltage", 10 ** (decibels / 20), "times"), number("power", 10 ** (decibels / 10), "times")
    )


def ratio(voltage: float, against: float) -> Level:
    """The level of a voltage against another, both in V: 20 log10(a/b). Raises Refused."""
    one, other = given("signal", voltage, "voltage"), given("signal", against, "voltage to compare with")
    times = one.value / other.value
    level = number("level", 20 * math.log10(times), "dB")
    found = _level(level, number("voltage", times, "times"), number("power", times * times, "times"))
    return Level(found.decibels, times, found.power, found.headline, (one, other, *found.numbers), found.notes)


def _level(level: Number, voltage: Number, power: Number) -> Level:
    headline = f"{level.text}: voltage {voltage.text}, power {power.text}"
    return Level(level.value, voltage.value, power.value, headline, (level, voltage, power), ())
