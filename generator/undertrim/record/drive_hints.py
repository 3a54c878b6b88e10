"""What somebody probably meant by a text that is not a drive: the nearest thing that can be written."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from undertrim.record.drive_sizes import Family, families, table
from undertrim.record.nearness import slip
from undertrim.words import Items, quoted

_WORD = re.compile(r"[a-z]+(?:-[a-z]+)*")
_MEASURE = re.compile(r"([0-9]+(?:[ -][0-9]+/[0-9]+|/[0-9]+|\.[0-9]+)?) ?(mm\b|in\b|inch(?:es)?\b|\"|″|”)?")
_LETTERED = re.compile(r"(?<![a-z])([a-z]{1,2})[ .#:-]*([0-9]+)(?![0-9./]| ?(?:mm|in)\b)(?:[ -]?(h|tr)\b)?")
_THREAD = re.compile(r"(?:m|st) ?[0-9]")
_UNITS = frozenset(["mm", "in", "inch", "inches"])


@dataclass(frozen=True, slots=True)
class Guess:
    """What to write instead ("" if that cannot be told), and an `example` of its family ("" if none).

    `rest` is a word that none of it accounts for: with it, the drive may be another one.
    """

    written: str
    example: str
    brand: bool = False
    rest: str = ""


def guess(text: str) -> Guess:
    """Guess the drive behind a text such as "torx 30", "T 30", "philips 2" or "10 mm socket"."""
    lower = text.casefold()
    sized = next((found for found in _LETTERED.finditer(lower) if found[1] in table()["letters"]), None)
    left = lower if sized is None else f"{lower[: sized.start()]} {lower[sized.end() :]}"
    words = [word for word in _WORD.findall(left) if word not in _UNITS]
    row = _said(words)
    if sized is None and row is None:
        return Guess("", "")
    key = table()["letters"][sized[1]] if sized else row["write"] if row else ""
    family = families()[_beside([*words, sized[3] or ""] if sized else words, key)]
    written = family.label.format(size=sized[2]) if sized else _filled(family, lower)
    rest = _unaccounted([*words, *filter(None, [sized and sized[3]])], key)
    return Guess("" if rest else written, family.example, bool(row and row.get("brand")), rest)


def _unaccounted(words: list[str], key: str) -> str:
    """The first word that says more than the drive `key` and what stands beside it; "" if there is none."""
    kin = {key, table()["kin"].get(key, key)}
    said = [word for row in table()["said"] if row["write"] in kin for word in row["words"]]
    beside = [word for marks in table()["beside"].values() for word in marks] if "hexalobular" in kin else []
    known = {*said, *beside, *table()["filler"]["words"]}
    return next((word for word in words if word not in known and not slip(word, said)), "")


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


def examples() -> Items:
    """One example of every family, quoted."""
    return Items(tuple(quoted(family.example) for family in families().values()), "comma")


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
    rows = table()["said"]
    known = [word for row in rows for word in row["words"]]
    meant = {slip(word, known) for word in words}
    return next((row for row in rows if not meant.isdisjoint(row["words"])), None)
