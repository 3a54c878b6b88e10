"""The sentences of a script or a printed sheet: those whose codes stand in its modules, for `words.js` or `words.typ` to say.

A code stands there in quotes, or as the beginning of a template (`say(`fit/${kind}`)`), which brings every code that begins so.
"""

import json
import re
from collections.abc import Iterable, Iterator
from dataclasses import asdict
from functools import lru_cache

from undertrim.words import message, spoken
from undertrim.words.catalogue import english, rooms, spelt, texts
from undertrim.words.language import Text
from undertrim.work.refused import Refused

_QUOTED = re.compile(r'"((?:[a-z][\w-]*/)+[a-z0-9][\w-]*)"')
_BEGUN = re.compile(r"`((?:[a-z][\w-]*/)+[\w-]*)\$\{")
_SAID = re.compile(r'\b(?:say|wayOut)\(\s*"([^"]*)"\s*[,)]')


class NoSuchSentence(Refused):
    """A script says what the catalogue does not have; the text names both."""


def words(modules: Iterable[tuple[str, str]]) -> str:
    """What `words.js` learns, as JSON, for modules by name with their text. Raises NoSuchSentence."""
    speech = spoken()
    said: dict[str, Text] = {}
    for code in _named(tuple(modules)):
        for part in _parts(code):
            said[code if part == "says" else f"{code}#{part}"] = spelt(code, part)
    forms = "" if speech.tag == "en" else speech.forms
    before = list(map(asdict, speech.before))
    learnt = {"tag": speech.tag, "decimal": speech.decimal_mark, "forms": forms, "before": before, "texts": said}
    return json.dumps(learnt, ensure_ascii=False, separators=(",", ":"))


@lru_cache(maxsize=16)
def _named(modules: tuple[tuple[str, str], ...]) -> list[str]:
    """The codes that modules name between them."""
    return sorted({code for name, text in modules for code in _codes(name, text)} | set(_of_room("lists")))


def everything() -> str:
    """All of the catalogue in the same form, for tests that take modules one by one."""
    return words([("all", " ".join(f'"{code}"' for room in rooms() for code in _of_room(room)))])


def _codes(module: str, text: str) -> Iterator[str]:
    """The codes that a module names."""
    for code in _SAID.findall(text):
        if not _known(code):
            raise NoSuchSentence(message("building/no-such-sentence", module=module, code=code))
    yield from filter(_known, _QUOTED.findall(text))
    for begun in _BEGUN.findall(text):
        yield from (code for code in _of_room(begun.rpartition("/")[0]) if code.startswith(begun))


def _known(code: str) -> bool:
    room, _, name = code.rpartition("/")
    return room in rooms() and name in english(room)


def _parts(code: str) -> Iterable[str]:
    room, _, name = code.rpartition("/")
    return texts(english(room)[name])


def _of_room(room: str) -> list[str]:
    return [f"{room}/{name}" for name in english(room)] if room in rooms() else []
