"""The catalogue: English in `english/<room>.toml`, other languages in gettext files that say the same.

An entry of `english/replay.toml` has the code `replay/<name>`, one of `english/rules/unused-part.toml` the code `rules/unused-part/<name>`. Its `says` is the sentence and its `way_out` the hint; `one` stands in
for `says` where the value `count` is 1. Values stand in all of them as `{name}`; as `{name:lower}` where the sentence goes on in lower case,
`{name:inside}` where only the first letter is small, `{name:capital}` where a sentence begins, and `{name:grouped}` for a large whole number. A gettext file
knows a text by its code (the context) and its English, so that a translation of a sentence that has changed
is never shown for it.
"""

import string
import tomllib
from collections.abc import Callable, Iterator, Mapping
from functools import cache, lru_cache, reduce
from pathlib import Path
from typing import Any

from undertrim import resources
from undertrim.words.language import ENGLISH, Language, Text, spoken
from undertrim.words.message import Items, Message, Value, WayOut, Word

Entry = Mapping[str, str]
Pieces = tuple[tuple[str, str | None, str], ...]


@cache
def english(room: str) -> Mapping[str, Entry]:
    """The English of a room (`replay`, `rules/unused-part`) by the names in it."""
    return tomllib.loads(resources.inside("words", "english", f"{room}.toml").read_text(encoding="utf-8"))


@cache
def rooms() -> tuple[str, ...]:
    """The names of all rooms (`replay`, `rules/unused-part`)."""
    return tuple(sorted(_rooms_below(resources.inside("words", "english"), "")))


def _rooms_below(folder: Path, above: str) -> Iterator[str]:
    for item in folder.iterdir():
        if item.is_dir():
            yield from _rooms_below(item, f"{above}{item.name}/")
        elif item.suffix == ".toml":
            yield f"{above}{item.stem}"


def named(room: str, key: str) -> Value:
    """What a record calls by a key of its own choice: our word for it where the room has one, else the key with its words apart."""
    return Message(f"{room}/{key}") if key in english(room) else key.replace("-", " ")


def spelt(code: str, part: str = "says", speech: Language | None = None) -> Text:
    """The text of a message as it stands in the catalogue, with its values still to be put in; its forms by number where it has several. Raises KeyError."""
    english_text = _entry(code)[part]
    spoken_text = (speech or spoken()).texts.get((context(code, part), english_text))
    return spoken_text or english_text


def say(value: Value, speech: Language | None = None) -> str:
    """A value in words. Raises KeyError for a message whose code or value the catalogue does not know."""
    return _said(value, speech or spoken())


def _said(value: Any, speech: Language) -> str:
    how = _SAID.get(type(value))  # a vehicle says tens of thousands of values, nearly all of these sorts
    if how:
        return how(value, speech)
    if isinstance(value, str):  # of a kind of its own
        return value
    said: str = speech.number(value) if isinstance(value, int | float) else value.say(speech)
    return said


def _of_items(items: Items, speech: Language) -> str:
    return _listed(
        [one if type(one) is str else _said(one, speech) for one in items.values],
        items.joined,
        speech,
    )


def _of_message(said: Message, speech: Language) -> str:
    return _filled(said, "says", speech) if said.values else _bare(said.code, speech)


@lru_cache(maxsize=4096)
def _bare(code: str, speech: Language) -> str:
    """A sentence without values: a third of what a vehicle says are a few hundred of these."""
    return _filled(Message(code), "says", speech)


@lru_cache(maxsize=4096)
def _of_table(word: Word, speech: Language) -> str:
    return speech.text("/".join((word.table, *word.entry)), _from_table(word))


_SAID: Mapping[type, Callable[[Any, Language], str]] = {
    str: lambda text, _: text,
    Message: _of_message,
    WayOut: lambda way, speech: _filled(way.of, "way_out", speech),
    Items: _of_items,
    Word: _of_table,
}


def pieces(code: str, speech: Language) -> Pieces | None:
    """A sentence taken apart, for who puts it together with its values himself; None where a number chooses it, a value does not stand as it is,
    or a word depends on one."""
    forms, chosen_by = _forms(code, "says", speech)
    whole = forms and chosen_by is None and not any(how for _, _, how in forms[0]) and not _changing(forms[0], speech)
    return forms[0] if whole else None


