"""What a page or a sheet says beside the facts: sentences of the catalogue, in which values may be markup of ours, and lists in the language's own way."""

import re
from collections.abc import Collection, Iterable
from functools import lru_cache

from markupsafe import Markup

from undertrim import words
from undertrim.record.own_language import OwnLanguage
from undertrim.record.own_text import OwnText
from undertrim.words import Items, Language, Value, message


def say(code: str, /, **values: Value) -> str:
    """A sentence by its code. Where a value is markup so is the whole, with all the rest escaped; else it is text."""
    if not values:
        return _alone(code, words.spoken())
    return _around(message(code, **_marked(values)), values.values())


@lru_cache(maxsize=4096)
def _alone(code: str, speech: Language) -> str:
    """A sentence without values, as most of a page's headings are."""
    return words.say(message(code), speech)


def listed(values: Iterable[Value], joined: str = "comma") -> str:
    """Values as they are listed in a sentence, markup among them as in `say`."""
    every = {str(place): value for place, value in enumerate(values)}
    return _around(Items(tuple(_marked(every).values()), joined), every.values())


def sides(values: Iterable[str], joined: str = "and") -> str:
    """Sides of a car."""
    return listed((message(f"sides/{side}") for side in values), joined)


def bodies(values: Iterable[str]) -> str:
    """Shapes of a body, as they stand in a list."""
    return _bodies(tuple(values), words.spoken())


@lru_cache(maxsize=256)  # of each vehicle in the list of its make, and few are told apart
def _bodies(values: tuple[str, ...], _: Language) -> str:
    return listed(message("vehicle-page/body-shape", body=message(f"body/{body}")) for body in values)


def own(text: str) -> str:
    """A text that may be a record's own, marked with its language where that is another than the page's (WCAG 2.2, 3.1.2)."""
    if not isinstance(text, OwnText) or not OwnLanguage(text.lang).differs(words.spoken()):
        return text
    return Markup('<span lang="{}">{}</span>').format(text.lang, text)


def own_lang(text: str) -> str:
    """The same as an attribute of the element that has the text and nothing else: a page of many steps has an element fewer for each."""
    if not isinstance(text, OwnText) or not OwnLanguage(text.lang).differs(words.spoken()):
        return ""
    return Markup(' lang="{}"').format(text.lang)


def page_lang(text: str) -> str:
    """The page's language as an attribute, for what stands within an element that has that of `text`."""
    return Markup(' lang="{}"').format(words.spoken().tag) if own_lang(text) else ""


FILTERS = {"own": own, "own_lang": own_lang, "page_lang": page_lang}
"""What marks a record's own words in a template."""


def in_other_words(code: str, tag: str) -> str:
    """A sentence that names the language of something, where that is another one than the reader's; nothing where it is the same."""
    own = OwnLanguage(tag)
    return words.say(own.told(code, words.spoken())) if own.differs(words.spoken()) else ""


def link(to: str, text: str) -> Markup:
    """A link."""
    return Markup('<a href="{}">{}</a>').format(to, text)


def evidence_links(ids: Iterable[str], page: str = "", ours: Collection[str] = ()) -> str:
    """Evidence by its ids, each with the way to it, and which of it is `ours`; `page` is the page that it stands on, empty for the same."""
    return listed(link(f"{page}#evidence-{name}", _called(name, ours)) for name in ids)


def _called(name: str, ours: Collection[str]) -> str:
    return say("layers/evidence-ours", evidence=name) if name in ours else name


def _marked(values: dict[str, Value]) -> dict[str, Value]:
    """Each markup as one character for private use, so that a sentence can be made around it."""
    return {
        name: _mark(place) if isinstance(value, Markup) else value for place, (name, value) in enumerate(values.items())
    }


def _mark(place: int) -> str:
    return chr(0xE000 + place)


def _around(said: Value, values: Iterable[Value]) -> str:
    held = {_mark(place): value for place, value in enumerate(values) if isinstance(value, Markup)}
    text = words.say(said)
    if not held:
        return text
    pieces = re.split(f"([{''.join(held)}])", text)
    return Markup().join(held.get(piece, piece) for piece in pieces)
