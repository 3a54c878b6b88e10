"""Slips in a text that is a value by itself: quotes left open, quotes inside quotes, signs that mean something to YAML."""

import re
from collections.abc import Iterator, Sequence

from undertrim.record import marks_of_nothing
from undertrim.record.retyping.typed_lines import CLOSERS, Slip, brackets, closing, fields, value_at
from undertrim.record.yaml_text import LONGEST, as_typed, in_quotes
from undertrim.words import Message, message

_BLOCKS = ("|", ">", "|-", ">-", "|+", ">+")
_FIELD = re.compile(r",\s*(?P<name>[\w-]+):\s")
_APOSTROPHE = re.compile(r"(?<=\w)'(?=\w)")


def closed_late(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """A quote that only a later text closes: it is closed before the field that stands between them."""
    for start, end, _ in _quoted(lines[at]):
        text = lines[at][start:end]
        found = _FIELD.search(text)
        if found and found["name"] in fields() and text.count(text[0]) > 1:
            yield Slip(
                message("yaml/quote"),
                _put(lines, at, start, start + found.start(), text[: found.start()] + text[0]),
                start,
            )


def unclosed(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """A quote that is not closed on its line is closed at the end of the text."""
    for start, end, is_open in _quoted(lines[at]):
        if is_open and lines[at][start] not in _APOSTROPHE.sub("", lines[at][start + 1 : end]):
            yield Slip(message("yaml/quote"), _put(lines, at, start, end, _closed(lines[at][start:end])), start)


def quoted_inside(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """Quotes of the same sort inside quotes, words behind them, a backslash that begins no sign: the whole goes into other quotes."""
    for start, end, _ in _quoted(lines[at]):
        text = lines[at][start:end]
        if text[0] not in text[1:]:
            continue
        if len(text) > 2 and text[-1] == text[0]:
            said = message("yaml/escape" if "\\" in text else "yaml/quote-inside")
            yield Slip(said, _put(lines, at, start, end, _in_quotes(text[1:-1])), start)
        yield Slip(message("yaml/behind-value"), _put(lines, at, start, end, _in_quotes(text)), start)


def whole(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """The text of a field with a colon in it, or one that begins with a sign of YAML, goes into quotes."""
    line = lines[at]
    start = value_at(line)
    text = line[start:].rstrip()
    in_brackets = text[:1] in CLOSERS and text[-1:] in CLOSERS.values()
    begins_other = text.startswith(("- ", '"', "'")) or text in _BLOCKS or in_brackets
    if text and line[:start].strip() and not begins_other and len(text) <= LONGEST:
        said = message("yaml/behind-value") if text[0] in CLOSERS else said_of(text)
        yield Slip(said, ((at, line[:start] + as_typed(text, in_brackets=False)),), start)


def said_of(text: str) -> Message | None:
    """What is wrong with a text that stands without quotes; None for a mark of somebody who had nothing to say."""
    if marks_of_nothing.is_one(text):
        return None
    if text[0] == "?" or text[-1] == "?":
        return message("yaml/question")
    if text[0] in "@`|>,]}#%":
        return message("yaml/no-value-begins", sign=f"'{text[0]}'")
    known = {"&": "and-sign", "*": "star", "!": "exclamation"}
    return message(f"yaml/{known.get(text[0], 'colon-in-text' if ':' in text else 'no-value')}")


def _quoted(line: str) -> Iterator[tuple[int, int, bool]]:
    """The texts of a line that begin with a quote: from where to where, and whether no quote closes them."""
    for piece in brackets(line).pieces:
        if line[piece.start] in "\"'":
            yield piece.start, piece.end, piece.unclosed
    start = value_at(line)
    if line[start : start + 1] in ('"', "'"):
        yield start, len(line.rstrip()), closing(line, start) is None


def _closed(text: str) -> str:
    """A text that begins with a quote, closed; in other quotes where an apostrophe stands in it."""
    return text + text[0] if text[0] not in text[1:] else _in_quotes(text[1:])


def _in_quotes(text: str) -> str:
    return in_quotes(text) if len(text) <= LONGEST else "'" + text.replace("'", "''") + "'"


def _put(lines: Sequence[str], at: int, start: int, end: int, text: str) -> tuple[tuple[int, str]]:
    return ((at, lines[at][:start] + text + lines[at][end:]),)
