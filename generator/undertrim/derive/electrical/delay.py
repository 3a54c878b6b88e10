"""How long nearer speakers wait for the farthest one."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive.electrical.bounds import Refused, given, or_usual
from undertrim.derive.electrical.numbers import Number, number
from undertrim.resources import table
from undertrim.words import Items, Message, message

_KELVIN = 273.15
_MOST = 32  # speakers


@dataclass(frozen=True, slots=True)
class Delay:
    """The delay of each speaker in s, in the order given, and the speed of sound in m/s."""

    seconds: tuple[float, ...]
    speed: float
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


def speed_of_sound(celsius: float) -> float:
    """In air, in m/s: 343.2 at 20 °C, with the root of the absolute temperature (ISO 9613-1, secondary)."""
    sound = table("electrical-defaults")["sound"]
    return float(sound["speed"]) * math.sqrt((celsius + _KELVIN) / (sound["at"] + _KELVIN))


def delays(distances: Sequence[float], air: float | None = None) -> Delay:
    """Delays for distances in m from speakers to the listener's head, in air of so many °C. Raises Refused."""
    if not 2 <= len(distances) <= _MOST:
        raise Refused(message("electrical/no-delay", count=len(distances), most=_MOST))
    ways = tuple(
        given("distance", one, message("electrical/distance", number=place)) for place, one in enumerate(distances, 1)
    )
    warmth = or_usual("air", air, "air")
    speed = speed_of_sound(warmth.value)
    waits = tuple(
        number(message("electrical/delay", number=place), (max(distances) - one) / speed, "s")
        for place, one in enumerate(distances, 1)
    )
    headline = message("electrical/delays", delays=Items(tuple(wait.text for wait in waits), "comma"))
    sound = number(message("electrical/speed-of-sound"), speed, "m/s", message("electrical/by-iso-9613"))
    numbers = (*ways, warmth, sound, *waits)
    return Delay(
        tuple(wait.value for wait in waits), speed, headline, numbers, (message("electrical/measure-to-head"),)
    )
