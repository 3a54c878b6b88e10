"""Says in our own words why a text cannot be read as YAML, and where; the parser's own text is never shown."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ruamel.yaml.error import MarkedYAMLError, YAMLError

from undertrim.record.numerals import quoted
from undertrim.record.problem import Position
from undertrim.words import Message, message

_UNREADABLE = message("yaml/unreadable")


@dataclass(frozen=True, slots=True)
class Fault:
    """Where reading stopped, and what is wrong there."""

    position: Position
    said: Message


def conflict_marks(text: str) -> Iterator[Fault]:
    """What git writes into a file where it could not merge two versions (git-merge, "How conflicts are presented")."""
    if any(mark in text for mark in ("<<<<<<<", "=======", ">>>>>>>", "|||||||")):
        for number, line in enumerate(lines(text), 1):
            if _CONFLICT.fullmatch(line):
                yield Fault(Position(number, 1), message("yaml/unmerged", line=quoted(line)))


_CONFLICT = re.compile(r"[<>|]{7}(?: .*)?|={7}")


def lines(text: str) -> list[str]:
    """The lines of a text as an editor counts them, without their ends."""
    return text.replace("\r\n", "\n").replace("\r", "\n").split("\n")


def explain(error: YAMLError, text: str) -> Fault:
    """What the parser stumbled over."""
    if not isinstance(error, MarkedYAMLError) or error.problem_mark is None:
        return Fault(Position(1, 1), _UNREADABLE)
    mark, problem = error.problem_mark, error.problem or ""
    written = lines(text)
    if "".join(written[mark.line : mark.line + 1])[mark.column : mark.column + 1] == "?":
        return Fault(Position(mark.line + 1, mark.column + 1), message("yaml/question"))
    opened = error.context_mark if any(part in problem for part in _OPEN_ENDED) else None
    where = opened or mark
    line = written[where.line] if where.line < len(written) else ""
    return Fault(
        _inside(written, where.line, where.column),
        _meaning(f"{error.context or ''}: {problem}", line, where.column),
    )


def _meaning(said: str, line: str, column: int) -> Message:
    """What it means that the parser said so of a place; its words are its codes, for it has no others."""
    char = line[column : column + 1]
    if char == "\t" and not line[:column].strip():
        return message("yaml/tab")
    if "cannot start any token" in said:
        return message("yaml/no-value-begins", sign=quoted(char))
    if "did not find expected key" in said and line[:column].strip():
        return message("yaml/behind-value")
    if "did not find expected key" in said and char == ":":
        return message("yaml/no-field-name")
    return next((meant for part, meant in _KNOWN.items() if part in said), _UNREADABLE)


def _inside(lines: list[str], line: int, column: int) -> Position:
    """The place itself, or the end of the last line that is not blank."""
    if line < len(lines) and (column < len(lines[line]) or lines[line].strip()):
        return Position(line + 1, min(column, max(len(lines[line]) - 1, 0)) + 1)
    last = next((number for number in range(min(line, len(lines) - 1), -1, -1) if lines[number].strip()), 0)
    return Position(last + 1, max(len(lines[last].rstrip()), 1))


_OPEN_ENDED = ("unexpected end of stream", "expected ',' or", "could not find expected ':'", "expected '>'")
"""What is only noticed far behind: the place to show is where it began."""

_KNOWN = {
    "mapping values are not allowed": message("yaml/colon"),
    "flow sequence: did not find expected ',' or": message("yaml/square-bracket"),
    "flow mapping: did not find expected ',' or": message("yaml/curly-bracket"),
    "quoted scalar: found unexpected end of stream": message("yaml/quote"),
    "quoted scalar: found unexpected document indicator": message("yaml/quote-above"),
    "quoted scalar": message("yaml/escape"),
    "could not find expected ':'": message("yaml/neither"),
    "expected <document start>": message("yaml/behind-record"),
    "did not find expected key": message("yaml/indent"),
    "did not find expected '-' indicator": message("yaml/indent"),
    "did not find expected node content": message("yaml/no-value"),
    "found unexpected ':'": message("yaml/colon-in-brackets"),
    "block sequence entries are not allowed": message("yaml/list-here"),
    "block scalar": message("yaml/block-text"),
    "directive": message("yaml/directive"),
    "incompatible YAML document": message("yaml/version"),
    "an anchor": message("yaml/and-sign"),
    "an alias": message("yaml/star"),
    "a tag": message("yaml/exclamation"),
}