def _changing(found: Pieces, speech: Language) -> bool:
    """Whether a word of a sentence may be another one before a value."""
    return any(text.endswith(f" {rule.word} ") for text, name, _ in found if name for rule in speech.before)


def sentence(message: Message, speech: Language | None = None) -> str:
    """A message in words, without a full stop. Raises KeyError for a code or value that the catalogue does not know."""
    return _filled(message, "says", speech or spoken())


def way_out(message: Message, speech: Language | None = None) -> str:
    """What to do about it; empty where there is nothing to say."""
    return _filled(message, "way_out", speech or spoken())


def _filled(message: Message, part: str, speech: Language) -> str:
    forms, chosen_by = _forms(message.code, part, speech)
    if not forms:
        return ""
    values = message.values
    pieces = forms[0] if chosen_by is None else forms[chosen_by(_number(values))]
    said = ""
    for text, name, how in pieces:  # a generator would take a fifth longer
        if name is None:
            said += text
        else:
            value = values[name]
            put = value if not how and type(value) is str else _put(value, how, speech)
            said += speech.leading(text, put) + put if speech.before else text + put
    return said


def _number(values: Mapping[str, Value]) -> int:
    """The number that chooses the form."""
    count = values.get("count", 1)
    return count if isinstance(count, int) else 2


@lru_cache(maxsize=16384)
def _forms(code: str, part: str, speech: Language) -> tuple[tuple[Pieces, ...], Callable[[int], int] | None]:
    """A text in a language, in its forms taken apart, and what chooses among them by number; no form where the entry has no such part."""
    english_text = _entry(code).get(part)
    if english_text is None:
        return (), None
    own = speech.texts.get((context(code, part), english_text))
    text, rule = (own, speech.form) if own else (english_text, ENGLISH.form)
    return (((_pieces(text),), None)) if isinstance(text, str) else (tuple(map(_pieces, text)), rule)


@cache
def _entry(code: str) -> Mapping[str, Text]:
    room, _, name = code.rpartition("/")
    return texts(english(room)[name])


def _pieces(template: str) -> Pieces:
    """A text taken apart: words as they stand, and after them the name of a value and how it is put, or None at the end."""
    return tuple((text, name, how or "") for text, name, how, _ in string.Formatter().parse(template))


def _put(value: Value, how: str, speech: Language) -> str:
    """A value as it stands in a text; `lower` and `inside` keep it from starting like a sentence, `capital` makes it start like one."""
    if not how:
        return _said(value, speech)
    if how == "grouped" and isinstance(value, int):
        return speech.grouped(value)
    return _CASES.get(how, str)(_said(value, speech))


_CASES: Mapping[str, Callable[[str], str]] = {
    "lower": str.lower,
    "inside": lambda text: text[:1].lower() + text[1:],
    "capital": lambda text: text[:1].upper() + text[1:],
}


def texts(entry: Entry) -> dict[str, Text]:
    """The texts of an entry by part; a sentence that has a singular is both."""
    whole = {part: text for part, text in entry.items() if part != "one"}
    return whole | ({"says": (entry["one"], entry["says"])} if "one" in entry else {})


def context(code: str, part: str) -> str:
    """What a gettext file calls a text: the code of a sentence, and the code with its part for another."""
    return code if part == "says" else f"{code}#{part}"


def _listed(items: list[str], joined: str, speech: Language) -> str:
    """A list in the language's own way: `a`, `a and b`, `a, b and c`."""
    if len(items) < 2:
        return items[0] if items else ""  # itself: it may know its language
    join, before = english("lists"), "comma" if joined in ("and", "or") else joined
    first = reduce(lambda a, b: _pair(join, before, a, b, speech), items[:-1])
    return _pair(join, joined, first, items[-1], speech)


def _pair(join: Mapping[str, Entry], name: str, first: str, last: str, speech: Language) -> str:
    template = speech.text(f"lists/{name}", join[name]["says"])
    if speech.before:
        start, end = template.split("{last}")
        return f"{speech.leading(start, last)}{{last}}{end}".format(first=first, last=last)
    return template.format(first=first, last=last)


def _from_table(word: Word) -> str:
    found: Any = resources.table(word.table)
    for key in word.entry:
        found = found[key]
    return str(found)
