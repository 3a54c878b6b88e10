"""How bad the words of a consequence are, for the signal words of ANSI Z535.6 (words in data/severity.toml)."""

import re
from collections.abc import Iterator
from enum import IntEnum
from functools import cache

from undertrim.check.instructions import sentences
from undertrim.resources import table


class Severity(IntEnum):
    """What a consequence is about."""

    UNSAID = 0
    PROPERTY = 1
    INJURY = 2
    SERIOUS = 3


SIGNALS = {
    "NOTICE": Severity.PROPERTY,
    "CAUTION": Severity.INJURY,
    "WARNING": Severity.SERIOUS,
    "DANGER": Severity.SERIOUS,
}
"""The worst that each signal word stands for."""


def judge(consequence: str) -> tuple[Severity, str]:
    """The worst that a consequence says, with the words that say it; UNSAID and '' where no word of the table tells."""
    said = [_judge(sentence) for sentence in sentences(consequence.replace("-", " "))]
    return max(said, default=(Severity.UNSAID, ""), key=lambda pair: pair[0])


def _judge(sentence: str) -> tuple[Severity, str]:
    if word := _found("serious", sentence) or _to_people("serious_to_people", sentence, sure=True):
        return Severity.SERIOUS, word
    if word := _found("injury", sentence) or _alone(sentence) or _to_people("injury_to_people", sentence, sure=False):
        return Severity.INJURY, word
    word = _found("property", sentence)
    return (Severity.PROPERTY, word) if word and not _found("grave", sentence) else (Severity.UNSAID, "")


def _found(name: str, sentence: str) -> str:
    match = _words(name).search(sentence)
    return match[0] if match and not _denied(sentence, match.start()) else ""


def _to_people(name: str, sentence: str, *, sure: bool) -> str:
    """A verb that is meant of people: one is named, or, where `sure`, no thing is named right behind it."""
    plain = _words("not_people").sub(" ", sentence)
    people = bool(_words("people").search(plain))
    for match in _words(name).finditer(plain):
        of_thing = bool(_words("things").search(" ".join(plain[match.end() :].split()[:3])))
        if not _denied(plain, match.start()) and not of_thing and (people or (sure and _object(plain, match))):
            return match[0]
    return ""


def _object(sentence: str, match: re.Match[str]) -> bool:
    """Whether a verb stands without a thing around it: 'It can kill', not 'the battery dies'."""
    return not _words("things").search(sentence[: match.start()])


def _alone(sentence: str) -> str:
    return sentence if sentence.lower() in table("severity")["alone"] else ""


def _denied(sentence: str, start: int) -> bool:
    """Whether 'no', 'nobody' or 'without' stands right before."""
    return bool({"no", "not", "nobody", "without", "never"}.intersection(sentence[:start].lower().split()[-2:]))


@cache
def _words(name: str) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{'|'.join(_spelt(name))})(?!\w)", re.IGNORECASE)


def _spelt(name: str) -> Iterator[str]:
    yield from (re.escape(word).replace(r"\*", r"\w*") for word in table("severity")[name])
