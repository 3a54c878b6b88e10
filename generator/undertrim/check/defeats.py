"""Finds texts that tell how to make a safety device useless (phrases in data/forbidden.toml)."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

from undertrim.check.instructions import clauses, sentences, told
from undertrim.check.phrases import Rough, compiled
from undertrim.resources import table

_PRONOUN = re.compile(r"\b(?:it|this|that|them)\b", re.IGNORECASE)
_NEVER = re.compile(r"(?!)")


@dataclass(frozen=True, slots=True)
class Defeat:
    """One way in which a device may be defeated; `about` names the device, `unless` makes a clause harmless.

    `what` is the device and `hint` the way out by their names in `words/english/defeats.toml`.
    """

    what: str
    hint: str
    phrases: re.Pattern[str]
    about: re.Pattern[str]
    unless: re.Pattern[str]


@dataclass(frozen=True, slots=True)
class Told:
    """A phrase of a text that tells it."""

    phrase: str
    defeat: Defeat


def find(text: str, place: str = "") -> Iterator[Told]:
    """Every device that a text tells to defeat, once. `place` says in words what the text stands at, such as a pin's function."""
    if not _devices().may_stand_in(f"{text} {place}"):  # so it is in most texts
        return
    found: set[str] = set()
    for defeat in defeats():
        named = bool(defeat.about.search(place))
        if defeat.what not in found and (named or defeat.about.search(text)):
            for phrase in _phrases(text, defeat, everywhere=named):
                found.add(defeat.what)
                yield Told(phrase, defeat)
                break


def _phrases(text: str, defeat: Defeat, *, everywhere: bool) -> Iterator[str]:
    """The phrases that tell it: the device is named in the sentence, or before it where the phrase says 'it', or `everywhere`."""
    before = False
    for sentence in sentences(text):
        named = everywhere or bool(defeat.about.search(sentence))
        for match in _matches(sentence, defeat) if named or before else ():
            if named or _PRONOUN.search(match):
                yield match
        before = named


def _matches(sentence: str, defeat: Defeat) -> Iterator[str]:
    for clause in clauses(sentence):
        if not defeat.unless.search(clause):
            yield from (match[0].strip() for match in told(clause, defeat.phrases))


@cache
def defeats() -> tuple[Defeat, ...]:
    """All entries of the table."""
    return tuple(map(_defeat, table("forbidden")["defeat"]))


@cache
def _devices() -> Rough:
    """The words for whatever device may be defeated."""
    names = {name for entry in table("forbidden")["defeat"] for name in entry["about"]}
    return Rough(word for name in names for word in table("forbidden")["groups"][name])


def _defeat(entry: dict[str, Any]) -> Defeat:
    unless = _of_groups(entry["unless"]) if "unless" in entry else _NEVER
    phrases = compiled(entry["phrases"], table("forbidden")["groups"])
    return Defeat(entry["what"], entry["hint"], phrases, _of_groups(entry["about"]), unless)


def _of_groups(names: list[str]) -> re.Pattern[str]:
    return compiled((f"{{{name}}}" for name in names), table("forbidden")["groups"])
