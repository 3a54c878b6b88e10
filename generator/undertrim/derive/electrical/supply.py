"""What an amplifier takes from the battery: I = P / (efficiency x U)."""

from dataclasses import dataclass

from undertrim.derive.electrical.bounds import given, or_usual
from undertrim.derive.electrical.numbers import Number, number


@dataclass(frozen=True, slots=True)
class Supply:
    """The supply current in A."""

    current: float
    headline: str
    numbers: tuple[Number, ...]
    notes: tuple[str, ...]


def supply(power: float, efficiency: float | None = None, voltage: float | None = None) -> Supply:
    """The current for an output `power` in W at an efficiency (0 to 1) and a voltage in V. Raises Refused."""
    out = given("power", power)
    share, volts = or_usual("efficiency", efficiency, "efficiency"), or_usual("voltage", voltage, "voltage")
    found = number("supply current", out.value / (share.value * volts.value), "A")
    headline = f"{out.text} takes {found.text} at {share.text} efficiency and {volts.text}"
    notes = (
        "class AB gives back 50 to 65 % of what it takes, class D 75 to 90 % (common practice)",
        "music takes a third of this or less on average (common practice); cable and fuse are chosen for the whole",
    )
    return Supply(found.value, headline, (out, share, volts, found), notes)
