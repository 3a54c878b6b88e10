"""Numbers as people read them: four digits, both systems of units, and where each one comes from."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from undertrim.resources import table

_DIGITS = 4
_KEPT = 12  # digits that two machines agree on; rounding begins from these


@dataclass(frozen=True, slots=True)
class Number:
    """One number of an answer: `value` in `unit`, `text` as printed, `origin` "given", "usual", "computed" or a source."""

    label: str
    value: float
    unit: str
    text: str
    origin: str


def number(label: str, value: float, unit: str, origin: str = "computed") -> Number:
    """A number with its text; `unit` is a key of data/electrical-print.toml."""
    return Number(label, value, unit, said(value, unit), origin)


def said(value: float, unit: str) -> str:
    """A value with its unit, in both systems where people use both: "5 m (16.4 ft)", "489.1 mV", "3 %"."""
    row = next(row for row in table("electrical-print")[unit] if abs(value) < row.get("below", math.inf))
    printed = _printed(value, row)
    return f"{printed} ({_printed(value, row['other'])})" if "other" in row else printed


def _printed(value: float, row: Mapping[str, Any]) -> str:
    return f"{shown(value * row['scale'] + row.get('offset', 0))} {row['symbol']}"


def shown(value: float) -> str:
    """Four digits, half up, no trailing zeros and no exponent; whole numbers are not shortened: "0.4891", "1989"."""
    mantissa, _, exponent = f"{abs(value):.{_KEPT - 1}e}".partition("e")
    power, kept = int(exponent), int(mantissa.replace(".", ""))
    cut = _KEPT - max(_DIGITS, min(power + 1, _KEPT))
    rounded = (kept + 10**cut // 2) // 10**cut
    text = f"{Decimal(rounded).scaleb(power + 1 - _KEPT + cut):f}"
    trimmed = text.rstrip("0").rstrip(".") if "." in text else text
    return f"-{trimmed}" if value < 0 and rounded else trimmed
