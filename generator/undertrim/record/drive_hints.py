"""What somebody probably meant by a text that is not a drive: the nearest thing that can be written."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from undertrim.record.drive_sizes import Family, families, table

_WORD = re.compile(r"[a-z]+(?:-[a-z]+)*")
_MEASURE = re.compile(r"([0-9]+(?:[ -][0-9]+/[0-9]+|/[0-9]+|\.[0-9]+)?) ?(mm\b|in\b|inch(?:es)?\b|\"|″|”)?")
_LETTERED = re.compile(r"(?<![a-z])([a-z]{1,2})[ .#:-]*([0-9]+)(?![0-9./]| ?(?:mm|in)\b)")
_THREAD = re.compile(r"(?:m|st) ?[0-9]")
_UNITS = frozenset(["mm", "in", "inch", "inches"])


@dataclass(frozen=True, slots=True)
class Guess:
    """What to write instead ("" if that cannot be told), and an `example` of its family ("" if none)."""

    written: str
    example: str
    brand: bool = False


def guess(text: str) -> Guess:
    """Guess the drive behind a text such as "torx 30", "T 30", "philips 2" or "10 mm socket"."""
    lower = text.casefold()
    words = [word for word in _WORD.findall(lower) if word not in _UNITS]
    row = _said(words)
    brand = bool(row and row.get("brand"))
    if lettered := _lettered(lower, words):
        return Guess(lettered, lettered, brand)
    if row is None:
        return Guess("", "")
    family = families()[_beside(words, row["write"])]
    return Guess(_filled(family, lower), family.example, brand)


def bare(text: str) -> list[str]:
    """What may be meant by a size on its own ("7 mm", "7/32", "30"); empty if the text is not just a size."""
    found = _MEASURE.fullmatch(text.casefold())
    if found is None:
        return []
    hexagon = _filled(families()["hex"], text.casefold())
    return [hexagon, f"T{found[1]}"] if found[1].isdigit() and found[2] is None else [hexagon]


def is_thread(text: str) -> bool:
    """Whether a text is a thread, such as "M6" or "ST4.2"."""
    return bool(_THREAD.match(text.casefold()))


def examples() -> str:
    """One example of every family, quoted."""
    return ", ".join(f"'{family.example}'" for family in families().values())


def _lettered(lower: str, words: list[str]) -> str:
    for letters, digits in _LETTERED.findall(lower):
        if key := table()["letters"].get(letters):
            return families()[_beside(words, key)].label.format(size=digits)
    return ""


def _beside(words: list[str], key: str) -> str:
    if key != "hexalobular":
        return key
    changes = table()["beside"].items()
    return next((other for other, marks in changes if not set(marks).isdisjoint(words)), key)


def _filled(family: Family, lower: str) -> str:
    if "{size}" not in family.label:
        return family.label
    found = _MEASURE.search(lower)
    if found is None:
        return ""
    if not family.sizes[0].unit:
        return family.label.format(size=found[1]) if found[1].isdigit() else ""
    unit = "mm" if found[2] == "mm" or (found[2] is None and "/" not in found[1]) else "in"
    return family.label.format(size=f"{found[1]} {unit}")


def _said(words: list[str]) -> Mapping[str, Any] | None:
    from difflib import get_close_matches  # only a text that is not a drive pays for it

    rows = table()["said"]
    known = [word for row in rows for word in row["words"]]
    meant = {match for word in words for match in get_close_matches(word, known, n=1, cutoff=0.8)}
    return next((row for row in rows if not meant.isdisjoint(row["words"])), None)
