"""Typed quantities: a value as a person wrote it, with its unit, and the same value in one canonical unit."""

from dataclasses import dataclass
from functools import lru_cache

from undertrim.record import equivalents
from undertrim.record.numerals import Numeral, UnitError, quoted, split, tidy
from undertrim.record.unit_table import Kind, Unit, kinds

__all__ = ["Quantity", "UnitError", "agree", "parse", "show"]

_SLACK = 1e-9  # relative; takes up the rounding of floats, nothing else


@dataclass(frozen=True, slots=True)
class Quantity:
    """A value as typed and what it comes to.

    `text` is as typed (white space tidied). `value` and `step` are in `unit`, the canonical unit of the kind:
    length mm, time s, current A, torque N.m, voltage V, resistance ohm, power W, frequency Hz, angle deg,
    temperature degC, mass kg, count "" (none).
    `step` is how coarse the text is: half of the last digit typed ("62 mm" 0.5, "2.19 in" 0.127); for a
    fraction or a whole number of inches half of its division, but at most half of a sixteenth
    ("2 3/16 in" and "2 in" 0.79375, "7/32 in" 0.396875). A count has step 0.
    """

    text: str
    kind: str
    value: float
    unit: str
    step: float


@lru_cache(maxsize=8192)
def parse(text: str, kind: str) -> Quantity:
    """Read a quantity such as "62 mm", "2 3/16 in", "88 in-lb" or "12.6 V".

    `kind` is a key of data/units.toml. Raises UnitError for a text that is not such a quantity, and KeyError
    for a kind that does not exist. "unknown" is not a quantity: the caller looks for it first.
    """
    wanted, tidied = kinds()[kind], tidy(text)
    numeral, unit = _read(tidied, wanted)
    step = 0 if wanted.whole else numeral.step(unit.mark) * unit.factor
    value = numeral.value * unit.factor + unit.offset
    return Quantity(tidied, kind, float(value), wanted.canonical, float(step))


@lru_cache(maxsize=8192)
def show(quantity: Quantity) -> str:
    """A parsed quantity as typed, and in the other system where people use both: "2 3/16 in (55.6 mm)".

    Times are printed in hours, minutes and seconds. Torque in N·m is also given in lbf·in below 15 N·m and in
    lbf·ft from there on.
    """
    kind = kinds()[quantity.kind]
    numeral, unit = _read(quantity.text, kind)
    if kind.clock and (clock := equivalents.clock(quantity.value)):
        return clock
    typed = equivalents.with_symbol(numeral.text, unit)
    other = equivalents.other_system(quantity.value, unit, kind)
    return f"{typed} ({other})" if other else typed


def agree(a: Quantity, b: Quantity) -> bool:
    """Whether two statements of one value agree: they differ by no more than the step of the coarser one.

    Quantities of two kinds never agree. "2 3/16 in" and "55.6 mm" agree, "2 in" and "50 mm" do not.
    """
    slack = _SLACK * max(abs(a.value), abs(b.value))
    return a.kind == b.kind and abs(a.value - b.value) <= max(a.step, b.step) + slack


def _read(text: str, kind: Kind) -> tuple[Numeral, Unit]:
    numeral, spelling = split(text, kind.example)
    unit = kind.find(spelling) or _refuse_unit(text, numeral, spelling, kind)
    if kind.whole and (numeral.decimals or numeral.parts):
        raise UnitError(f"{quoted(text)} is not a whole number", f"write it like {quoted(kind.example)}")
    if numeral.parts and not unit.fractions:
        raise UnitError(f"{quoted(text)} is a fraction of a unit that has none", _unfraction(numeral, kind))
    if numeral.text.startswith("-") and not kind.negative:
        hint = "write it without the minus sign"
        raise UnitError(f"{quoted(text)} is negative, which {kind.name} cannot be", hint)
    return numeral, unit


def _refuse_unit(text: str, numeral: Numeral, spelling: str, kind: Kind) -> Unit:
    if not spelling:
        raise UnitError(f"{quoted(text)} has no unit", _offers(numeral, kind), unitless=True)
    if other := _owner(spelling):
        raise UnitError(f"{quoted(text)} is {other.name}, not {kind.name}", _in_units_of(kind))
    hint = _respelt(numeral, kind.near(spelling)) or _in_units_of(kind)
    raise UnitError(f"unit {quoted(spelling)} in {quoted(text)} is not known", hint)


def _respelt(numeral: Numeral, near: Unit | None) -> str:
    if near is None or (numeral.parts and not near.fractions):
        return ""
    return f"write {quoted(equivalents.with_name(numeral.text, near))}"


def _owner(spelling: str) -> Kind | None:
    return next((kind for kind in kinds().values() if kind.find(spelling)), None)


def _offers(numeral: Numeral, kind: Kind) -> str:
    if kind.of_one and 0 < numeral.value <= 1:
        return _of_the_whole(numeral, kind)
    offered = (kind.find(name) for name in kind.offer)
    units = [unit for unit in offered if unit and (unit.fractions or not numeral.parts)]
    written = [quoted(equivalents.with_name(numeral.text, unit)) for unit in units]
    return "write " + _either(written) if written else _in_units_of(kind)


def _of_the_whole(numeral: Numeral, kind: Kind) -> str:
    """People type 0.8 for 80 %: with the bare number the hint would be a hundredth of what is meant."""
    written = f"write {quoted(hundredfold(numeral, kind))} for {numeral.text} of the whole"
    return f"{written}, or {quoted(with_unit(numeral.text, kind))}" if numeral.value == 1 else written


def hundredfold(numeral: Numeral, kind: Kind) -> str:
    """A part of one in the first unit that people use for its kind: "80 %" for 0.8."""
    return with_unit(equivalents.rounded(numeral.value * 100, 3), kind)


def with_unit(number: str, kind: Kind) -> str:
    """A number in the first unit that people use for its kind."""
    return equivalents.with_name(number, kind.units[kind.offer[0]])


def _unfraction(numeral: Numeral, kind: Kind) -> str:
    has_fractions = any(unit.fractions for unit in kind.units.values())
    return _offers(numeral, kind) if has_fractions else "write a decimal number"


def _in_units_of(kind: Kind) -> str:
    units = f"in {_either(list(kind.offer))}" if kind.offer else "without a unit"
    return f"write it {units}, such as {quoted(kind.example)}"


def _either(words: list[str]) -> str:
    return " or ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)
