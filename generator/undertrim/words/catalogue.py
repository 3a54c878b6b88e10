"""The catalogue: English in `english/<room>.toml`, other languages in gettext files that say the same.

An entry of `english/replay.toml` has the code `replay/<name>`. Its `says` is the sentence and its `way_out` the hint; values stand in
both as `{name}`, and as `{name:lower}` where the sentence goes on in lower case. A gettext file knows a text by its code (the
context) and its English, so that a translation of a sentence that has changed is never shown for it.
"""

import string
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

from undertrim import resources
from undertrim.words.message import Message, Value, Word

ENGLISH = "en"
FOLDER = resources.inside("words")


class UnknownLanguage(Exception):  # noqa: N818 - it names what was asked for
    """There is no catalogue of this language."""


@dataclass(frozen=True, slots=True)
class Language:
    """A language by its tag, with its texts by context and English; what is missing is said in English."""

    tag: str
    texts: Mapping[tuple[str, str], str] = field(default_factory=dict)

    def text(self, context: str, english: str) -> str:
        """The text of a code."""
        return self.texts.get((context, english)) or english


_ENGLISH = Language(ENGLISH)


@cache
def language(tag: str) -> Language:
    """A language that the program speaks. Raises UnknownLanguage."""
    if tag == ENGLISH:
        return _ENGLISH
    path = FOLDER / "locale" / tag / "LC_MESSAGES" / "undertrim.po"
    if not path.is_file():
        raise UnknownLanguage(tag)
    return read(tag, path)


def read(tag: str, path: Path) -> Language:
    """A language from a gettext file. Texts that a translator has not looked at since they changed are left out."""
    from babel.messages.pofile import read_po  # only needed for another language than English

    with path.open("rb") as file:
        entries = [entry for entry in read_po(file, locale=None) if entry.id and entry.string and not entry.fuzzy]
    return Language(tag, {(entry.context or "", str(entry.id)): str(entry.string) for entry in entries})


@cache
def english(room: str) -> Mapping[str, Mapping[str, str]]:
    """The English of a room by the names in it."""
    return tomllib.loads((FOLDER / "english" / f"{room}.toml").read_text(encoding="utf-8"))


def sentence(message: Message, speech: Language = _ENGLISH) -> str:
    """A message in words, without a full stop. Raises KeyError for a code or value that the catalogue does not know."""
    return _filled(message, "says", speech)


def way_out(message: Message, speech: Language = _ENGLISH) -> str:
    """What to do about it; empty where there is nothing to say."""
    return _filled(message, "way_out", speech)


def _filled(message: Message, part: str, speech: Language) -> str:
    room, _, name = message.code.partition("/")
    entry = english(room)[name]
    if part not in entry:
        return ""
    template = speech.text(context(message.code, part), entry[part])
    return _Filling(speech).vformat(template, (), dict(message.values))


def context(code: str, part: str) -> str:
    """What a gettext file calls a text: the code of a sentence, and the code with its part for another."""
    return code if part == "says" else f"{code}#{part}"


class _Filling(string.Formatter):
    """Puts values into a text, each in words of the language."""

    def __init__(self, speech: Language) -> None:
        self.speech = speech

    def format_field(self, value: Any, format_spec: str) -> str:
        """A value as it stands in the sentence; `lower` keeps it from starting like one."""
        text = _worded(value, self.speech)
        return text.lower() if format_spec == "lower" else format(text, format_spec)


def _worded(value: Value, speech: Language) -> str:
    if isinstance(value, Message):
        return sentence(value, speech)
    if isinstance(value, Word):
        return speech.text("/".join((value.table, *value.entry)), _from_table(value))
    return f"{value:g}" if isinstance(value, float) else str(value)


def _from_table(word: Word) -> str:
    found: Any = resources.table(word.table)
    for key in word.entry:
        found = found[key]
    return str(found)
