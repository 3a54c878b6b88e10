"""Markdown of the handbook without its open doors: raw HTML stays text, and a link or picture keeps its address only if that leads nowhere odd.

An extension of Python-Markdown, whose serializer escapes text and keeps entities; so an address is judged as a browser would read it.
"""

import html
import re
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import PurePosixPath
from typing import Any
from xml.etree.ElementTree import Element  # noqa: S405 - it is made by the parser and never read from text

from markdown import Markdown
from markdown.extensions import Extension
from markdown.inlinepatterns import HtmlInlineProcessor
from markdown.treeprocessors import Treeprocessor
from markdown.util import AMP_SUBSTITUTE

SCHEMES = ("http", "https", "mailto", "tel")
PICTURES = (".png", ".jpg", ".jpeg", ".gif", ".webp")

_SCHEME = re.compile(r"([a-z][a-z0-9+.-]*):", re.IGNORECASE)
_IGNORED = re.compile(r"[\x00-\x20\x7f-\x9f]")
_ALIGN = re.compile(r"text-align: (left|right|center);")
_KEPT = ("id", "class", "title", "alt", "href", "src", "align", "start", "colspan", "rowspan", "name")


@dataclass(frozen=True, slots=True)
class Met:
    """Something that is not passed on: its text as typed, what is wrong with it, and the way out."""

    text: str
    message: str
    hint: str


def refused_link(address: str, page: PurePosixPath) -> str:
    """Why a link of the page at a place in the handbook is not passed on; empty where it is."""
    plain = _IGNORED.sub("", html.unescape(address))
    scheme = _SCHEME.match(plain)
    if scheme:
        return "" if scheme[1].lower() in SCHEMES else f"an address that begins with '{scheme[0]}' is not passed on"
    return _leads_out(plain, page)


def refused_picture(address: str, page: PurePosixPath) -> str:
    """The same for a picture, which is a file of the handbook."""
    plain = _IGNORED.sub("", html.unescape(address))
    if _SCHEME.match(plain):
        return "a picture is a file of the handbook: a page asks nothing of any other host"
    if not plain.lower().endswith(PICTURES):
        return f"a picture ends in {', '.join(PICTURES)}"
    return _leads_out(plain, page)


def _leads_out(address: str, page: PurePosixPath) -> str:
    path = re.split(r"[?#]", address, maxsplit=1)[0]
    if path.startswith("/") or "\\" in address:
        return "it leads out of the handbook"
    depth = len(page.parent.parts)
    for step in PurePosixPath(path).parts:
        depth += -1 if step == ".." else 1
        if depth < 0:
            return "it leads out of the handbook"
    return ""


@dataclass
class _Seen:
    """Where what is met is told."""

    page: PurePosixPath
    tell: Callable[[Met], None]

    def raw(self, text: str) -> None:
        if not text.startswith("</"):  # its beginning was told
            self.tell(Met(text, f"raw HTML is not passed on: '{_short(text)}'", "write it in Markdown, or put it between backticks"))


def _short(text: str, most: int = 40) -> str:
    first = text.strip().splitlines()[0] if text.strip() else text
    return first if len(first) <= most else f"{first[:most]}…"


class _RawText(HtmlInlineProcessor):  # type: ignore[misc] # the library ships no types
    """Leaves raw HTML as the text that it is."""

    seen: _Seen

    def handleMatch(self, m: re.Match[str], data: str) -> tuple[str, int, int]:  # noqa: N802 - the library's name
        text = self.backslash_unescape(self.unescape(m.group(1)))
        self.seen.raw(text)
        return text, m.start(0), m.end(0)


class _Addresses(Treeprocessor):  # type: ignore[misc] # the same
    """Takes away what an element may not carry."""

    seen: _Seen

    def run(self, root: Element) -> None:
        for element in root.iter():
            self._link(element, "href", refused_link)
            self._link(element, "src", refused_picture)
            _attributes(element)

    def _link(self, element: Element, name: str, refused: Callable[[str, PurePosixPath], str]) -> None:
        address = element.get(name)
        if address is None:
            return
        address = address.replace(AMP_SUBSTITUTE, "&")  # how the library hides a mail address
        if why := refused(address, self.seen.page):
            del element.attrib[name]
            self.seen.tell(Met(address, f"'{_short(address)}' is not passed on: {why}", _hint(name)))


def _hint(name: str) -> str:
    if name == "src":
        return "put the picture into the handbook's folder"
    return f"link to a page of the handbook, or to an address with {', '.join(SCHEMES[:-1])} or {SCHEMES[-1]}"


def _attributes(element: Element) -> None:
    """Keep what Markdown makes; the alignment of a column as an attribute, since the policy of the site allows no styles in place."""
    if aligned := _ALIGN.fullmatch(element.get("style", "")):
        element.set("align", aligned[1])
    for name in set(element.attrib) - set(_KEPT):
        del element.attrib[name]


@dataclass
class Plain:
    """What was met on one page."""

    page: PurePosixPath = PurePosixPath("page.md")
    met: list[Met] = field(default_factory=list)

    def extension(self) -> Extension:
        """The extension that tells it."""
        return PlainMarkdown(_Seen(self.page, self.met.append))


class PlainMarkdown(Extension):  # type: ignore[misc] # the same
    """Goes last among the extensions, so that it finds what others put in."""

    def __init__(self, seen: _Seen | None = None, **settings: Any) -> None:
        super().__init__(**settings)
        self.seen = seen or _Seen(PurePosixPath("page.md"), lambda _: None)

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802 - the same
        """Take the block reader of raw HTML out, and put ours in the place of the one for lines."""
        md.preprocessors.deregister("html_block", strict=False)
        raw = _RawText(r"(<(?:/?[a-zA-Z][^<>]*|!--(?:(?!-->).)*--|![^<>]*|\?[^<>]*)>)", md)
        raw.seen = self.seen
        md.inlinePatterns.deregister("html", strict=False)
        md.inlinePatterns.register(raw, "raw_text", 90)
        addresses = _Addresses(md)
        addresses.seen = self.seen
        md.treeprocessors.register(addresses, "plain_addresses", 2)


def met(text: str, page: PurePosixPath) -> list[Met]:
    """All that a page of the handbook would not be passed on with."""
    seen = Plain(page)
    Markdown(extensions=["toc", "tables", "fenced_code", "admonition", seen.extension()]).convert(text)
    return seen.met
