"""Numbers with their uncertainty, and comparisons of what is needed with what is there."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from undertrim.record import equivalents
from undertrim.record.model import Blank
from undertrim.record.unit_table import kinds
from undertrim.record.units import Quantity, show

Verdict = Literal["fits", "marginal", "fails", "unknown"]
_DIGITS = 9  # of a millimetre; takes up the rounding of floats, nothing else


@dataclass(frozen=True, slots=True)
class Number:
    """A length in mm (in a check of another unit: a value in that) with the coarseness it was typed with; `value` is None where it is not known, and `text` then says how.

    `text` is as typed and in the other system of units. `default` marks a usual value that nobody measured.
    """

    label: str
    value: float | None
    step: float
    text: str
    default: bool = False


@dataclass(frozen=True, slots=True)
class Check:
    """One comparison: `need` and `have` in `unit` with their `margin` (have - need) and `uncertainty`; None where a number is missing.

    `mend` names what could be put between to mend it: `spacer`, `adapter` or nothing. `missing` are the facts that it lacks.
    """

    name: str
    title: str
    verdict: Verdict
    words: str
    need: float | None = None
    have: float | None = None
    margin: float | None = None
    uncertainty: float | None = None
    numbers: tuple[Number, ...] = ()
    missing: tuple[str, ...] = ()
    mend: str = ""
    unit: str = "mm"

    @property
    def gap(self) -> float | None:
        """The margin in mm before any usual clearance is taken off."""
        if self.margin is None:
            return None
        return self.margin + sum(number.value or 0 for number in self.numbers if number.default)


def known(label: str, value: float, step: float = 0, *, default: bool = False) -> Number:
    """A number in mm that was worked out."""
    return Number(label, value, step, both(value), default)


def typed(label: str, value: Quantity | Blank | None, *, none: float | None = None, default: bool = False) -> Number:
    """A number from a record. `none` is what the word 'none' comes to, if anything."""
    if isinstance(value, Quantity):
        return Number(label, value.value, value.step, show(value), default)
    if value is Blank.NONE and none is not None:
        return known(label, none)
    return Number(label, None, 0, "not recorded" if value is None else str(value))


def judge(margin: float, uncertainty: float) -> Verdict:
    """Marginal exactly when the margin is smaller than its uncertainty, either way."""
    if abs(margin) < uncertainty:
        return "marginal"
    return "fits" if margin >= 0 else "fails"


def compare(name: str, title: str, have: Sequence[Number], need: Sequence[Number], mend: str = "") -> Check:
    """Compare the sum of what is there with the sum of what is needed, all in mm."""
    numbers = (*have, *need)
    missing = tuple(f"{number.label} ({number.text})" for number in numbers if number.value is None)
    if missing:
        words = f"{title}: cannot be told without {' and '.join(missing)}"
        return Check(name, title, "unknown", words, numbers=numbers, missing=missing)
    there, wanted = total(have), total(need)
    margin, uncertainty = remaining(there, wanted), round(spread(numbers), _DIGITS)
    verdict = judge(margin, uncertainty)
    words = f"{title}: {_amount(margin)}"
    if verdict == "marginal":
        words += f", within the uncertainty of {both(uncertainty)}: measure again, finer"
    return Check(name, title, verdict, words, wanted, there, margin, uncertainty, numbers, mend=mend)


def remaining(have: float, need: float) -> float:
    """What one sum in mm leaves of another, without the rounding of floats."""
    return round(have - need, _DIGITS)


def total(numbers: Sequence[Number]) -> float:
    """The sum in mm; a missing number counts nothing."""
    return sum(number.value or 0 for number in numbers)


def spread(numbers: Sequence[Number]) -> float:
    """The uncertainty of a sum in mm: the steps in quadrature, as those of independent readings."""
    return math.hypot(*(number.step for number in numbers))


def capped(check: Check, reason: str) -> Check:
    """The check as marginal at best, for a reason that no number carries; unchanged where there is none or it fails anyway."""
    if not reason or check.verdict not in ("fits", "marginal"):
        return check
    return replace(check, verdict="marginal", words=f"{check.words}; {reason}")


def _amount(margin: float) -> str:
    return f"{both(margin)} to spare" if margin >= 0 else f"{both(-margin)} short"


def both(value: float) -> str:
    """A length in mm as people read it, in both systems: `16.5 mm (0.65 in)`."""
    return _both(round(value, 2))


@lru_cache(maxsize=65536)  # the same few lengths come again and again over a whole stock
def _both(value: float) -> str:
    kind = kinds()["length"]
    metric = equivalents.rounded(Fraction(repr(value)), 2)
    return f"{metric} mm ({equivalents.other_system(value, kind.units['mm'], kind) or '0 in'})"
