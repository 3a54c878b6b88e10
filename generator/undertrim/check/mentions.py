"""Sizes named in running text: drives, threads, lengths and torques, with the words around them."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from undertrim.record import drives, units
from undertrim.record.drives import Drive, DriveError
from undertrim.record.numerals import split
from undertrim.record.unit_table import kinds
from undertrim.record.units import Quantity, UnitError
from undertrim.resources import table

_NUMBER = r"(?:\d+[ -]\d+/\d+|\d+/\d+|\d+(?:\.\d+)?)"
_LENGTH = r"(?:mm|millimet(?:re|er)s?|cm|inch(?:es)?|in|[\"″”])"
_TORQUE = r"(?:N[ .·-]?c?m|lb[fs]?[ .·-]?(?:in|ft)|(?:in|ft)[ .·-]?lb[fs]?)"
_START = r"(?<![\w./-])(?<!\d,)"
_MEASURED = re.compile(
    rf"{_START}(?:(?P<first>\d+(?:\.\d+)?)\s?[x×]\s?)?(?P<number>{_NUMBER})\s?-?(?P<unit>{_TORQUE}|{_LENGTH})(?![\w·-]|\.\w)"
)
_TURNED = re.compile(rf"\b(?:hex[ -]key|hex|slot) {_NUMBER}\s?{_LENGTH}(?!\w)", re.IGNORECASE)
_NUMBERED = re.compile(r"(?<![\w-])(?:T|E|PH|PZ|Ph|Pz)[ -]?(?:\d{1,3})(?: pin)?(?![\w-])")
_THREAD = re.compile(r"(?<![\w-])(?P<name>(?:M|ST)\d{1,2}(?:\.\d{1,2})?)(?: ?[x×] ?\d(?:\.\d+)?(?!\d| ?mm))?(?!\w)")
_WORD = re.compile(r"[A-Za-z]+(?:['-][A-Za-z]+)*|\d+(?:[./]\d+)*|\S")
_DIGIT = re.compile(r"\d")
_STOPS = frozenset(".;:!?")


@dataclass(frozen=True, slots=True)
class Mention:
    """One size as the text has it: a drive, a length or torque, or a thread (its name, such as 'M6').

    `start` and `end` are its place in the text; `first` is the other number of "182 x 53 mm".
    """

    text: str
    start: int
    end: int
    size: Drive | Quantity | str
    first: Quantity | None = None

    @property
    def quantities(self) -> tuple[Quantity, ...]:
        """The lengths or torques it states, none for a drive by number or a thread."""
        if isinstance(self.size, Quantity):
            return (self.first, self.size) if self.first else (self.size,)
        if isinstance(self.size, Drive) and self.size.unit:
            return (units.parse(_measure(self.text), "length"),)
        return ()


def find(text: str) -> list[Mention]:
    """Every size in a text, in its order. What only looks like one (a year, 12 V, pin A4) is no size."""
    found: list[Mention] = []
    if not _DIGIT.search(text):
        return found
    for mention in (*_drives(text), *_threads(text), *_measured(text)):
        if all(mention.end <= other.start or other.end <= mention.start for other in found):
            found.append(mention)
    return sorted(found, key=lambda mention: mention.start)


def twins(text: str, found: list[Mention]) -> Iterator[tuple[Mention, Mention | None]]:
    """Each mention, with its conversion where one follows: '7/32 in (5.5 mm)'. Both then span the two."""
    waiting = list(found)
    while waiting:
        mention = waiting.pop(0)
        if waiting and _converts(text, mention, waiting[0]):
            end = waiting[0].end + text[waiting[0].end :].startswith(")")
            yield replace(mention, end=end), replace(waiting.pop(0), start=mention.start, end=end)
        else:
            yield mention, None


def _converts(text: str, one: Mention, other: Mention) -> bool:
    between = text[one.end : other.start].strip()
    closed = between == "=" or (between == "(" and text[other.end :].startswith(")"))
    return closed and _system(one) != _system(other) and "" not in (_system(one), _system(other))


def _system(mention: Mention) -> str:
    """Metric or inch; "" for what has no unit."""
    if not mention.quantities:
        return ""
    quantity = mention.quantities[-1]
    kind = kinds()[quantity.kind]
    unit = kind.find(split(quantity.text, kind.example)[1])
    return unit.system if unit else ""


def before(text: str, place: int) -> list[str]:
    """The words of the same sentence before a place, the nearest first, in small letters."""
    return _sentence(reversed(_WORD.findall(text[:place])))


def after(text: str, place: int) -> list[str]:
    """The words of the same sentence from a place on, in small letters."""
    return _sentence(iter(_WORD.findall(text[place:])))


def _sentence(words: Iterator[str]) -> list[str]:
    found: list[str] = []
    for word in words:
        if word in _STOPS:
            break
        found.append(word.lower())
    return found


def _drives(text: str) -> Iterator[Mention]:
    for match in (*_TURNED.finditer(text), *_NUMBERED.finditer(text)):
        try:
            yield _mention(match, drives.parse(_written(match[0])))
        except DriveError:
            continue


def _written(said: str) -> str:
    """A numbered drive as it is written: 'T 20' and 'PH-2' without what stands between."""
    return re.sub(r"^([A-Za-z]{1,2})[ -](?=\d)", r"\1", " ".join(said.split()))


def _threads(text: str) -> Iterator[Mention]:
    for match in _THREAD.finditer(text):
        yield _mention(match, match["name"])


def _measured(text: str) -> Iterator[Mention]:
    for match in _MEASURED.finditer(text):
        kind = "length" if re.fullmatch(_LENGTH, match["unit"]) else "torque"
        try:
            size = units.parse(f"{match['number']} {match['unit']}", kind)
            first = units.parse(f"{match['first']} {match['unit']}", kind) if match["first"] else None
        except UnitError:
            continue
        if not _is_no_unit(text, match):
            yield _mention(match, size, first)


def _mention(match: re.Match[str], size: Drive | Quantity | str, first: Quantity | None = None) -> Mention:
    return Mention(" ".join(match[0].split()), match.start(), match.end(), size, first)


def _measure(said: str) -> str:
    """The length in 'hex 7/32 in'."""
    return re.sub(r"^[A-Za-z -]+", "", said)


def _is_no_unit(text: str, match: re.Match[str]) -> bool:
    """Whether 'in' is the word, as in 'the 4 in the corners', or a mark the end of a quotation."""
    if match["unit"] in ('"', "”"):
        return text[: match.end() - 1].count('"') % 2 == 1 or "“" in text[: match.end()]
    sure = match["first"] or match[0].endswith("-in") or match[0] == text.strip()
    if match["unit"] != "in" or not match["number"].isdigit() or sure:
        return False
    following = after(text, match.end())
    converted = following[:1] in (["("], ["="]) and "".join(following[1:2])[:1].isdigit()
    return not converted and (not following or following[0] not in table("words")["size"]["inches"])
