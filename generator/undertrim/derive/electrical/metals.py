"""What a conductor of another metal or at another temperature resists, against copper at 20 °C."""

from undertrim.derive.electrical.bounds import Refused, given
from undertrim.derive.electrical.conductors import Size
from undertrim.derive.electrical.numbers import Number
from undertrim.resources import table
from undertrim.words import Items, message

COPPER = "copper"


def factor(metal: str, own: float | None = None) -> Number:
    """How many times the resistance of copper: `own` where given, else by data/electrical-cable.toml. Raises Refused."""
    metals = table("electrical-cable")["metals"]
    if metal not in metals:
        raise Refused(message("electrical/no-metal", metal=metal, known=Items(tuple(metals), "comma")))
    if own is not None:
        return given("metal", own)
    return given("metal", metals[metal], "", "usual")


def resistance(size: Size, celsius: float, times: float = 1.0) -> float:
    """In ohm/m at a temperature of the conductor: R20 x times x (1 + 0.00393 (t - 20)), IACS copper."""
    copper = table("electrical-cable")["copper"]
    return float(size.resistance * times * (1 + copper["alpha"] * (celsius - copper["at"])))
