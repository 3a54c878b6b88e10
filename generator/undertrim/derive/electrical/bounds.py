"""Usual values, and the refusal of values that cannot be meant."""

import math

from undertrim.derive.electrical.numbers import Amount, Number, Origin, number
from undertrim.resources import table
from undertrim.words import SaidError, Value, message, word


class Refused(SaidError, ValueError):  # noqa: N818 - it names what happened
    """A value that nothing can be computed from: `said` is why, with the way out."""


def usual(name: str) -> float:
    """A default of data/electrical-defaults.toml, in its SI unit (common practice, no source)."""
    return float(table("electrical-defaults")["usual"][name])


def given(bound: str, value: float, label: Value = "", origin: Origin = "given") -> Number:
    """A value as an input. Raises Refused outside of the bounds `bound` of data/electrical-defaults.toml."""
    row = table("electrical-defaults")["bounds"][bound]
    name, unit = label or word("electrical-defaults", "bounds", bound, "label"), row["unit"]
    hint = message("electrical/within", least=Amount(row["least"], unit), most=Amount(row["most"], unit))
    if not math.isfinite(value):
        raise Refused(message("electrical/not-a-number", name=name, hint=hint))
    if not row["least"] <= value <= row["most"]:
        raise Refused(message("electrical/cannot-be", name=name, value=Amount(value, unit), hint=hint))
    return number(name, float(value), unit, origin)


def or_usual(bound: str, value: float | None, name: str, label: Value = "") -> Number:
    """A value as an input, or the usual one called `name` where none is given. Raises Refused."""
    return given(bound, usual(name), label, "usual") if value is None else given(bound, value, label)
