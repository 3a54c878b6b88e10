"""Says in our own words why a text cannot be read as YAML, and where; the parser's own text is never shown."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ruamel.yaml.error import MarkedYAMLError, YAMLError

from undertrim.record import unseen_signs
from undertrim.record.numerals import quoted
from undertrim.record.problem import Position

_NOT_YAML = "not readable as YAML here"
_LOOK = "look at this line and the one above: indent by spaces, one space after a colon, quotes closed"


@dataclass(frozen=True, slots=True)
class Fault:
    """Where reading stopped, what is wrong there, and the way out."""

    position: Position
    message: str
    hint: str


def bad_characters(text: str) -> Iterator[Fault]:
    """Every character that may not stand in a record (`unseen_signs.py`), with its place."""
    if any(True for _ in unseen_signs.places(text)):
        for number, line in enumerate(lines(text), 1):
            for place in unseen_signs.places(line):
                yield _character(line[place], Position(number, place + 1))


def conflict_marks(text: str) -> Iterator[Fault]:
    """What git writes into a file where it could not merge two versions (git-merge, "How conflicts are presented")."""
    if any(mark in text for mark in ("<<<<<<<", "=======", ">>>>>>>", "|||||||")):
        for number, line in enumerate(lines(text), 1):
            if _CONFLICT.fullmatch(line):
                message = f"{quoted(line)} is a mark of git: two versions of this file were not merged"
                yield Fault(
                    Position(number, 1), message, "keep what is right of both, and remove the lines with such marks"
                )


_CONFLICT = re.compile(r"[<>|]{7}(?: .*)?|={7}")


def lines(text: str) -> list[str]:
    """The lines of a text as an editor counts them, without their ends."""
    return text.replace("\r\n", "\n").replace("\r", "\n").split("\n")


def _character(char: str, position: Position) -> Fault:
    message = f"character {unseen_signs.named(char)} may not stand in a record"
    return Fault(position, message, unseen_signs.way_out(char))


def explain(error: YAMLError, text: str) -> Fault:
    """What the parser stumbled over, as a sentence and a way out."""
    if not isinstance(error, MarkedYAMLError) or error.problem_mark is None:
        return Fault(Position(1, 1), _NOT_YAML, _LOOK)
    mark, problem = error.problem_mark, error.problem or ""
    written = lines(text)
    if "".join(written[mark.line : mark.line + 1])[mark.column : mark.column + 1] == "?":
        return Fault(Position(mark.line + 1, mark.column + 1), *_QUESTION)
    opened = error.context_mark if any(part in problem for part in _OPEN_ENDED) else None
    where = opened or mark
    line = written[where.line] if where.line < len(written) else ""
    message, hint = _sentence(f"{error.context or ''}: {problem}", line, where.column)
    return Fault(_inside(written, where.line, where.column), message, hint)


def _sentence(said: str, line: str, column: int) -> tuple[str, str]:
    char = line[column : column + 1]
    if char == "\t" and not line[:column].strip():
        return "a tab stands in the indent", "indent with spaces"
    if "cannot start any token" in said:
        return f"no value can begin with {quoted(char)}", "put the value in quotes"
    if "did not find expected key" in said and line[:column].strip():
        return (
            "text stands after the end of a value",
            "put the whole value in quotes, or remove what follows it",
        )
    if "did not find expected key" in said and char == ":":
        return "no field name stands before the colon", "write 'field: value'"
    return next((sentence for part, sentence in _KNOWN.items() if part in said), (_NOT_YAML, _LOOK))


def _inside(lines: list[str], line: int, column: int) -> Position:
    """The place itself, or the end of the last line that is not blank."""
    if line < len(lines) and (column < len(lines[line]) or lines[line].strip()):
        return Position(line + 1, min(column, max(len(lines[line]) - 1, 0)) + 1)
    last = next((number for number in range(min(line, len(lines) - 1), -1, -1) if lines[number].strip()), 0)
    return Position(last + 1, max(len(lines[last].rstrip()), 1))


_OPEN_ENDED = ("unexpected end of stream", "expected ',' or", "could not find expected ':'", "expected '>'")
"""What is only noticed far behind: the place to show is where it began."""

_QUESTION = ("this '?' means something to YAML here", "put the value in quotes")

_BAD_ESCAPE = ("a backslash in double quotes begins no known sign here", "use single quotes, or write '\\\\'")
_BAD_INDENT = (
    "the indent of this line fits none of the lines above",
    "indent it as far as the line it belongs with",
)

_KNOWN = {
    "mapping values are not allowed": (
        "a colon stands where no value can begin",
        "put quotes around a text that holds ': ', or mend the indent of this line or the one above",
    ),
    "flow sequence: did not find expected ',' or": (
        "this '[' is not closed, or a comma is missing in it",
        "close it with ']' and put a comma between two entries",
    ),
    "flow mapping: did not find expected ',' or": (
        "this '{' is not closed, or a comma is missing in it",
        "close it with '}' and put a comma between two entries",
    ),
    "quoted scalar: found unexpected end of stream": (
        "this quote is not closed",
        "close it on the line it began on",
    ),
    "quoted scalar: found unexpected document indicator": (
        "a quote above this line is not closed",
        "close it",
    ),
    "quoted scalar": _BAD_ESCAPE,
    "could not find expected ':'": (
        "this line is neither a field nor a list entry",
        "write 'field: value' or '- value'",
    ),
    "expected <document start>": (
        "text stands after the end of the record",
        "remove '...' or what follows it",
    ),
    "did not find expected key": _BAD_INDENT,
    "did not find expected '-' indicator": _BAD_INDENT,
    "did not find expected node content": (
        "a bracket, comma or sign stands where a value should",
        "write the value, or put it in quotes",
    ),
    "found unexpected ':'": ("a colon stands inside a plain value in brackets", "put the value in quotes"),
    "block sequence entries are not allowed": (
        "a list begins with '-' where none can",
        "begin the list on a line of its own below its field",
    ),
    "block scalar": (
        "after '|' or '>' nothing may stand on the line",
        "begin the text on the next line, indented with spaces",
    ),
    "directive": (
        "a line that begins with '%' is an instruction to the parser",
        "remove it, or put the text in quotes",
    ),
    "incompatible YAML document": (
        "a line that begins with '%' is an instruction to the parser",
        "remove it",
    ),
    "an anchor": ("'&' begins no value", "put the value in quotes"),
    "an alias": ("'*' begins no value", "put the value in quotes"),
    "a tag": ("'!' begins no value", "put the value in quotes"),
}
