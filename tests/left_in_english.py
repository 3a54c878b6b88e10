"""What of a page in another language is still the English of the catalogue.

A text of the catalogue counts where the language says it with other words, and no text of the language is the same by chance. Values in it may be
anything. What is marked as being in English, such as a record's own words, is none of the program's.
"""

import re
from collections.abc import Iterable, Iterator
from functools import cache
from html.parser import HTMLParser
from string import Formatter

from typed import data, records
from undertrim.words.language import Text, language

ATTRIBUTES = ("aria-label", "aria-description", "title", "alt", "placeholder", "data-label", "label")
VOID = {
    "br",
    "img",
    "input",
    "meta",
    "link",
    "path",
    "line",
    "rect",
    "circle",
    "ellipse",
    "polygon",
    "polyline",
    "use",
    "hr",
    "wbr",
}
NO_TEMPLATES = ("schema/", "argparse/", "commands", "check/rules/")
LEAST = 3
"""So many words of its own a sentence with values has at least: `{a} of {b}` alone tells nothing."""


def _forms(text: Text) -> tuple[str, ...]:
    return (text,) if isinstance(text, str) else text


def _plain(text: str) -> str:
    return " ".join(text.split()).strip(" .:").casefold()


@cache
def _own_words() -> frozenset[str]:
    """What is typed in the shipped records."""
    return frozenset(_plain(text) for path in records() for text in _typed(data(path)))


def _typed(value: object) -> Iterator[str]:
    if isinstance(value, dict):
        for key, one in value.items():
            yield str(key)
            yield from _typed(one)
    elif isinstance(value, list | tuple):
        for one in value:
            yield from _typed(one)
    elif isinstance(value, str):
        yield value


@cache
def english(tag: str) -> tuple[frozenset[str], re.Pattern[str]]:
    """The texts of the catalogue that the language says otherwise: those without values, and a pattern of those with."""
    said = language(tag).texts
    theirs = {_plain(form) for text in said.values() for form in _forms(text)}
    exact: set[str] = set()
    patterns: set[str] = set()
    for (context, text), other in said.items():
        for form in _forms(text):
            if form in _forms(other) or context.startswith(NO_TEMPLATES):
                continue
            pieces = list(Formatter().parse(form))
            if all(name is None for _, name, _, _ in pieces):
                exact.add(_plain(form))
            elif len(re.findall("[A-Za-z]{2,}", " ".join(words for words, *_ in pieces))) >= LEAST:
                patterns.add(
                    "".join(re.escape(words) + (".+" if name is not None else "") for words, name, *_ in pieces)
                )
    return frozenset(exact - theirs - _own_words()), re.compile("|".join(sorted(patterns)), re.IGNORECASE)


def left(texts: Iterable[str], tag: str, drawn: Iterable[str] = ()) -> list[str]:
    """The texts that are still in English. A line of a drawing may be a part of what a record says, wrapped, which no mark tells."""
    ours = [text for text in drawn if not _is_of_a_record(text)]
    return [text for text in dict.fromkeys([*texts, *ours]) if _is_left(text, tag)]


@cache
def _is_of_a_record(text: str) -> bool:
    return any(_plain(text) in own for own in _own_words())


@cache
def _is_left(text: str, tag: str) -> bool:
    """The same texts stand on many pages."""
    exact, pattern = english(tag)
    whole = " ".join(text.split())
    if any(_plain(part) in exact for part in (whole, *whole.split(". "))):
        return True
    return any(pattern.fullmatch(part) for part in (whole, whole.rstrip(".")))


class Seen(HTMLParser):
    """Each piece of text of a page in the page's own language, apart from what is `drawn`, and each attribute that people are told."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.above: list[bool] = [False]
        self.found: list[str] = []
        self.drawn: list[str] = []
        self.inside = 0
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        other = self.above[-1] or tag in ("script", "style") or (tag != "html" and bool(given.get("lang")))
        other = other or "md-nav" in (given.get("class") or "").split()  # the titles of the handbook's pages
        if not other:
            self.found += [value for name, value in attrs if name in ATTRIBUTES and value]
        self.inside += tag == "svg"
        if tag not in VOID:
            self.above.append(other)

    def handle_endtag(self, tag: str) -> None:
        self.inside -= tag == "svg"
        if tag not in VOID:
            self.above.pop()

    def handle_data(self, data: str) -> None:
        if data.strip() and not self.above[-1]:
            (self.drawn if self.inside else self.found).append(data.strip())
