"""Reads what turns a fastener as people say it, and checks its size against the sizes tools are made in."""

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from undertrim.record import drive_hints, units
from undertrim.record.drive_sizes import INCH, Family, Size, families, inch, metric, number
from undertrim.record.equivalents import rounded
from undertrim.record.hexagon_pairs import close_metric
from undertrim.record.numerals import LONGEST, mixed, quoted, split
from undertrim.record.unit_table import kinds

_NUMBERED = re.compile(r"(T|E|PH|PZ)([0-9]+)( pin)?", re.IGNORECASE)
_MEASURED = re.compile(r"(hex[ -]key|hex|slot) ?([0-9.][-0-9 ./,⁄]*[^\s0-9]*)", re.IGNORECASE)
_QUOTED = re.compile(r"'([^']*)'")
_QUOTED_SIZE = re.compile(r"'(?=[0-9])")
_BY_LETTERS = {
    ("T", False): "hexalobular",
    ("T", True): "hexalobular-pin",
    ("E", False): "external-hexalobular",
    ("PH", False): "phillips",
    ("PZ", False): "pozidriv",
}


class DriveError(ValueError):
    """A text that is not a drive: `message` says what is wrong, `hint` the way out."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(message)
        self.message = message
        self.hint = hint


@dataclass(frozen=True, slots=True)
class Drive:
    """What turns a fastener. `text` is as typed, `label` the one way we write it ("hex 7 mm", "T30 pin").

    `family` is a key of data/drives.toml: hex, hex-key, slot, hexalobular, hexalobular-pin,
    external-hexalobular, phillips, pozidriv, hand. `size` is in mm for hex, hex-key and slot, None for hand,
    and else the number (PH00 is -1 and PH000 is -2). `unit` is the system the size was typed in: "mm", "in",
    or "" for numbers.
    """

    text: str
    family: str
    size: float | int | None
    label: str
    unit: str = ""


@lru_cache(maxsize=1024)
def parse(text: str) -> Drive:
    """Read a drive: "hex 7 mm", "hex key 4 mm", "T30", "T30 pin", "E10", "PH2", "PZ2", "slot 5 mm", "hand".

    Raises DriveError for anything else, and for a size outside a closed series of data/drives.toml.
    """
    if len(text) > LONGEST:
        raise DriveError(f"{quoted(text)} is too long for a drive", "write only what turns the fastener")
    tidied = " ".join(text.split())
    if tidied.casefold() == "hand":
        return Drive(tidied, "hand", None, "hand")
    if (found := _NUMBERED.fullmatch(tidied)) and (key := _BY_LETTERS.get((found[1].upper(), bool(found[3])))):
        return _sized(tidied, families()[key], number(found[2]))
    if found := _MEASURED.fullmatch(tidied):
        family = families()[found[1].lower().replace(" ", "-")]
        return _sized(tidied, family, _measure(found[2].strip(), family))
    raise _unreadable(tidied)


def _sized(text: str, family: Family, typed: Size) -> Drive:
    size = family.find(typed.value, typed.unit) or typed
    if size is typed:
        _refuse_impossible(text, family, typed)
    value = float(size.value) if size.unit else int(size.value)
    return Drive(text, family.key, value, family.named(size), size.unit)


def _refuse_impossible(text: str, family: Family, typed: Size) -> None:
    """Raise DriveError unless the series is open and the size is possible."""
    message = f"no tool is made for {quoted(text)}"
    if meant := _fraction_meant(family, typed):
        raise DriveError(message, meant)
    if family.closed or (typed.unit and not typed.value):
        raise DriveError(message, f"sizes that exist near it: {neighbours(family, typed.value, typed.unit)}")


def neighbours(family: Family, value: Fraction, unit: str) -> str:
    """The sizes on both sides of a value, to print: "10 mm, 11 mm" or "T20, T25"."""
    return ", ".join(size.text if unit else family.named(size) for size in family.near(value, unit))


def _fraction_meant(family: Family, typed: Size) -> str:
    """A hint when a metric size reads as an inch fraction with a point for its stroke: "7.32 mm" for 7/32 in.

    An open series takes odd sizes, so there only a denominator of two digits is telling.
    """
    top, _, bottom = typed.text.removesuffix(" mm").partition(".")
    if typed.unit != "mm" or not bottom.strip("0") or (len(bottom) < 2 and not family.closed):
        return ""
    value = Fraction(int(top), int(bottom))
    size = family.find(value * INCH, "in")
    if size is None or mixed(value) != f"{top}/{bottom}":
        return ""
    hint = f"did you mean {family.named(size)} ({rounded(size.value, 2)} mm)"
    if family.key == "hex" and (close := close_metric(size.value)):
        hint += f", close to {family.named(close)}"
    tiny = typed.value < family.sizes[0].value
    return hint + ("? if the fastener is that small, measure it again" if tiny else "?")


def _measure(text: str, family: Family) -> Size:
    """A length typed behind hex, hex key or slot. Raises DriveError."""
    before = family.label.removesuffix("{size}")
    try:
        typed = units.parse(text, "length").text
    except units.UnitError as error:
        message = error.message.replace(quoted(text), quoted(before + text))
        raise DriveError(message, _real(_unit_hint(text, family, error))) from None
    numeral, spelling = split(typed, family.example)
    unit = kinds()["length"].find(spelling)
    assert unit is not None
    if unit.name == "in":
        return inch(numeral.value)
    size = metric(numeral.value * unit.factor)
    if unit.name != "mm":
        message = f"{quoted(before + typed)} is in {unit.name}, and tools are sized in mm or in"
        raise DriveError(message, _real(f"write {quoted(before + size.text)}"))
    return size


def _unit_hint(text: str, family: Family, error: units.UnitError) -> str:
    before = family.label.removesuffix("{size}")
    if error.unitless:
        return f"write {quoted(before + text + (' in' if '/' in text else ' mm'))}"
    if "such as" in error.hint:
        return f"write it like '{family.example}'"
    return _QUOTED_SIZE.sub(f"'{before}", error.hint)


def _unreadable(text: str) -> DriveError:
    found = drive_hints.guess(text)
    fault = "uses a brand word for the drive" if found.brand else "cannot be read as a drive"
    if found.example:
        return DriveError(f"{quoted(text)} {fault}", _instead(found))
    if drive_hints.is_thread(text):
        hint = "say what turns it, such as 'hex 10 mm'"
        return DriveError(f"{quoted(text)} is a thread, not a drive", hint)
    if sizes := drive_hints.bare(text):
        return DriveError(f"{quoted(text)} does not say what turns it", _turned(sizes))
    return DriveError(f"{quoted(text)} {fault}", f"write it like one of {drive_hints.examples()}")


def _instead(found: drive_hints.Guess) -> str:
    if found.rest:
        return f"write it like one of {drive_hints.examples()}; with the word {found.rest} it may be none of them"
    if not found.written:
        return f"write it like '{found.example}'"
    return _real(f"write {quoted(found.written)}")


def _real(hint: str) -> str:
    """The hint, or the way out of the first drive it quotes that cannot be written either."""
    faults = (_fault(written) for written in _QUOTED.findall(hint))
    return next(filter(None, faults), hint)


def _turned(candidates: list[str]) -> str:
    real = [written for written in candidates if not _fault(written)]
    return "say what turns it: " + " or ".join(map(quoted, real)) if real else _fault(candidates[0])


def _fault(written: str) -> str:
    """The hint that writing this would bring, "" if it can be written."""
    try:
        parse(written)
    except DriveError as error:
        return error.hint
    return ""
