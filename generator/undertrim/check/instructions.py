"""What a text tells a person to do, clause by clause; what it forbids is not told."""

import re
from collections.abc import Iterator
from functools import cache

from undertrim.resources import table

_STOP = re.compile(r"[.;:!?\n]+(?=\s|$)")
_CONDITION = re.compile(r"^\s*(?:if|when|where|while|unless|once|as|because|since|although|though)\b[^,]*,", re.IGNORECASE)


def sentences(text: str) -> Iterator[str]:
    """The sentences of a text; a colon or semicolon ends one too."""
    yield from (piece for piece in _STOP.split(text.replace("’", "'")) if piece.strip())


def clauses(sentence: str) -> Iterator[str]:
    """The parts of a sentence that each stand by themselves: a leading condition, and what follows 'but' or 'instead'."""
    condition = _CONDITION.match(sentence)
    if condition:
        yield condition[0]
        sentence = sentence[condition.end() :]
    yield from (piece for piece in _turns().split(sentence) if piece.strip())


def forbidden(clause: str, end: int) -> bool:
    """Whether what ends at `end` is forbidden in its clause: a 'no' before it, or 'is not allowed' behind it."""
    return bool(_before().search(clause[:end]) or _behind().search(clause[end:]))


@cache
def _turns() -> re.Pattern[str]:
    return _any("turns")


@cache
def _before() -> re.Pattern[str]:
    return _any("no")


@cache
def _behind() -> re.Pattern[str]:
    return _any("refused")


def _any(name: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, table('forbidden')[name]))})(?![\w-])", re.IGNORECASE)
