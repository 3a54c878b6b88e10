"""Pages, sheets and scripts name sentences that there are, with all their values, and hold none themselves."""

import re
from collections.abc import Iterator
from pathlib import Path
from string import Formatter

import pytest
from jinja2 import Environment, nodes

from undertrim.publish.web import scripts
from undertrim.resources import inside
from undertrim.words.catalogue import english, rooms, texts

PAGES = sorted(inside("publish", "web", "templates").rglob("*.j2"))
SHEETS = sorted(inside("publish", "printed", "templates").rglob("*.typ"))
SAYING = [*PAGES, *SHEETS, *sorted(scripts.folder().glob("*.js"))]
SYMBOLS = {"AWG"}  # names of standards, the same in every language
_SAY = re.compile(
    r'\bsay\(\s*"([^"]+)"(?!\s*, (?:\w+\)|\{ \.\.\.))'
)  # what a variable hands over is not to be seen here
_NAME = re.compile(r"(?:^|[,{(]\s*)(\w+)\s*(?=[=:,}]|$)")


def said(path: Path) -> Iterator[tuple[str, set[str]]]:
    """Codes that a file says, each with the names of the values that it hands over."""
    text = re.sub(r'"(\w+)":', r"\1:", path.read_text(encoding="utf-8"))
    for found in _SAY.finditer(text):
        yield found[1], set(_NAME.findall(_outermost(text, text.index("(", found.start()))))


def _outermost(text: str, start: int) -> str:
    """What stands between a bracket and its end without what is in further brackets and in quotes; those of a value `{ a, b }` of a script are no further ones."""
    depth, quote, found = 0, "", []
    for char in text[start:]:
        if quote:
            quote = "" if char == quote else quote
        elif char in "\"'`":
            quote = char
        elif char in "([":
            depth += 1
        elif char in ")]":
            depth -= 1
            if not depth:
                break
        elif depth == 1:
            found.append(char)
    return "".join(found)


def wanted(code: str) -> set[str]:
    """The names of the values that a sentence asks for."""
    room, _, name = code.rpartition("/")
    forms = (
        form for text in texts(english(room)[name]).values() for form in ((text,) if isinstance(text, str) else text)
    )
    return {value for form in forms for _, value, _, _ in Formatter().parse(form) if value}


def test_what_is_said_is_in_the_catalogue_with_its_values() -> None:
    found = [(path.name, code, names) for path in SAYING for code, names in said(path) if code[-1] not in "-/"]
    known = {f"{room}/{name}" for room in rooms() for name in english(room)}
    assert [(name, code) for name, code, _ in found if code not in known] == []
    assert [(name, code, wanted(code) - names) for name, code, names in found if wanted(code) - names] == []
    assert len(found) > 200  # else they are not found


def test_a_code_that_is_made_has_a_sentence_for_each_end_it_can_have() -> None:
    weights = {"stop", "lost", "unknown", "need"}
    assert {f"weight-{weight}" for weight in weights} <= english("blockers").keys()
    assert set(english("signals")) == {"danger", "warning", "caution", "notice"}


def test_a_style_sheet_holds_no_words() -> None:
    """Neither to be shown, nor to find by them what people read."""
    for path in scripts.folder().glob("*.css"):
        text = path.read_text(encoding="utf-8")
        assert re.findall(r'content: "[^"]*[A-Za-z]{2,}|(?:aria-label|data-label|title|alt)[~|^$*]?="', text) == [], (
            path.name
        )


@pytest.mark.parametrize("path", PAGES, ids=lambda path: path.name)
def test_a_template_of_a_page_holds_no_words(path: Path) -> None:
    assert list(words_in(path.read_text(encoding="utf-8"))) == []


def test_a_word_in_a_template_would_be_found() -> None:
    tried = '<p title="Here" class="ut">{{ a }} or {{ "Not here" }}</p>{# no word #}<a aria-label="{{ b }}">x</a>'
    assert list(words_in(tried)) == ["Here", "or", "Not here"]


def words_in(template: str) -> Iterator[str]:
    """Words that stand in a template: as text, in an attribute that people read, or in quotes with a space."""
    parsed = Environment(autoescape=True).parse(template)
    shown = "".join(node.data if isinstance(node, nodes.TemplateData) else "{}" for node in _pieces(parsed))
    for attribute in re.findall(r'(?:aria-label|title|alt|placeholder|data-label)="([^"]*)"', shown):
        yield from _words(attribute)
    yield from _words(re.sub(r"<[^>]*>|[\w-]+=\"[^\"]*\"", " ", shown))
    yield from (
        node.value for node in parsed.find_all(nodes.Const) if isinstance(node.value, str) and _spoken(node.value)
    )


def _pieces(parsed: nodes.Node) -> Iterator[nodes.Node]:
    for output in parsed.find_all(nodes.Output):
        yield from output.nodes


def _words(text: str) -> Iterator[str]:
    found = re.findall(r"[A-Za-z]{2,}", re.sub(r"&\w+;", "", text))
    yield from (word for word in found if word not in SYMBOLS)


def _spoken(text: str) -> bool:
    return bool(re.search(r"[A-Za-z]{2,} [A-Za-z]", text)) or (text[:1].isupper() and not text.isupper())


@pytest.mark.parametrize("path", SHEETS, ids=lambda path: path.name)
def test_a_template_of_a_sheet_holds_no_words(path: Path) -> None:
    assert list(words_set(path.read_text(encoding="utf-8"))) == []


def test_a_word_in_a_sheet_would_be_found() -> None:
    tried = '= Steps\n[= #say("a/b")]\n[Time #t] // [Not this]\n[#a Wait] ("Pin", "go on", "ok") ["Pin"]\n[ to #b]'
    assert list(words_set(tried)) == ["Steps", "Time", "Wait", "to", "Pin", "go on", "Pin"]


_FONT = "Source Sans Pro"


def words_set(template: str) -> Iterator[str]:
    """Words that a sheet sets: in a heading, at the beginning of content or after something in it, and in quotes where they are no code."""
    text = re.sub(r"//.*", "", template)
    quoted = [found for found in re.findall(r'"([^"]*)"', text) if _spoken(found) and found != _FONT]
    text = re.sub(r'"[^"]*"', '""', text)
    yield from re.findall(r"^\s*=+ ([A-Za-z]{2,})", text, re.MULTILINE)
    yield from re.findall(r"\[ ?(?:=+ )?(?:#[\w.-]+(?:\([^()]*\))? )?([A-Za-z]{2,})", text)
    yield from quoted
