"""Markdown of the handbook without its open doors: raw HTML stays text, and a link or picture whose address leads elsewhere becomes its words.

An extension of Python-Markdown, whose serializer escapes text and keeps entities; so an address is judged as a browser would read it.
"""

import html
import re
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import PurePosixPath
from typing import Any
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions import Extension
from markdown.inlinepatterns import HtmlInlineProcessor
from markdown.treeprocessors import Treeprocessor
from markdown.util import AMP_SUBSTITUTE

from undertrim.record import measuring
from undertrim.words import Items, Message, message, one_of

SCHEMES = ("http", "https", "mailto", "tel")
PICTURES = (".png", ".jpg", ".jpeg", ".gif", ".webp")

_SCHEME = re.compile(r"([a-z][a-z0-9+.-]*):", re.IGNORECASE)
_IGNORED = re.compile(r"[\x00-\x20\x7f-\x9f]")
_ALIGN = re.compile(r"text-align: (left|right|center);")
_KEPT = ("id", "class", "title", "alt", "href", "src", "align", "start", "colspan", "rowspan", "name")


@dataclass(frozen=True, slots=True)
class Met:
    """Something that is not passed on: its text as typed, and what is wrong with it."""

    text: str
    said: Message


def refused_link(address: str, page: PurePosixPath) -> Message | None:
    """Why a link of the page at a place in the handbook is not passed on; None where it is."""
    plain = _IGNORED.sub("", html.unescape(address))
    scheme = _SCHEME.match(plain)
    if scheme:
        return None if scheme[1].lower() in SCHEMES else message("handbook/scheme", beginning=scheme[0])
    return _leads_out(plain, page)


def refused_picture(address: str, page: PurePosixPath) -> Message | None:
    """The same for a picture, which is a file of the handbook, or one of our drawings of how something is measured."""
    plain = _IGNORED.sub("", html.unescape(address))
    if plain.startswith(measuring.SCHEME):
        known = plain.removeprefix(measuring.SCHEME) in measuring.names()
        return None if known else message("handbook/no-drawing", names=Items(tuple(sorted(measuring.names())), "comma"))
    if _SCHEME.match(plain):
        return message("handbook/another-host")
    if not plain.lower().endswith(PICTURES):
        return message("handbook/no-picture", endings=Items(PICTURES, "comma"))
    return _leads_out(plain, page)


def _leads_out(address: str, page: PurePosixPath) -> Message | None:
    path = re.split(r"[?#]", address, maxsplit=1)[0]
    if path.startswith("/") or "\\" in address:
        return message("handbook/leads-out")
    depth = len(page.parent.parts)
    for step in PurePosixPath(path).parts:
        depth += -1 if step == ".." else 1
        if depth < 0:
            return message("handbook/leads-out")
    return None


def _short(text: str, most: int = 40) -> str:
    first = text.strip().splitlines()[0] if text.strip() else text
    return first if len(first) <= most else f"{first[:most]}…"


class _RawText(HtmlInlineProcessor):  # type: ignore[misc] # the library ships no types
    """Leaves raw HTML as the text that it is."""

    def __init__(self, pattern: str, md: Markdown, met: list[Met]) -> None:
        super().__init__(pattern, md)
        self.met = met

    def handleMatch(self, m: re.Match[str], data: str) -> tuple[str, int, int]:  # noqa: N802 - the library's name
        text = self.backslash_unescape(self.unescape(m.group(1)))
        if not text.startswith("</"):  # its beginning is told
            self.met.append(Met(text, message("handbook/raw-html", text=_short(text))))
        return text, m.start(0), m.end(0)


class _Addresses(Treeprocessor):  # type: ignore[misc] # the same
    """Takes away what an element may not carry."""

    def __init__(self, md: Markdown, plain: "PlainMarkdown") -> None:
        super().__init__(md)
        self.plain = plain

    def run(self, root: Element) -> None:
        for element in root.iter():
            self._address(element, "href", refused_link)
            self._address(element, "src", refused_picture)
            _attributes(element)

    def _address(self, element: Element, name: str, refused: Callable[[str, PurePosixPath], Message | None]) -> None:
        address = element.get(name)
        if address is None:
            return
        address = address.replace(AMP_SUBSTITUTE, "&")  # how the library hides a mail address
        if why := refused(address, self.plain.page):
            element.tag, element.text = "span", element.text or element.get("alt")
            del element.attrib[name]
            self.plain.met.append(Met(address, _not_passed_on(name, _short(address), why)))


def _not_passed_on(name: str, address: str, why: Message) -> Message:
    if name == "src":
        return message("handbook/picture-refused", address=address, why=why)
    return message("handbook/link-refused", address=address, why=why, schemes=one_of(*SCHEMES))


def _attributes(element: Element) -> None:
    """Keep what Markdown makes; the alignment of a column as an attribute, since the policy of the site allows no styles in place."""
    if aligned := _ALIGN.fullmatch(element.get("style", "")):
        element.set("align", aligned[1])
    for name in set(element.attrib) - set(_KEPT):
        del element.attrib[name]


class PlainMarkdown(Extension):  # type: ignore[misc] # the same
    """Goes last among the extensions, so that it finds what others put in. `page` is the place of the page that is read."""

    def __init__(self, page: PurePosixPath, **settings: Any) -> None:
        super().__init__(**settings)
        self.page = page
        self.met: list[Met] = []

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802 - the same
        """Take the block reader of raw HTML out, and put ours in the place of the one for lines."""
        md.preprocessors.deregister("html_block", strict=False)
        md.inlinePatterns.deregister("html", strict=False)
        md.inlinePatterns.register(_RawText(_TAG, md, self.met), "raw_text", 90)
        md.treeprocessors.register(_Addresses(md, self), "plain_addresses", 2)


_TAG = r"(<(?:/?[a-zA-Z][^<>]*|!--(?:(?!-->).)*--|![^<>]*|\?[^<>]*)>)"
"""What Python-Markdown takes for HTML within a line (its `HTML_RE`), and processing instructions and declarations with it."""


def met(text: str, page: PurePosixPath) -> list[Met]:
    """All that a page of the handbook would not be passed on with."""
    plain = PlainMarkdown(page)
    Markdown(extensions=["toc", "tables", "fenced_code", "admonition", plain]).convert(text)
    return plain.met
