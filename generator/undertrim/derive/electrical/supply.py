"""What an amplifier takes from the battery: I = P / (efficiency x U)."""

from dataclasses import dataclass

from undertrim.derive.electrical.bounds import given, or_usual
from undertrim.derive.electrical.numbers import Number, number
from undertrim.words import Message, message


@dataclass(frozen=True, slots=True)
class Supply:
    """The supply current in A."""

    current: float
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


def supply(power: float, efficiency: float | None = None, voltage: float | None = None) -> Supply:
    """The current for an output `power` in W at an efficiency (0 to 1) and a voltage in V. Raises Refused."""
    out = given("power", power)
    share, volts = or_usual("efficiency", efficiency, "efficiency"), or_usual("voltage", voltage, "voltage")
    found = number(message("electrical/supply-current"), out.value / (share.value * volts.value), "A")
    headline = message(
        "electrical/supply", power=out.text, current=found.text, efficiency=share.text, voltage=volts.text
    )
    notes = (message("electrical/efficiency-of-classes"), message("electrical/music-takes-less"))
    return Supply(found.value, headline, (out, share, volts, found), notes)
