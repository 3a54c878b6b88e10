"""What stands before a tweeter or a woofer, as answers: a crossover of second order, and a pad of two resistors."""

from dataclasses import dataclass

from undertrim.derive.electrical import crossovers
from undertrim.derive.electrical.bounds import Refused, given
from undertrim.derive.electrical.crossovers import QUALITY, Alignment
from undertrim.derive.electrical.filters import neighbours
from undertrim.derive.electrical.numbers import Amount, Number, number
from undertrim.words import Message, Value, message, one_of


@dataclass(frozen=True, slots=True)
class Crossover:
    """The corner in Hz, with the capacitor in F and the coil in H of both ways."""

    frequency: float
    capacitance: float
    inductance: float
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


def crossover(frequency: float, load: float, alignment: str) -> Crossover:
    """A crossover of second order for a corner in Hz and a load in ohm; `alignment` is 'butterworth' or 'linkwitz-riley'. Raises Refused."""
    chosen = _alignment(alignment)
    corner, ohms = given("frequency", frequency), given("load", load)
    found = crossovers.second_order(frequency, load, chosen)
    capacitor = number(message("electrical/capacitor"), found.capacitance, "F")
    coil = number(message("electrical/coil"), found.inductance, "H")
    down = number(message("electrical/at-corner"), crossovers.at_corner(chosen), "dB")
    parts = {"capacitor": capacitor.text, "coil": coil.text}
    headline = message(
        "electrical/crossover-at", corner=corner.text, load=ohms.text, kind=message(f"electrical/{chosen}"), **parts
    )
    notes = (
        message("electrical/crossover-ways", **parts),
        _preferred("electrical/preferred-capacitors", capacitor),
        _preferred("electrical/preferred-coils", coil),
        message("electrical/second-order", down=down.text),
        message("electrical/load-changes"),
    )
    numbers = (corner, ohms, capacitor, coil, down)
    return Crossover(frequency, found.capacitance, found.inductance, headline, numbers, notes)


def _alignment(typed: str) -> Alignment:
    chosen = next((one for one in QUALITY if one == typed), None)
    if chosen is None:
        raise Refused(message("electrical/no-alignment", typed=typed, known=one_of(*QUALITY)))
    return chosen


def _preferred(code: str, part: Number) -> Message:
    """The standard values around a part."""
    below, above = neighbours(part.value)
    return message(code, below=Amount(below, part.unit), above=Amount(above, part.unit))


@dataclass(frozen=True, slots=True)
class PadAnswer:
    """Two resistors in ohm, and what part of the power each makes heat of; in W where the power is known."""

    series: float
    across: float
    heat: tuple[float, float]
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


def pad(decibels: float, load: float, power: float | None = None) -> PadAnswer:
    """A pad that takes a level in dB off a load in ohm and keeps the load; `power` in W is what goes into the two together. Raises Refused.

    With k the part of the voltage that is kept, the series resistor takes 1 - k of the power, the other k(1 - k), and the tweeter k^2.
    """
    level, ohms = given("taken-off", decibels), given("load", load)
    watts = () if power is None else (given("power", power),)
    found = crossovers.pad(decibels, load)
    series = number(message("electrical/in-series"), found.series, "ohm")
    across = number(message("electrical/across"), found.across, "ohm")
    kept = 1 - found.series / load
    parts = (1 - kept, kept * (1 - kept))
    names = (message("electrical/series-heat"), message("electrical/across-heat"))
    heat = tuple(_heat(name, part, power) for name, part in zip(names, parts, strict=True))
    headline = message("electrical/pad", level=level.text, load=ohms.text, series=series.text, across=across.text)
    notes = (
        message("electrical/pad-heat", series=heat[0].text, across=heat[1].text),
        _preferred("electrical/preferred-series", series),
        _preferred("electrical/preferred-across", across),
        message("electrical/pad-place"),
    )
    return PadAnswer(found.series, found.across, parts, headline, (level, ohms, *watts, series, across, *heat), notes)


def _heat(name: Value, part: float, power: float | None) -> Number:
    return number(name, part, "share") if power is None else number(name, part * power, "W")
