"""Typed quantities: a value as a person wrote it, with its unit, and the same value in one canonical unit."""

from dataclasses import dataclass
from functools import lru_cache

from undertrim.record import equivalents
from undertrim.record.numerals import Numeral, UnitError, quoted, split, tidy
from undertrim.record.unit_table import Kind, Unit, kinds
from undertrim.words import Language, Message, Word, message, one_of, say, spoken, word

__all__ = ["Quantity", "UnitError", "agree", "parse", "show", "unbound"]

_AT_LEAST = "at least "  # as it is typed in a record, whatever language it is shown in
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
    `least` tells a lower bound, typed as "at least 60 mm": the tape ended there and met nothing.
    """

    text: str
    kind: str
    value: float
    unit: str
    step: float
    least: bool = False

    def say(self, speech: Language) -> str:
        """As typed, and in the other system where people use both: "2 3/16 in (55.6 mm)"; with the decimal mark of the language.

        Times are printed in hours, minutes and seconds. Torque in N·m is also given in lbf·in below 15 N·m and in
        lbf·ft from there on.
        """
        printed = _printed(self, speech.decimal_mark)
        return say(message("units/at-least", value=printed), speech) if self.least else printed


@lru_cache(maxsize=8192)
def parse(text: str, kind: str) -> Quantity:
    """Read a quantity such as "62 mm", "2 3/16 in", "88 in-lb", "12.6 V" or "at least 60 mm".

    `kind` is a key of data/units.toml. Raises UnitError for a text that is not such a quantity, and KeyError
    for a kind that does not exist. "unknown" is not a quantity: the caller looks for it first.
    """
    wanted, tidied = kinds()[kind], tidy(text)
    bare = unbound(tidied)
    numeral, unit = _read(bare, wanted)
    step = 0 if wanted.whole else numeral.step(unit.mark) * unit.factor
    value = numeral.value * unit.factor + unit.offset
    return Quantity(tidied, kind, float(value), wanted.canonical, float(step), tidied != bare)


def unbound(text: str) -> str:
    """A tidy text without the words that make a lower bound of it: "60 mm" of "at least 60 mm"."""
    return text[len(_AT_LEAST) :] if text[: len(_AT_LEAST)].casefold() == _AT_LEAST else text


def show(quantity: Quantity) -> str:
    """A quantity as it says itself to the reader; for what cannot hand on the quantity."""
    return quantity.say(spoken())


@lru_cache(maxsize=8192)
def _printed(quantity: Quantity, mark: str) -> str:
    kind = kinds()[quantity.kind]
    numeral, unit = _read(unbound(quantity.text), kind)
    if kind.clock and (clock := equivalents.clock(quantity.value)):
        return clock
    typed = equivalents.with_symbol(numeral.text.replace(".", mark), unit)
    other = equivalents.other_system(quantity.value, unit, kind, mark)
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
        raise UnitError(message("units/not-whole", text=quoted(text), example=quoted(kind.example)))
    if numeral.parts and not unit.fractions:
        raise UnitError(message("units/no-fractions", text=quoted(text), hint=_unfraction(numeral, kind)))
    if numeral.text.startswith("-") and not kind.negative:
        raise UnitError(message("units/negative", text=quoted(text), kind=_named(kind)))
    return numeral, unit


def _refuse_unit(text: str, numeral: Numeral, spelling: str, kind: Kind) -> Unit:
    if not spelling:
        raise UnitError(message("units/no-unit", text=quoted(text), hint=_offers(numeral, kind)), unitless=True)
    if other := _owner(spelling):
        kinds_of_both = {"other": _named(other), "kind": _named(kind)}
        raise UnitError(message("units/of-another-kind", text=quoted(text), **kinds_of_both, hint=in_units_of(kind)))
    hint = _respelt(numeral, kind.near(spelling)) or in_units_of(kind)
    raise UnitError(message("units/unknown-unit", unit=quoted(spelling), text=quoted(text), hint=hint))


def _named(kind: Kind) -> Word:
    """What a kind of quantity is called, with its article."""
    return word("units", kind.key, "name")


def _respelt(numeral: Numeral, near: Unit | None) -> Message | None:
    if near is None or (numeral.parts and not near.fractions):
        return None
    return message("drives/write", written=quoted(equivalents.with_name(numeral.text, near)))


def _owner(spelling: str) -> Kind | None:
    return next((kind for kind in kinds().values() if kind.find(spelling)), None)


def _offers(numeral: Numeral, kind: Kind) -> Message:
    if kind.of_one and 0 < numeral.value <= 1:
        return _of_the_whole(numeral, kind)
    offered = (kind.find(name) for name in kind.offer)
    units = [unit for unit in offered if unit and (unit.fractions or not numeral.parts)]
    written = [quoted(equivalents.with_name(numeral.text, unit)) for unit in units]
    return message("drives/write", written=one_of(*written)) if written else in_units_of(kind)


def _of_the_whole(numeral: Numeral, kind: Kind) -> Message:
    """People type 0.8 for 80 %: with the bare number the hint would be a hundredth of what is meant."""
    written = quoted(hundredfold(numeral, kind))
    if numeral.value != 1:
        return message("units/of-the-whole", written=written, part=numeral.text)
    other = quoted(with_unit(numeral.text, kind))
    return message("units/of-the-whole-or", written=written, part=numeral.text, other=other)


def hundredfold(numeral: Numeral, kind: Kind) -> str:
    """A part of one in the first unit that people use for its kind: "80 %" for 0.8."""
    return with_unit(equivalents.rounded(numeral.value * 100, 3), kind)


def with_unit(number: str, kind: Kind) -> str:
    """A number in the first unit that people use for its kind."""
    return equivalents.with_name(number, kind.units[kind.offer[0]])


def _unfraction(numeral: Numeral, kind: Kind) -> Message:
    has_fractions = any(unit.fractions for unit in kind.units.values())
    return _offers(numeral, kind) if has_fractions else message("units/decimal")


def in_units_of(kind: Kind) -> Message:
    """How a quantity of a kind is typed."""
    if not kind.offer:
        return message("units/without-unit", example=quoted(kind.example))
    return message("units/in-units", units=one_of(*kind.offer), example=quoted(kind.example))
