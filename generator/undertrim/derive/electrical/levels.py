"""Voltages for setting gain, and what decibels are."""

import math
from dataclasses import dataclass

from undertrim.derive.electrical.bounds import given
from undertrim.derive.electrical.numbers import Number, number
from undertrim.words import Message, message


@dataclass(frozen=True, slots=True)
class Gain:
    """The voltage in V (RMS) at which an output gives its power."""

    volts: float
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


@dataclass(frozen=True, slots=True)
class Level:
    """A change of level in dB with the factors of voltage and power that it is."""

    decibels: float
    voltage: float
    power: float
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


def gain(power: float, load: float) -> Gain:
    """U = sqrt(P R) for a power in W into a load in ohm. Raises Refused."""
    watts, ohms = given("power", power), given("load", load)
    volts = number(message("electrical/output-voltage"), math.sqrt(power * load), "V")
    headline = message("electrical/gain", power=watts.text, load=ohms.text, voltage=volts.text)
    notes = (message("electrical/set-with-sine"), message("electrical/no-further"))
    return Gain(volts.value, headline, (watts, ohms, volts), notes)


def change(decibels: float) -> Level:
    """A change in dB: voltage by 10^(dB/20), power by 10^(dB/10). Raises Refused."""
    return _level(given("level", decibels), _voltage(10 ** (decibels / 20)), _power(10 ** (decibels / 10)))


def ratio(voltage: float, against: float) -> Level:
    """The level of a voltage against another, both in V: 20 log10(a/b). Raises Refused."""
    one, other = given("signal", voltage), given("signal", against, message("electrical/compared-with"))
    times = one.value / other.value
    level = number(message("electrical/level"), 20 * math.log10(times), "dB")
    found = _level(level, _voltage(times), _power(times * times))
    return Level(found.decibels, times, found.power, found.headline, (one, other, *found.numbers), found.notes)


def _voltage(times: float) -> Number:
    return number(message("electrical/voltage"), times, "times")


def _power(times: float) -> Number:
    return number(message("electrical/power"), times, "times")


def _level(level: Number, voltage: Number, power: Number) -> Level:
    headline = message("electrical/level-means", level=level.text, voltage=voltage.text, power=power.text)
    return Level(level.value, voltage.value, power.value, headline, (level, voltage, power), ())
