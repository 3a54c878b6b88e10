"""What the finder knows of the hand-written pages and the rules: their headings with the words below them, and the words of the glossary."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html.parser import HTMLParser

from undertrim.derive.finding.names import folded
from undertrim.publish.web.finder import Entry

GLOSSARY, RULES, REFERENCE = "glossary", "rules/", "reference/"
"""Where pages of other sorts than the handbook's stand: words in tables, one rule a page, the fields."""

_HEADINGS = ("h1", "h2", "h3")
_LEAST = 4
"""Words of fewer letters are not looked for in a text. A default of ours."""
_ROW = re.compile(r"<tr>(\s*<td[^>]*>)(.*?)(</td>)", re.DOTALL)


@dataclass(slots=True)
class _Section:
    """A heading with its anchor, and all text up to the next."""

    anchor: str
    title: str
    text: str


class _Sections(HTMLParser):
    """Cuts a page at its headings."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[_Section] = []
        self._heading = False
        self._mark = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A heading begins a section."""
        named = dict(attrs)
        if tag in _HEADINGS:
            self.found.append(_Section(named.get("id") or "", "", ""))
            self._heading = True
        elif tag == "a" and named.get("class") == "headerlink":
            self._mark = True

    def handle_endtag(self, tag: str) -> None:
        """The heading's own text ends, or a mark beside it."""
        if tag in _HEADINGS:
            self._heading = False
        elif tag == "a":
            self._mark = False

    def handle_data(self, data: str) -> None:
        """Text of the heading, or below it."""
        if not self.found or self._mark:
            return
        if self._heading:
            self.found[-1].title += data
        else:
            self.found[-1].text += f"{data} "


def anchored(path: str, html: str) -> str:
    """A page whose words can be led to: each row of a glossary's tables has an id."""
    return (
        _ROW.sub(lambda row: f'<tr id="{word_id(_plain(row[2]))}">{row[1]}{row[2]}{row[3]}', html)
        if path == GLOSSARY
        else html
    )


def word_id(word: str) -> str:
    """The id of a word's row in the glossary."""
    return "word-" + "-".join(re.findall(r"[^\W_]+", word.casefold()))


def entries(path: str, html: str) -> Iterator[Entry]:
    """What can be found of a page at `path` (without its ending)."""
    parser = _Sections()
    parser.feed(html)
    if path.startswith(RULES) and not path.endswith("index"):
        yield from _rule(path, parser.found)
        return
    for section in parser.found:
        under = "" if section is parser.found[0] else parser.found[0].title
        yield ["handbook", section.title.strip(), under, f"{path}.html#{section.anchor}", _words(path, section)]
    if path == GLOSSARY:
        yield from _glossary(path, html)


def named(entries: Sequence[Entry]) -> list[Entry]:
    """What can be found by its name."""
    return [[*entry[:-1], ""] for entry in entries]


def told(entries: Sequence[Entry]) -> list[Entry]:
    """What can be found by the words of its text, which is asked for where nothing is found by name."""
    return [entry for entry in entries if entry[-1]]


def _rule(path: str, found: list[_Section]) -> Iterator[Entry]:
    """A rule by its name, with the sentence that says what it asks."""
    for section in found[:1]:
        sentence = section.text.strip().partition("\n")[0]
        yield ["rule", section.title.strip(), sentence, f"{path}.html", ""]


def _glossary(path: str, html: str) -> Iterator[Entry]:
    for row in re.findall(r'<tr id="([^"]+)">\s*<td[^>]*>(.*?)</td>\s*<td[^>]*>(.*?)</td>', html, re.DOTALL):
        yield ["word", _plain(row[1]), _plain(row[2]), f"{path}.html#{row[0]}", ""]


def _plain(html: str) -> str:
    parser = _Text()
    parser.feed(html)
    return " ".join("".join(parser.found).split())


class _Text(HTMLParser):
    """The text of a piece of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_data(self, data: str) -> None:
        """Text."""
        self.found.append(data)


def _words(path: str, section: _Section) -> str:
    """The different words of a section's text; of the fields and of a glossary's tables there are other entries or too many."""
    if path == GLOSSARY or path.startswith(REFERENCE):
        return ""
    found = re.findall(r"[^\W_]+", folded(section.text))
    return " ".join(sorted({word for word in found if len(word) >= _LEAST and not word.isdigit()}))
