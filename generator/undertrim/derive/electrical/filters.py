"""First-order crossovers: a capacitor in series for a high-pass, a coil in series for a low-pass."""

import math
from dataclasses import dataclass

from undertrim.derive.electrical.bounds import given
from undertrim.derive.electrical.numbers import Number, number, said
from undertrim.resources import table

_NOTES = (
    "first order: 6 dB an octave, 3 dB down at this frequency into a load that does not change with frequency",
    "a real speaker's load does change, so that the true corner lies elsewhere: listen, or measure",
)


@dataclass(frozen=True, slots=True)
class Filter:
    """The corner in Hz, with the capacitor in F or the coil in H that gives it, or both where it was asked for."""

    frequency: float
    capacitance: float | None
    inductance: float | None
    headline: str
    numbers: tuple[Number, ...]
    notes: tuple[str, ...]


def at(frequency: float, load: float) -> Filter:
    """C = 1/(2 pi f R) and L = R/(2 pi f) for a corner in Hz and a load in ohm. Raises Refused."""
    corner, ohms = given("frequency", frequency), given("load", load)
    capacitor = number("capacitor", 1 / (2 * math.pi * frequency * load), "F")
    coil = number("coil", load / (2 * math.pi * frequency), "H")
    headline = f"{corner.text} at {ohms.text}: {capacitor.text} in series for a high-pass, {coil.text} in series for a low-pass"
    below, above = (_with_standard(value, load) for value in neighbours(capacitor.value))
    notes = (f"next preferred values: {below}, {above}", *_NOTES)
    return Filter(frequency, capacitor.value, coil.value, headline, (corner, ohms, capacitor, coil), notes)


def of_capacitor(capacitance: float, load: float) -> Filter:
    """f = 1/(2 pi R C) of a capacitor in F before a load in ohm. Raises Refused."""
    capacitor, ohms = given("capacitance", capacitance), given("load", load)
    corner = number("frequency", 1 / (2 * math.pi * load * capacitance), "Hz")
    headline = f"{capacitor.text} in series with {ohms.text}: a high-pass at {corner.text}"
    return Filter(corner.value, capacitance, None, headline, (capacitor, ohms, corner), _NOTES)


def of_coil(inductance: float, load: float) -> Filter:
    """f = R/(2 pi L) of a coil in H before a load in ohm. Raises Refused."""
    coil, ohms = given("inductance", inductance), given("load", load)
    corner = number("frequency", load / (2 * math.pi * inductance), "Hz")
    headline = f"{coil.text} in series with {ohms.text}: a low-pass at {corner.text}"
    return Filter(corner.value, None, inductance, headline, (coil, ohms, corner), _NOTES)


def neighbours(value: float) -> tuple[float, float]:
    """The preferred values (E12) at or below, and above."""
    decades = range(math.floor(math.log10(value)) - 1, math.floor(math.log10(value)) + 2)
    values = [step * 10.0**decade for decade in decades for step in table("electrical-defaults")["series"]["e12"]]
    place = next(index for index, one in enumerate(values) if one > value * (1 + 1e-9))
    return values[place - 1], values[place]


def _with_standard(capacitance: float, load: float) -> str:
    return f"{said(capacitance, 'F')} gives {said(1 / (2 * math.pi * load * capacitance), 'Hz')}"
