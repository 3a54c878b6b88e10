"""Fasteners counted in running text: 'take out the four screws'. The word lists are ours; common practice."""

from collections.abc import Iterator
from dataclasses import dataclass

LARGEST = 99
"""The largest number that is read."""

_WORDS = "two three four five six seven eight nine ten eleven twelve".split()
_NUMBERS = {"both": 2, **{word: number for number, word in enumerate(_WORDS, 2)}}
_NOUNS: dict[str, tuple[str, ...]] = {
    "screws": ("screw", "bolt"),
    "bolts": ("screw", "bolt"),
    "nuts": ("nut",),
    "clips": ("clip", "scrivet"),
    "scrivets": ("clip", "scrivet"),
    "hooks": ("hook",),
    "tabs": ("hook",),
}
"""What a noun may mean: people say screw for bolt and clip for scrivet."""
_NOT_BETWEEN = frozenset("and or of the a in on at to with for more other mm cm in inch inches x".split())
_VAGUE_BEFORE = frozenset("another other or to about new spare than first last next every".split())
_ELSEWHERE_AFTER = frozenset("of are is sit lie belong stay remain".split())
_MARKS = ".,;:!?()"


@dataclass(frozen=True, slots=True)
class Said:
    """A number of fasteners in a text: `kinds` the noun may mean; `whole` if it can only mean all of them."""

    text: str
    number: int
    kinds: tuple[str, ...]
    whole: bool


def find(text: str) -> Iterator[Said]:
    """Every number of fasteners whose meaning is plain. One alone, rough numbers and those of other parts are not."""
    words = text.split()
    for place, word in enumerate(words):
        number = _number(word)
        before = _clean(words[place - 1]) if place else ""
        end = _noun(words, place) if number and before not in _VAGUE_BEFORE else 0
        if end and _next(words, end) not in _ELSEWHERE_AFTER:
            phrase = " ".join(_clean(said) for said in words[place : end + 1])
            whole = end == place + 1 and (before in ("the", "all") or _clean(word) == "both") and _closes(words, end)
            yield Said(phrase, number, _NOUNS[_clean(words[end])], whole)


def _clean(word: str) -> str:
    return word.strip(_MARKS + "\"'").lower()


def _number(word: str) -> int:
    """The number a word is, from two on; 0 for any other word. A mark behind it ends the phrase."""
    if word[-1] in _MARKS:
        return 0
    plain = _clean(word)
    if plain.isdecimal() and len(plain) <= len(str(LARGEST)):
        return int(plain) if int(plain) > 1 else 0
    return _NUMBERS.get(plain, 0)


def _noun(words: list[str], place: int) -> int:
    """The place of the noun that a number counts, at most two words on; 0 if there is none."""
    for step in range(place + 1, min(place + 4, len(words))):
        if _clean(words[step]) in _NOUNS:
            return step
        if _clean(words[step]) in _NOT_BETWEEN or words[step][-1] in _MARKS:
            return 0
    return 0


def _next(words: list[str], end: int) -> str:
    """The word behind the noun in the same breath; empty where a mark closes it."""
    return "" if words[end][-1] in _MARKS or end + 1 == len(words) else _clean(words[end + 1])


def _closes(words: list[str], end: int) -> bool:
    """Whether nothing behind the noun narrows it down, as 'at the top' would."""
    return _next(words, end) in ("", "and", "then")
