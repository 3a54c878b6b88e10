"""First-order crossovers: a capacitor in series for a high-pass, a coil in series for a low-pass."""

import math
from dataclasses import dataclass

from undertrim.derive.electrical.bounds import given
from undertrim.derive.electrical.numbers import Amount, Number, number
from undertrim.resources import table
from undertrim.words import Message, message

_NOTES = (message("electrical/first-order"), message("electrical/load-changes"))


@dataclass(frozen=True, slots=True)
class Filter:
    """The corner in Hz, with the capacitor in F or the coil in H that gives it, or both where it was asked for."""

    frequency: float
    capacitance: float | None
    inductance: float | None
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


def at(frequency: float, load: float) -> Filter:
    """C = 1/(2 pi f R) and L = R/(2 pi f) for a corner in Hz and a load in ohm. Raises Refused."""
    corner, ohms = given("frequency", frequency), given("load", load)
    capacitor = number(message("electrical/capacitor"), capacitance(frequency, load), "F")
    coil = number(message("electrical/coil"), load / (2 * math.pi * frequency), "H")
    headline = message(
        "electrical/filter-at", corner=corner.text, load=ohms.text, capacitor=capacitor.text, coil=coil.text
    )
    below, above = (_with_standard(value, load) for value in neighbours(capacitor.value))
    notes = (message("electrical/preferred-values", below=below, above=above), *_NOTES)
    return Filter(frequency, capacitor.value, coil.value, headline, (corner, ohms, capacitor, coil), notes)


def of_capacitor(capacitance: float, load: float) -> Filter:
    """f = 1/(2 pi R C) of a capacitor in F before a load in ohm. Raises Refused."""
    capacitor, ohms = given("capacitance", capacitance), given("load", load)
    corner = number(message("electrical/frequency"), 1 / (2 * math.pi * load * capacitance), "Hz")
    headline = message("electrical/high-pass", capacitor=capacitor.text, load=ohms.text, corner=corner.text)
    return Filter(corner.value, capacitance, None, headline, (capacitor, ohms, corner), _NOTES)


def of_coil(inductance: float, load: float) -> Filter:
    """f = R/(2 pi L) of a coil in H before a load in ohm. Raises Refused."""
    coil, ohms = given("inductance", inductance), given("load", load)
    corner = number(message("electrical/frequency"), load / (2 * math.pi * inductance), "Hz")
    headline = message("electrical/low-pass", coil=coil.text, load=ohms.text, corner=corner.text)
    return Filter(corner.value, None, inductance, headline, (coil, ohms, corner), _NOTES)


def capacitance(frequency: float, load: float) -> float:
    """C = 1/(2 pi f R) in F, of a first-order high-pass."""
    return 1 / (2 * math.pi * frequency * load)


def neighbours(value: float, series: str = "e12") -> tuple[float, float]:
    """The preferred values (E12, or another series of electrical-defaults.toml) at or below, and above."""
    decades = range(math.floor(math.log10(value)) - 1, math.floor(math.log10(value)) + 2)
    values = [step * 10.0**decade for decade in decades for step in table("electrical-defaults")["series"][series]]
    place = next(index for index, one in enumerate(values) if one > value * (1 + 1e-9))
    return values[place - 1], values[place]


def _with_standard(capacitance: float, load: float) -> Message:
    corner = Amount(1 / (2 * math.pi * load * capacitance), "Hz")
    return message("electrical/capacitor-gives", capacitor=Amount(capacitance, "F"), corner=corner)
