"""Usual values, and the refusal of values that cannot be meant."""

import math

from undertrim.derive.electrical.numbers import Number, number, said
from undertrim.resources import table


class Refused(ValueError):  # noqa: N818 - it names what happened
    """A value that nothing can be computed from: `message` says why, `hint` the way out."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(message)
        self.message = message
        self.hint = hint


def usual(name: str) -> float:
    """A default of data/electrical-defaults.toml, in its SI unit (common practice, no source)."""
    return float(table("electrical-defaults")["usual"][name])


def given(bound: str, value: float, label: str = "", origin: str = "given") -> Number:
    """A value as an input. Raises Refused outside of the bounds `bound` of data/electrical-defaults.toml."""
    row = table("electrical-defaults")["bounds"][bound]
    name, unit = label or row["label"], row["unit"]
    hint = f"it must be from {said(row['least'], unit)} to {said(row['most'], unit)}: check the number and its unit"
    if not math.isfinite(value):
        raise Refused(f"the {name} is not a number", hint)
    if not row["least"] <= value <= row["most"]:
        raise Refused(f"the {name} '{said(value, unit)}' cannot be right", hint)
    return number(name, float(value), unit, origin)


def or_usual(bound: str, value: float | None, name: str, label: str = "") -> Number:
    """A value as an input, or the usual one called `name` where none is given. Raises Refused."""
    return given(bound, usual(name), label, "usual") if value is None else given(bound, value, label)
