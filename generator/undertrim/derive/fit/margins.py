"""Numbers with their uncertainty, and comparisons of what is needed with what is there."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal

from undertrim.derive.fit.lengths import both
from undertrim.record.model import Blank
from undertrim.record.units import Quantity
from undertrim.words import Items, Message, Value, message

Verdict = Literal["fits", "marginal", "fails", "unknown"]
_DIGITS = 9  # of a millimetre; takes up the rounding of floats, nothing else
_BEYOND = 1e6  # mm that may lie behind a lower bound: more than anything needs, and a number like others in data


@dataclass(frozen=True, slots=True)
class Number:
    """A length in mm (in a check of another unit: a value in that) with its uncertainty `step`; `value` is None where it is not known, and `text` then says how.

    `label` says what it is, `text` is the value as typed and in the other system of units. `default` marks a usual value that nobody measured. `less` and `more` are how far
    below and above it the true value may lie beside the step: that of a usual value spreads. `lacking` marks a fact that nobody recorded
    and that has bounds all the same: it is reckoned with `value`, and never makes a yes.
    """

    label: Value = field(hash=False)
    value: float | None
    step: float
    text: Value = field(hash=False)
    default: bool = False
    less: float = 0
    more: float = 0
    lacking: bool = False

    @property
    def named(self) -> Message:
        """What it is called where it is missing: `clear depth (unknown)`."""
        return message("fit/missing", what=self.label, how=self.text)


@dataclass(frozen=True, slots=True)
class Check:
    """One comparison: `need` and `have` in `unit` with their `margin` (have - need) and `uncertainty`; None where a number is missing.

    `said` is what it says beside its margin where that is not all; `mend` names what could be put between to mend it: `spacer`, `adapter` or nothing. `missing` are the facts that it lacks.
    """

    name: str
    title: Value = field(hash=False)
    verdict: Verdict
    said: Message | None = field(default=None, hash=False)
    need: float | None = None
    have: float | None = None
    margin: float | None = None
    uncertainty: float | None = None
    numbers: tuple[Number, ...] = ()
    missing: tuple[Value, ...] = field(default=(), hash=False)
    mend: str = ""
    unit: str = "mm"

    @property
    def words(self) -> Message:
        """What it found."""
        return self.said or found(self.title, amount(self.margin or 0, self.uncertainty or 0))

    @property
    def gap(self) -> float | None:
        """The margin in mm before any usual clearance is taken off."""
        if self.margin is None:
            return None
        return self.margin + sum(number.value or 0 for number in self.numbers if number.default)


def known(label: Value, value: float, step: float = 0, *, default: bool = False) -> Number:
    """A number in mm that was worked out."""
    return Number(label, value, step, both(value), default)


def limit(value: float, *numbers: Number) -> Value:
    """A limit in mm that was worked out from numbers; `71 mm (2.8 in) or more` where one of them is a lower bound."""
    said = both(value)
    return message("fit/or-more", length=said) if any(number.more for number in numbers) else said


NOT_RECORDED = message("facts/not-recorded")
_BLANKS: dict[Blank | None, Message] = {None: NOT_RECORDED, **{blank: message(f"facts/{blank}") for blank in Blank}}


def typed(label: Value, value: Quantity | Blank | None, *, none: float | None = None, default: bool = False) -> Number:
    """A number from a record. `none` is what the word 'none' comes to, if anything."""
    if isinstance(value, Quantity):
        more = _BEYOND if value.least else 0
        return Number(label, value.value, value.step, value, default, more=more, lacking=value.least)
    if value is Blank.NONE and none is not None:
        return known(label, none)
    return Number(label, None, 0, _BLANKS[value])


def judge(margin: float, uncertainty: float) -> Verdict:
    """Marginal exactly when the margin is smaller than its uncertainty, either way."""
    if abs(margin) < uncertainty:
        return "marginal"
    return "fits" if margin >= 0 else "fails"


def compare(name: str, title: Value, have: Sequence[Number], need: Sequence[Number], mend: str = "") -> Check:
    """Compare the sum of what is there with the sum of what is needed, all in mm."""
    numbers, spreads = (*have, *need), False
    for number in numbers:  # a stock is compared some ten thousand times for a vehicle
        if number.value is None:
            return _incomplete(name, title, have, need)
        spreads = spreads or bool(number.less or number.more)
    there, wanted = total(have), total(need)
    margin, uncertainty = remaining(there, wanted), round(spread(numbers), _DIGITS)
    verdict = judge(margin, uncertainty)
    check = Check(name, title, verdict, None, wanted, there, margin, uncertainty, numbers, mend=mend)
    if spreads:
        return _judged(check, have, need)
    return check if verdict != "marginal" else _too_close(check)


def _incomplete(name: str, title: Value, have: Sequence[Number], need: Sequence[Number]) -> Check:
    """A check in which a value is missing."""
    open_ends = [*((one, one.less) for one in have), *((one, one.more) for one in need)]
    missing = [one.named for one, shift in open_ends if one.value is None or (one.lacking and shift)]
    return untold(name, title, missing, (*have, *need))


def untold(name: str, title: Value, missing: Sequence[Value], numbers: Sequence[Number] = ()) -> Check:
    """A check that lacks facts, each named with how it is missing: `room to the grille (not recorded)`."""
    words = message("fit/untold", title=title, missing=each(missing))
    return Check(name, title, "unknown", words, numbers=tuple(numbers), missing=tuple(missing))


def _judged(check: Check, have: Sequence[Number], need: Sequence[Number]) -> Check:
    """The verdict of a check whose numbers all have a value, and some of them may lie elsewhere.

    A fact that is lacking decides nothing where even its worst case leaves room: then the check is marginal, since nobody looked. Where
    it may decide, nothing can be told. A usual value that spreads makes a margin inside its spread marginal.
    """
    margin, uncertainty = check.margin or 0, check.uncertainty or 0
    taken = [*((number, number.less) for number in have), *((number, number.more) for number in need)]
    given = [*((number, number.more) for number in have), *((number, number.less) for number in need)]
    if judge(remaining(margin, -_sum(given)), uncertainty) == "fails":
        return _ruled(check, "fails")
    if judge(remaining(margin, _sum(taken)), uncertainty) == "fits":
        lacking = _lacking(taken)
        return capped(_ruled(check, "fits"), message("fit/measure", what=each(lacking)) if lacking else "")
    if lacking := _lacking(taken) or _lacking(given):
        return untold(check.name, check.title, lacking, check.numbers)
    return _too_close(check)


def _too_close(check: Check) -> Check:
    close = _close(check, check.margin or 0, check.uncertainty or 0)
    return _ruled(check, "marginal", found(check.title, close))


def _ruled(check: Check, verdict: Verdict, said: Message | None = None) -> Check:
    """The same comparison with another verdict, and what it says."""
    numbers = (check.need, check.have, check.margin, check.uncertainty)
    return Check(check.name, check.title, verdict, said, *numbers, check.numbers, check.missing, check.mend, check.unit)


_Shifts = Sequence[tuple[Number, float]]  # by how much each number may still move a margin one way, in mm


def _sum(shifts: _Shifts) -> float:
    return sum(shift for _, shift in shifts)


def _lacking(shifts: _Shifts) -> list[Message]:
    """What is lacking and may move the margin."""
    return [number.named for number, shift in shifts if number.lacking and shift]


def _close(check: Check, margin: float, uncertainty: float) -> Message:
    """Why a margin is too small to tell: by what was measured, else by what is only usual."""
    usual = [number for number in check.numbers if number.less or number.more]
    if abs(margin) < uncertainty or not usual:
        return message("fit/within", apart=_apart(margin), uncertainty=both(uncertainty))
    return message("fit/usual-decides", amount=amount(margin, uncertainty), usual=each(list(map(_usual, usual))))


def _usual(number: Number) -> Message:
    value = number.value or 0
    return message("fit/usual", what=number.label, low=both(value - number.less), high=both(value + number.more))


def remaining(have: float, need: float) -> float:
    """What one sum in mm leaves of another, without the rounding of floats."""
    return round(have - need, _DIGITS)


def total(numbers: Sequence[Number]) -> float:
    """The sum in mm; a missing number counts nothing."""
    return sum([number.value or 0 for number in numbers])


def spread(numbers: Sequence[Number]) -> float:
    """The uncertainty of a sum in mm: the steps in quadrature, as those of independent readings."""
    return math.hypot(*[number.step for number in numbers])


def capped(check: Check, reason: Value) -> Check:
    """The check as marginal at best, for a reason that no number carries; unchanged where there is none or it fails anyway."""
    if not reason or check.verdict not in ("fits", "marginal"):
        return check
    return _ruled(check, "marginal", message("fit/capped", words=check.words, reason=reason))


def found(title: Value, what: Value) -> Message:
    """What a check found, in words."""
    return message("fit/check", title=title, found=what)


def amount(margin: float, uncertainty: float) -> Message:
    """A margin in words, with its uncertainty where there is any: `4 mm (0.157 in) short, ± 0.71 mm (0.028 in)`."""
    return uncertain(_apart(margin), uncertainty)


def uncertain(said: Message, uncertainty: float) -> Message:
    """What is said of a length, with its uncertainty in mm behind it; nothing there where it is exact."""
    return message("fit/uncertain", said=said, uncertainty=both(uncertainty)) if uncertainty else said


def _apart(margin: float) -> Message:
    return message("fit/to-spare", length=both(margin)) if margin >= 0 else message("fit/short", length=both(-margin))


def each(values: Sequence[Value]) -> Items:
    """Values that may hold commas themselves, joined by a word before each."""
    return Items(tuple(values), "each")
