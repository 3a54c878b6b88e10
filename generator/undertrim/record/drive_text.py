"""Reads what turns a fastener as people say it, and checks its size against the sizes tools are made in."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from undertrim import words
from undertrim.record import drive_hints, units
from undertrim.record.drive_sizes import INCH, Family, Size, families, inch, metric, number
from undertrim.record.equivalents import rounded
from undertrim.record.hexagon_pairs import close_metric
from undertrim.record.numerals import LONGEST, mixed, quoted, split
from undertrim.record.unit_table import kinds
from undertrim.words import Items, Message, SaidError, Value, WayOut, message, one_of

_NUMBERED = re.compile(r"(T|E|PH|PZ)([0-9]+)( pin)?", re.IGNORECASE)
_MEASURED = re.compile(r"(hex[ -]key|hex|slot) ?([0-9.][-0-9 ./,⁄]*[^\s0-9]*)", re.IGNORECASE)
_BY_LETTERS = {
    ("T", False): "hexalobular",
    ("T", True): "hexalobular-pin",
    ("E", False): "external-hexalobular",
    ("PH", False): "phillips",
    ("PZ", False): "pozidriv",
}

_SIZELESS = ("hand", "unknown")
"""Families that are said by their name alone."""


class DriveError(SaidError, ValueError):
    """A text that is not a drive."""


@dataclass(frozen=True, slots=True)
class Drive:
    """What turns a fastener. `text` is as typed, `label` the one way we write it ("hex 7 mm", "T30 pin").

    `family` is a key of data/drives.toml: hex, hex-key, slot, hexalobular, hexalobular-pin,
    external-hexalobular, phillips, pozidriv, hand, unknown. `size` is in mm for hex, hex-key and slot, None for
    the last two, and else the number (PH00 is -1 and PH000 is -2). `unit` is the system the size was typed in: "mm", "in",
    or "" for numbers.
    """

    text: str
    family: str
    size: float | int | None
    label: str
    unit: str = ""


@lru_cache(maxsize=1024)
def parse(text: str) -> Drive:
    """Read a drive: "hex 7 mm", "hex key 4 mm", "T30", "T30 pin", "E10", "PH2", "PZ2", "slot 5 mm", "hand", "unknown".

    Raises DriveError for anything else, and for a size outside a closed series of data/drives.toml.
    """
    if len(text) > LONGEST:
        raise DriveError(message("drives/too-long", text=quoted(text)))
    tidied = " ".join(text.split())
    if (alone := tidied.casefold()) in _SIZELESS:
        return Drive(tidied, alone, None, alone)
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
    hint = _fraction_meant(family, typed)
    if hint is None and (family.closed or (typed.unit and not typed.value)):
        hint = message("drives/sizes-near", sizes=neighbours(family, typed.value, typed.unit))
    if hint:
        raise DriveError(message("drives/no-tool", text=quoted(text), hint=hint))


def neighbours(family: Family, value: Fraction, unit: str) -> Items:
    """The sizes on both sides of a value: "10 mm, 11 mm" or "T20, T25"."""
    return Items(tuple(size.text if unit else family.named(size) for size in family.near(value, unit)), "comma")


def _fraction_meant(family: Family, typed: Size) -> Message | None:
    """A hint when a metric size reads as an inch fraction with a point for its stroke: "7.32 mm" for 7/32 in.

    An open series takes odd sizes, so there only a denominator of two digits is telling.
    """
    top, _, bottom = typed.text.removesuffix(" mm").partition(".")
    if typed.unit != "mm" or not bottom.strip("0") or (len(bottom) < 2 and not family.closed):
        return None
    value = Fraction(int(top), int(bottom))
    size = family.find(value * INCH, "in")
    if size is None or mixed(value) != f"{top}/{bottom}":
        return None
    meant = _meant(family, size)
    tiny = typed.value < family.sizes[0].value
    return message("drives/if-so-small", hint=meant) if tiny else meant


def _meant(family: Family, size: Size) -> Message:
    drive, across = family.named(size), float(rounded(size.value, 2))
    if family.key == "hex" and (close := close_metric(size.value)):
        return message("drives/meant-close", drive=drive, size=across, other=family.named(close))
    return message("drives/meant", drive=drive, size=across)


def _measure(text: str, family: Family) -> Size:
    """A length typed behind hex, hex key or slot. Raises DriveError."""
    before = family.label.removesuffix("{size}")
    try:
        typed = units.parse(text, "length").text
    except units.UnitError as error:
        raise DriveError(_of_the_drive(error, text, family)) from None
    numeral, spelling = split(typed, family.example)
    unit = kinds()["length"].find(spelling)
    assert unit is not None
    if unit.name == "in":
        return inch(numeral.value)
    size = metric(numeral.value * unit.factor)
    if unit.name != "mm":
        hint = _real(message("drives/write", written=quoted(before + size.text)))
        raise DriveError(message("drives/other-unit", text=quoted(before + typed), unit=unit.name, hint=hint))
    return size


def _of_the_drive(error: units.UnitError, text: str, family: Family) -> Message:
    """What is wrong with a length, said of the drive that it stands in."""
    before = family.label.removesuffix("{size}")
    said = _behind(error.said, before, text)
    hint = said.values.get("hint")
    if error.unitless:
        hint = message("drives/write", written=quoted(f"{before}{text}{' in' if '/' in text else ' mm'}"))
    elif isinstance(hint, Message) and hint.code in _WITH_EXAMPLE:
        hint = message("drives/like", example=words.quoted(family.example))
    return Message(said.code, {**said.values, "hint": _real(hint)}) if isinstance(hint, Message) else said


_WITH_EXAMPLE = frozenset({"units/in-units", "units/one-number", "units/slash"})
"""Ways out that show a bare length."""


def _behind(said: Message, before: str, text: str) -> Message:
    """The message with every length in quotes standing behind the words of the drive."""
    if said.code == words.quoted("").code:
        [value] = said.values.values()
        length = isinstance(value, str) and (said == quoted(text) or value[:1].isdigit())
        return quoted(f"{before}{text if said == quoted(text) else value}") if length else said
    return Message(said.code, {name: _inside(value, before, text) for name, value in said.values.items()})


def _inside(value: Value, before: str, text: str) -> Value:
    if isinstance(value, Items):
        return Items(tuple(_inside(one, before, text) for one in value.values), value.joined)
    return _behind(value, before, text) if isinstance(value, Message) else value


def _unreadable(text: str) -> DriveError:
    found, said = drive_hints.guess(text), quoted(text)
    code = "drives/brand" if found.brand else "drives/unreadable"
    if found.example:
        return DriveError(message(code, text=said, hint=_instead(found)))
    if drive_hints.is_thread(text):
        return DriveError(message("drives/thread", text=said))
    if sizes := drive_hints.bare(text):
        return DriveError(message("drives/size-alone", text=said, hint=_turned(sizes)))
    return DriveError(message(code, text=said, hint=message("drives/like-one-of", examples=drive_hints.examples())))


def _instead(found: drive_hints.Guess) -> Value:
    if found.rest:
        return message("drives/none-of-them", examples=drive_hints.examples(), rest=found.rest)
    if not found.written:
        return message("drives/like", example=words.quoted(found.example))
    return _real(message("drives/write", written=quoted(found.written)))


def _real(hint: Message) -> Value:
    """The hint, or the way out of the first drive it offers that cannot be written either."""
    return next(filter(None, map(_fault, _offered(hint))), hint)


def _offered(value: Value) -> Iterator[str]:
    """What stands in quotes in a hint."""
    if isinstance(value, Items):
        for one in value.values:
            yield from _offered(one)
    elif isinstance(value, Message):
        for inner in value.values.values():
            if value.code == words.quoted("").code and isinstance(inner, str):
                yield inner
            else:
                yield from _offered(inner)


def _turned(candidates: list[str]) -> Value:
    real = [written for written in candidates if not _fault(written)]
    fault = None if real else _fault(candidates[0])
    return fault or message("drives/say-what-turns", drives=one_of(*map(quoted, real)))


def _fault(written: str) -> WayOut | None:
    """The way out that writing this would bring; None if it can be written."""
    try:
        parse(written)
    except DriveError as error:
        return WayOut(error.said)
    return None
