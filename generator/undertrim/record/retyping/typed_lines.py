"""A line of a record as it was typed: where its value begins, and what stands in its brackets, even where YAML would not read them."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from itertools import chain
from typing import Any, NamedTuple

from undertrim.record import schema
from undertrim.record.problem import Position
from undertrim.words import Message

Edit = tuple[tuple[int, str], ...]
"""Lines by number, from 0, as they must be typed. None is added and none goes, so that all other places stay."""

CLOSERS = {"{": "}", "[": "]"}
_HEAD = re.compile(r"\s*(?:- +)*(?:(?:[\w.-]+|\"[^\"]*\"|'[^']*'): +)?")
_KEY = re.compile(r"\s*(?P<name>[\w-]+):(?=\s|$)")


@dataclass(frozen=True, slots=True)
class Mend:
    """A slip: where it shows, what it is, the lines as they must be typed, and whether they could mean nothing else.

    Nothing is said of one that is complained about anyway, once the line is read.
    """

    position: Position
    said: Message | None
    edit: Edit
    certain: bool


class Slip(NamedTuple):
    """What somebody may have mistyped, and the lines that would put it right.

    `column` of the place, from 0, where that is not the first change. `said` is None where what is then read is complained about anyway.
    One that is not `sure` may mean something else, even if nothing else would be read.
    """

    said: Message | None
    edit: Edit
    column: int | None = None
    sure: bool = True


@dataclass(frozen=True, slots=True)
class Piece:
    """A text in brackets, from its first sign to behind its last; `wide` is where it ends if commas belong to it that no field follows."""

    start: int
    end: int
    wide: int
    bracket: str
    unclosed: bool = False


@dataclass(slots=True)
class Brackets:
    """What stands in the brackets of a line: its texts, the brackets left open, and the places of closers that close nothing or another."""

    pieces: list[Piece] = field(default_factory=list)
    open: list[str] = field(default_factory=list)
    wrong: list[int] = field(default_factory=list)
    named: bool = False
    """Whether a field has just been named, so that what follows is its value."""


def with_line(lines: Sequence[str], edit: Edit) -> list[str]:
    """The lines with those of an edit in their place."""
    changed: Mapping[int, str] = dict(edit)
    return [changed.get(number, line) for number, line in enumerate(lines)]


def value_at(line: str) -> int:
    """Where the value of a line begins, behind indent, hyphens and field."""
    found = _HEAD.match(line)
    return found.end() if found else 0


@cache
def fields() -> frozenset[str]:
    """The names of all fields of all records."""
    return frozenset(chain.from_iterable(_blocks()))


def is_field_beside(name: str, others: Iterable[str]) -> bool:
    """Whether some block of a record has this field and all of the others that are fields at all."""
    wanted = {name, *(other for other in others if other in fields())}
    return any(wanted <= block for block in _blocks())


@cache
def _blocks() -> frozenset[frozenset[str]]:
    """The names of the fields of each block."""
    return frozenset(block for known in schema.NAMES for block in _named(schema.load(known)))


def _named(node: Any) -> Iterator[frozenset[str]]:
    waiting = [node]
    while waiting:
        item = waiting.pop()
        if isinstance(item, dict):
            properties = item.get("properties")
            if isinstance(properties, dict):
                yield frozenset(properties)
            waiting.extend(item.values())
        elif isinstance(item, list):
            waiting.extend(item)


def brackets(line: str) -> Brackets:
    """What stands in the brackets of a line; nothing where its value begins with none."""
    found = Brackets()
    at = value_at(line)
    if line[at : at + 1] not in CLOSERS:
        return found
    while at < len(line):
        at = _step(line, at, found)
        if not found.open:
            break
    found.wrong += [place for place in range(at, len(line)) if line[place] in "}]" and not line[at:place].strip("}] ")]
    return found


def _step(line: str, at: int, found: Brackets) -> int:
    char = line[at]
    if char not in " \t" and char not in CLOSERS and char not in ",}]":
        return _text(line, at, found)
    if char not in " \t":
        found.named = False
    if char in CLOSERS:
        found.open.append(char)
    elif char in CLOSERS.values():
        if CLOSERS[found.open[-1]] != char:
            found.wrong.append(at)
        found.open.pop()
    return at + 1


def _text(line: str, at: int, found: Brackets) -> int:
    """Past a field or a value that begins here."""
    key = _KEY.match(line, at) if found.open[-1] == "{" and not found.named else None
    found.named = bool(key)
    if key:
        return key.end()
    piece = _piece(line, at, found.open[-1])
    found.pieces.append(piece)
    return piece.end


def _piece(line: str, at: int, bracket: str) -> Piece:
    if line[at] in "\"'":
        end = closing(line, at)
        if end is not None:
            return Piece(at, end, end, bracket)
        return Piece(at, wide_end(line, at), wide_end(line, at), bracket, unclosed=True)
    end = next((place for place in range(at, len(line)) if line[place] in ",{}[]"), len(line))
    end = max(end, at + 1)
    return Piece(at, at + len(line[at:end].rstrip()), wide_end(line, at), bracket)


def closing(line: str, at: int) -> int | None:
    """Behind the quote that closes the one at a place: one after which the value is over."""
    quote = line[at]
    for place in range(at + 1, len(line)):
        if line[place] == quote and re.match(r"\s*(?:[,}\]:]|$)", line[place + 1 :]):
            if quote == '"' and _escaped(line, place):
                continue
            return place + 1
    return None


def _escaped(line: str, place: int) -> bool:
    before = line[:place]
    return (len(before) - len(before.rstrip("\\"))) % 2 == 1


def wide_end(line: str, at: int) -> int:
    """Where a text ends if the commas in it are its own: before the next field, or before the brackets that close the line."""
    last = len(line.rstrip().rstrip("}] \t"))
    fields_after = (found.start() for found in re.finditer(r",\s*[\w-]+:(?=\s|$)", line[:last]) if found.start() > at)
    return at + len(line[at : min(next(fields_after, last), last)].rstrip())
