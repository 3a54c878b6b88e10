"""Numbers as people read them: four digits, both systems of units, and where each one comes from."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, Literal

from undertrim.resources import table
from undertrim.words import Language, Message, Value, Word, message, say

_DIGITS = 4
_KEPT = 12  # digits that two machines agree on; rounding begins from these


@dataclass(frozen=True, slots=True)
class Amount:
    """A value with its unit, a key of data/electrical-print.toml: it says itself in both systems where people use both."""

    value: float
    unit: str

    def say(self, speech: Language, /) -> str:
        """The value as printed: "5 m (16.4 ft)", "489.1 mV", "3 %"."""
        row = next(row for row in table("electrical-print")[self.unit] if abs(self.value) < row.get("below", math.inf))
        printed = _printed(self.value, row, speech)
        if "other" in row:
            printed = message("amounts/both", amount=printed, other=_printed(self.value, row["other"], speech))
        return say(printed, speech)


def _printed(value: float, row: Mapping[str, Any], speech: Language) -> Message:
    digits = shown(value * row["scale"] + row.get("offset", 0))
    number = digits.replace(".", speech.decimal_mark)
    if "word" in row:
        return message(f"amounts/{row['word']}", number=number, count=1 if digits == "1" else 2)
    return message("amounts/plain", number=number, symbol=row["symbol"])


Origin = Literal["given", "usual", "computed"] | Message | Word
"""Where a number comes from: one of these, or a source in words."""


@dataclass(frozen=True, slots=True)
class Number:
    """One number of an answer: `value` in `unit`, `text` as printed."""

    label: Value
    value: float
    unit: str
    text: Amount
    origin: Origin


def number(label: Value, value: float, unit: str, origin: Origin = "computed") -> Number:
    """A number with its text; `unit` is a key of data/electrical-print.toml."""
    return Number(label, value, unit, Amount(value, unit), origin)


def shown(value: float) -> str:
    """Four digits, half up, no trailing zeros and no exponent; whole numbers are not shortened: "0.4891", "1989"."""
    mantissa, _, exponent = f"{abs(value):.{_KEPT - 1}e}".partition("e")
    power, kept = int(exponent), int(mantissa.replace(".", ""))
    cut = _KEPT - max(_DIGITS, min(power + 1, _KEPT))
    rounded = (kept + 10**cut // 2) // 10**cut
    text = f"{Decimal(rounded).scaleb(power + 1 - _KEPT + cut):f}"
    trimmed = text.rstrip("0").rstrip(".") if "." in text else text
    return f"-{trimmed}" if value < 0 and rounded else trimmed
