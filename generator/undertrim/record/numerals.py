"""The number in front of a unit, as people type it: "62", "6.2", "7/32", "2 3/16", "2-3/16"."""

import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction

from undertrim import words
from undertrim.words import Message, SaidError, message, one_of

LONGEST = 40  # characters; the longest sensible value is about half of that
_NUMERAL = re.compile(
    r"(?P<sign>[-−]?)(?:"
    r"(?:(?P<whole>[0-9]+)(?: | ?- ?))?(?P<top>[0-9]+) ?[/⁄] ?(?P<bottom>[0-9]+)"
    r"|(?P<plain>[0-9]+(?:\.(?P<decimals>[0-9]+))?|\.(?P<bare>[0-9]+))"
    r")(?P<rest>[^0-9]*)"
)
_COMMA = re.compile(r"[0-9],[0-9]")
_THOUSANDS = re.compile(r"[0-9],[0-9]{3}(?![0-9])")
_POWER = re.compile(r"[0-9.]e[-+]?[0-9]", re.IGNORECASE)
_NUMBERS = re.compile(r"[0-9]+(?:\.[0-9]+)?")
_RANGE = re.compile(r"[0-9][^0-9/]*(?:-|–|\.\.\.?|…| to )[^0-9/]*[0-9]")


class UnitError(SaidError, ValueError):
    """A text that is not a quantity. `unitless` tells that only its unit is missing."""

    def __init__(self, said: Message, *, unitless: bool = False) -> None:
        super().__init__(said)
        self.unitless = unitless


@dataclass(frozen=True, slots=True)
class Numeral:
    """A number as typed: `parts` is the denominator (0: none), `decimals` counts digits after the point."""

    text: str
    value: Fraction
    parts: int
    decimals: int

    def step(self, mark: int) -> Fraction:
        """Half of the last digit typed; without decimals half of 1/`mark`, or of 1/`parts` if finer."""
        if self.decimals:
            return Fraction(1, 2 * 10**self.decimals)
        return Fraction(1, 2 * max(self.parts, mark))


def quoted(text: str) -> Message:
    """The text in quotes for a message: on one line, printable, and cut when long."""
    shown = "".join(letter if letter.isprintable() else "?" for letter in text)
    return words.quoted(f"{shown[: LONGEST - 1]}…" if len(shown) > LONGEST else shown)


def tidy(text: str) -> str:
    """The text composed (NFC), with every run of white space as one space."""
    if len(text) > LONGEST:
        raise UnitError(message("units/too-long", text=quoted(text)))
    return " ".join(unicodedata.normalize("NFC", text).split())


def split(text: str, example: str) -> tuple[Numeral, str]:
    """Take a tidy text apart into its number and its unit. Raises UnitError, with the example in its hint."""
    found = _NUMERAL.fullmatch(text)
    if found is None or _is_vulgar(text):
        raise UnitError(message("units/unreadable", text=quoted(text), hint=_way_out(text, example)))
    numeral = _fraction(found, text) if found["top"] else _decimal(found)
    return numeral, found["rest"].strip()


def _decimal(found: re.Match[str]) -> Numeral:
    plain = found["plain"] if found["plain"][0] != "." else "0" + found["plain"]
    sign = "-" if found["sign"] else ""
    return Numeral(sign + plain, Fraction(sign + plain), 0, len(found["decimals"] or found["bare"] or ""))


def _fraction(found: re.Match[str], text: str) -> Numeral:
    whole, top, bottom = int(found["whole"] or 0), int(found["top"]), int(found["bottom"])
    if bottom == 0:
        raise UnitError(message("units/by-zero", text=quoted(text)))
    if top >= bottom:
        hint = _proper(whole, top, bottom, found["rest"].strip())
        raise UnitError(message("units/improper", text=quoted(text), hint=hint))
    value = whole + Fraction(top, bottom)
    shown = f"{whole} {top}/{bottom}" if whole else f"{top}/{bottom}"
    return Numeral("-" + shown, -value, bottom, 0) if found["sign"] else Numeral(shown, value, bottom, 0)


def mixed(value: Fraction) -> str:
    """A positive value in lowest terms as people write it: "3", "7/32", "1 1/16"."""
    whole, top = divmod(value.numerator, value.denominator)
    if not top:
        return str(whole)
    return f"{whole} {top}/{value.denominator}" if whole else f"{top}/{value.denominator}"


def _proper(whole: int, top: int, bottom: int, unit: str) -> Message:
    if whole or not unit:
        return message("units/check")
    return message("drives/write", written=quoted(f"{mixed(Fraction(top, bottom))} {unit}"))


def _is_vulgar(text: str) -> bool:
    """Whether a letter is a fraction of its own, such as ½."""
    odd = (letter for letter in text if letter > "~" and letter != "⁄")
    return any("⁄" in unicodedata.normalize("NFKC", letter) for letter in odd)


def _way_out(text: str, example: str) -> Message:
    if _THOUSANDS.search(text):
        whole, decimal = text.replace(",", ""), text.replace(",", ".")
        return message("units/no-comma", written=one_of(quoted(whole), quoted(decimal)))
    if _COMMA.search(text):
        return message("units/decimal-point", written=quoted(text.replace(",", ".")))
    if _POWER.search(text):
        return message("units/no-exponent")
    if _is_vulgar(text):
        return message("units/slash")
    if _RANGE.search(text):
        first, last = _NUMBERS.findall(text)[0], _NUMBERS.findall(text)[-1]
        unit = text[text.rindex(last) + len(last) :]
        return message("units/no-range", written=quoted(f"{first}{unit}"))
    return message("units/one-number", example=quoted(example))
