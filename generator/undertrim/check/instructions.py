"""What a text tells a person to do, clause by clause; what a clause forbids is not told (words in data/forbidden.toml)."""

import re
from collections.abc import Iterator
from functools import cache

from undertrim.resources import table

_STOP = re.compile(r"[.;!?]+(?=\s|$)")
_CONDITION = re.compile(
    r"^\s*(?:if|when|where|while|unless|once|as|because|since|although|though)\b[^,]*,", re.IGNORECASE
)


def sentences(text: str) -> list[str]:
    """The sentences of a text. A semicolon and a blank line end one too; a line break alone does not."""
    plain = " ".join(re.sub(r"\n\s*\n", ". ", text.replace("’", "'")).split())
    return [sentence.strip() for sentence in _STOP.split(plain) if sentence.strip()]


def clauses(sentence: str) -> Iterator[str]:
    """The parts of a sentence that stand by themselves: a condition at its head, and what follows a colon, 'but' or ', so'."""
    condition = _CONDITION.match(sentence)
    if condition:
        yield condition[0]
        sentence = sentence[condition.end() :]
    yield from (piece for piece in _turns().split(sentence) if piece.strip())


def told(clause: str, wanted: re.Pattern[str]) -> Iterator[re.Match[str]]:
    """Every match that the clause does not forbid: no 'never' before its end, no 'is forbidden' behind it."""
    for match in wanted.finditer(clause):
        ahead = _words("empty").sub("", clause[: match.end()])
        if not _words("no").search(ahead) and not _words("refused").search(clause[match.end() :]):
            yield match


@cache
def _turns() -> re.Pattern[str]:
    return re.compile("|".join(map(re.escape, table("forbidden")["turns"])), re.IGNORECASE)


@cache
def _words(name: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, table('forbidden')[name]))})(?![\w-])", re.IGNORECASE)
