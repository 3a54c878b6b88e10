"""What somebody says a fact is, read as a value: `30 min` is 1800 s, `yellow` is YE, `2, 1` is the list of 1 and 2."""

import re

from undertrim.record import colours, drives, units
from undertrim.record.model import Blank
from undertrim.record.units import Quantity, UnitError

Reading = Quantity | str

_SAME = 1e-9
_COMMAS = re.compile(r"\s*[,;]\s*")
_GAUGE = re.compile(r"([0-9]+(?:\.[0-9]+)?) ?(mm2|mm²|AWG)")


def read(says: str, kind: str, form: str = "", scheme: str = "") -> Reading:
    """A claim as typed, read as a quantity of a kind, else in a form (see `facts.Form`); as a plain word where it is none such.

    `scheme` names the letters that a wire colour is typed in.
    """
    word = " ".join(says.split())
    if word.casefold() in tuple(Blank):
        return word.casefold()
    if kind:
        return _quantity(word, kind)
    return _READ.get(form, _as_typed)(word, scheme)


def same(one: Reading, other: Reading) -> bool:
    """Whether two readings are one value, as far as the finer of the two is typed.

    `6.4 cm` and `64 mm` are, `2 3/16 in` and `55.6 mm` are, `64 mm` and `64.2 mm` are not. `at least 60 mm` and `64 mm` are two values:
    one says more than the other.
    """
    if isinstance(one, Quantity) and isinstance(other, Quantity):
        if one.least != other.least:
            return False
        slack = _SAME * max(abs(one.value), abs(other.value))
        return one.kind == other.kind and abs(one.value - other.value) <= min(one.step, other.step) + slack
    return one == other


def text(reading: Reading) -> str:
    """A reading as typed."""
    return reading.text if isinstance(reading, Quantity) else reading


def _quantity(word: str, kind: str) -> Reading:
    try:
        return units.parse(word, kind)
    except UnitError:
        return word


def _as_typed(word: str, _: str) -> str:
    return word


def _word(word: str, _: str) -> str:
    """One of a closed list of words, however it is written: `Whole travel` is whole-travel."""
    return word.casefold().replace(" ", "-")


def _colour(word: str, scheme: str) -> str:
    try:
        return colours.parse(word, scheme or None).iec
    except colours.ColourError:
        return word


def _drive(word: str, _: str) -> str:
    try:
        return drives.parse(word).label
    except drives.DriveError:
        return word


def _number(word: str, _: str) -> str:
    return str(int(word)) if word.isdecimal() and len(word) < 10 else word


def _words(word: str, _: str) -> str:
    """A list, whose order says nothing."""
    bare = word.strip("[]{} ").casefold()
    return ", ".join(sorted(set(_COMMAS.split(bare) if _COMMAS.search(bare) else bare.split())))


def _gauge(word: str, _: str) -> str:
    found = _GAUGE.fullmatch(word)
    return f"{float(found[1]):g} {found[2].replace('²', '2')}" if found else word


_READ = {"word": _word, "colour": _colour, "drive": _drive, "number": _number, "list": _words, "gauge": _gauge}
