"""What several speakers together are to an amplifier: written with + for series and | for parallel."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal

from undertrim.derive.electrical.bounds import Refused, given, or_usual
from undertrim.derive.electrical.numbers import Number, number
from undertrim.words import Message, Value, message

_LONGEST = 200  # characters
_DEEPEST = 20  # brackets in brackets
_TOKEN = re.compile(r" *([0-9]{1,6}(?:\.[0-9]{1,6})?|[+|()]) *")
_HINT = message("electrical/write-ohms")


@dataclass(frozen=True, slots=True)
class Load:
    """The load in ohm of so many speakers."""

    ohms: float
    count: int
    headline: Message
    numbers: tuple[Number, ...]
    notes: tuple[Message, ...]


def series(loads: Sequence[float]) -> float:
    """Several loads one after the other, in ohm: their sum."""
    return sum(loads)


def parallel(loads: Sequence[float]) -> float:
    """Several loads side by side, in ohm: 1/Z is the sum of 1/z."""
    return 1 / sum(1 / one for one in loads)


def wired(ohms: Sequence[float], how: Literal["parallel", "series"], least: float | None = None) -> Load:
    """The load of speakers that are all in parallel or all in series. Raises Refused."""
    if not ohms:
        raise Refused(message("electrical/no-speaker", hint=_HINT))
    speakers = tuple(given("load", one, _speaker(place)) for place, one in enumerate(ohms, 1))
    total = (parallel if how == "parallel" else series)(ohms)
    return _load(total, speakers, message(f"electrical/{how}"), least)


def arranged(text: str, least: float | None = None) -> Load:
    """The load of an arrangement such as "4+4 | 4+4"; `least` is what the output allows in ohm. Raises Refused."""
    reader = _Reader(_tokens(text))
    total = reader.read()
    return _load(total, tuple(reader.speakers), " ".join(text.split()), least)


def _speaker(place: int) -> Message:
    return message("electrical/speaker", number=place)


def _load(total: float, speakers: tuple[Number, ...], how: Value, least: float | None) -> Load:
    allowed = or_usual("load", least, "least_load", message("electrical/least-load"))
    found = number(message("electrical/load"), total, "ohm")
    headline = message("electrical/load-of", count=len(speakers), how=how, load=found.text)
    notes = [message("electrical/nominal-ohms")]
    if total < allowed.value * (1 - 1e-9):
        code = "electrical/below-usual" if allowed.origin == "usual" else "electrical/below-least"
        notes.insert(0, message(code, load=found.text, least=allowed.text))
    return Load(total, len(speakers), headline, (*speakers, allowed, found), tuple(notes))


def _tokens(text: str) -> list[str]:
    if len(text) > _LONGEST:
        raise Refused(message("electrical/too-long", most=_LONGEST))
    found, place = [], 0
    while place < len(text):
        match = _TOKEN.match(text, place)
        if match is None:
            raise Refused(message("electrical/not-read", what=text[place], text=text, hint=_HINT))
        found.append(match[1])
        place = match.end()
    return found


def _missing(before: str) -> Message:
    if before:
        return message("electrical/speaker-missing", before=before, hint=_HINT)
    return message("electrical/speaker-missing-last", hint=_HINT)


@dataclass(slots=True)
class _Reader:
    """Reads tokens by descent: parallel branches of series of speakers or brackets."""

    tokens: list[str]
    place: int = 0
    depth: int = 0
    speakers: list[Number] = field(default_factory=list)

    def read(self) -> float:
        total = self._branches()
        if self.place < len(self.tokens):
            raise Refused(message("electrical/cannot-stand", what=self.tokens[self.place], hint=_HINT))
        return total

    def _branches(self) -> float:
        branches = [self._chain()]
        while self._takes("|"):
            branches.append(self._chain())
        return parallel(branches) if len(branches) > 1 else branches[0]

    def _chain(self) -> float:
        links = [self._one()]
        while self._takes("+"):
            links.append(self._one())
        return series(links)

    def _one(self) -> float:
        if self._takes("("):
            return self._bracket()
        token = self.tokens[self.place] if self.place < len(self.tokens) else ""
        if not token[:1].isdigit():
            raise Refused(_missing(token))
        self.place += 1
        self.speakers.append(given("load", float(token), _speaker(len(self.speakers) + 1)))
        return float(token)

    def _bracket(self) -> float:
        self.depth += 1
        if self.depth > _DEEPEST:
            raise Refused(message("electrical/too-deep", hint=_HINT))
        total = self._branches()
        if not self._takes(")"):
            raise Refused(message("electrical/not-closed", hint=_HINT))
        self.depth -= 1
        return total

    def _takes(self, token: str) -> bool:
        if self.place < len(self.tokens) and self.tokens[self.place] == token:
            self.place += 1
            return True
        return False
