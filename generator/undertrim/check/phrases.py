"""Finds phrases written as words in a data table.

`{group}` stands for any word of a group, `..` for up to eight words between, `.` for up to three; behind them `!group` refuses
the words of a group. `word*` is any word that begins so. A gap never runs over one of the group `breaks`.
"""

import re
from collections.abc import Iterable, Mapping, Sequence

Groups = Mapping[str, Sequence[str]]

_GAPS = {"..": 8, ".": 3}
_APART = r"[\s,\"'()/-]+"


def compiled(phrases: Iterable[str], groups: Groups) -> re.Pattern[str]:
    """One pattern for all phrases; capital letters do not matter. Raises KeyError for a group that does not exist."""
    return re.compile("|".join(f"(?:{_phrase(phrase.split(), groups)})" for phrase in phrases), re.IGNORECASE)


class Rough:
    """Tells quickly of most texts that none of some words and phrases stands in them: the longest word of each is looked for."""

    def __init__(self, words: Iterable[str]) -> None:
        longest = {max(word.replace("*", " ").split(), key=len).lower() for word in words}
        self._pattern = re.compile("|".join(map(re.escape, sorted(longest))))

    def may_stand_in(self, text: str) -> bool:
        """Whether one may; beyond ASCII always, since capital letters are many things there."""
        return not text.isascii() or bool(self._pattern.search(text.lower()))


def _phrase(tokens: list[str], groups: Groups) -> str:
    found = ""
    for token in tokens:
        gap, _, refused = token.partition("!")
        found += _gap(_GAPS[gap], refused, groups) if gap in _GAPS else _token(token, groups) + _APART
    return rf"(?<![\w-]){found.removesuffix(_APART)}(?!\w)"


def _gap(longest: int, refused: str, groups: Groups) -> str:
    words = [*groups["breaks"], *(groups[refused] if refused else ())]
    return rf"(?:(?!{_any(words)}\b)[^\s.;:]+[\s-]+){{0,{longest}}}?"


def _token(token: str, groups: Groups) -> str:
    return _any(groups[token[1:-1]]) if token.startswith("{") else _word(token)


def _any(words: Iterable[str]) -> str:
    return f"(?:{'|'.join(sorted(map(_word, words), key=len, reverse=True))})"


def _word(word: str) -> str:
    """A word, or several: the blank between them may be typed as a hyphen or left out."""
    return re.escape(word).replace(r"\ ", r"[\s-]*").replace(r"\*", r"\w*")
