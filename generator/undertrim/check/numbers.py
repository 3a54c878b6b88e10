"""Fasteners counted in running text: 'take out the four screws' (words in data/words.toml)."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

from undertrim.resources import table

LARGEST = 99
"""The largest number that is read."""

_MARKS = ".,;:!?()"


@dataclass(frozen=True, slots=True)
class Said:
    """A number of fasteners in a text: `kinds` the noun may mean; `whole` if it can only mean all of them."""

    text: str
    number: int
    kinds: tuple[str, ...]
    whole: bool


def find(text: str) -> Iterator[Said]:
    """Every number of fasteners that is plain: not one alone, a rough number or some of another part."""
    words = text.split()
    for place, word in enumerate(words):
        number = _number(word)
        before = _clean(words[place - 1]) if place else ""
        end = _noun(words, place) if number and before not in _table()["before"] else 0
        if end and _next(words, end) not in _table()["after"]:
            phrase = " ".join(said.strip(_MARKS) for said in words[place : end + 1])
            definite = before in ("the", "all") or _clean(word) == "both"
            whole = definite and end == place + 1 and _next(words, end) in ("", "and", "then")
            yield Said(phrase, number, tuple(_table()["nouns"][_clean(words[end])]), whole)


def _clean(word: str) -> str:
    return word.strip(_MARKS + "\"'").lower()


def _number(word: str) -> int:
    """The number a word is, from two on; 0 for any other word. A mark behind it ends the phrase."""
    if word[-1] in _MARKS:
        return 0
    plain = _clean(word)
    if plain.isdecimal() and len(plain) <= len(str(LARGEST)):
        return int(plain) if int(plain) > 1 else 0
    return _numbers().get(plain, 0)


def _noun(words: list[str], place: int) -> int:
    """The place of the noun that a number counts, at most two words on; 0 if there is none."""
    for step in range(place + 1, min(place + 4, len(words))):
        if _clean(words[step]) in _table()["nouns"]:
            return step
        if _clean(words[step]) in _table()["between"] or words[step][-1] in _MARKS:
            return 0
    return 0


def _next(words: list[str], end: int) -> str:
    """The word behind the noun in the same breath; empty where a mark closes it."""
    return "" if words[end][-1] in _MARKS or end + 1 == len(words) else _clean(words[end + 1])


def _table() -> dict[str, Any]:
    found: dict[str, Any] = table("words")["number"]
    return found


@cache
def _numbers() -> dict[str, int]:
    return {"both": 2, **{word: number for number, word in enumerate(_table()["words"], 2)}}
