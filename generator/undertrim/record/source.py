"""Reads YAML into plain data and remembers the line and column of every key and value.

Scalars stay text: the schema, not the parser, decides what `no`, `1.10` or `2014` mean. Aliases, tags,
merge keys and several documents in one file have no use in a record and are refused; a duplicate key is reported
and the first value kept. Nothing here recurses, so deep nesting cannot exhaust the stack. Where reading stops before
the end there is no data: what was read so far would only seem to lack the rest.
"""

import re
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from ruamel.yaml import YAML
from ruamel.yaml.error import YAMLError
from ruamel.yaml.events import (
    AliasEvent,
    CollectionStartEvent,
    DocumentStartEvent,
    Event,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)

from undertrim.record import syntax
from undertrim.record.numerals import quoted
from undertrim.record.problem import Level, Position, Problem

MAX_BYTES = 1_000_000
MAX_DEPTH = 20
MAX_PROBLEMS = 50

Pointer = tuple[str | int, ...]
Data = Any  # dict[str, Data] | list[Data] | str | None


@dataclass(frozen=True, slots=True)
class Source:
    """One file as read: its data, where everything stands, and what was wrong with the YAML itself."""

    path: Path
    text: str
    data: Data
    values: dict[Pointer, Position]
    keys: dict[Pointer, Position]
    quoted: frozenset[Pointer]
    problems: tuple[Problem, ...]

    @classmethod
    def empty(cls, path: Path) -> "Source":
        """A file of which nothing was read."""
        return cls(path, "", None, {}, {}, frozenset(), ())

    def position(self, pointer: Pointer, *, key: bool = False) -> Position:
        """Where `pointer` stands, or the nearest thing around it that exists; `key` asks for its key."""
        where = self.keys if key else self.values
        if pointer in where:
            return where[pointer]
        while pointer:
            pointer = pointer[:-1]
            if pointer in self.values:
                return self.keys.get(pointer, self.values[pointer])
        return Position(1, 1)


@dataclass(slots=True)
class _Frame:
    """A mapping or list that is still open."""

    pointer: Pointer
    container: dict[str, Data] | list[Data]
    key: str | None = None
    skip: bool = False  # the value of a duplicate key: read, reported, not kept

    def child(self) -> Pointer:
        if isinstance(self.container, list):
            return (*self.pointer, len(self.container))
        return (*self.pointer, self.key or "")

    def put(self, value: Data) -> None:
        if isinstance(self.container, list):
            self.container.append(value)
        elif not self.skip:
            self.container[self.key or ""] = value
        self.key, self.skip = None, False


@dataclass(slots=True)
class _Reader:
    """Builds the data from parser events, one pass, no recursion."""

    path: Path
    values: dict[Pointer, Position] = field(default_factory=dict)
    keys: dict[Pointer, Position] = field(default_factory=dict)
    quoted: set[Pointer] = field(default_factory=set)
    problems: list[Problem] = field(default_factory=list)
    stack: list[_Frame] = field(default_factory=list)
    root: Data = None
    documents: int = 0

    def report(self, position: Position, message: str, hint: str) -> None:
        """Add a problem; raises `_StopReading` where there are too many."""
        if len(self.problems) == MAX_PROBLEMS:
            message, hint = f"more than {MAX_PROBLEMS} problems", "mend those above; the rest was not read"
        self.problems.append(Problem(self.path, position, Level.ERROR, "yaml", message, hint))
        if len(self.problems) > MAX_PROBLEMS:
            raise _StopReading

    def feed(self, event: Event) -> None:
        """Take one event; raises `_StopReading` on what cannot be read on."""
        if isinstance(event, ScalarEvent):
            self._scalar(event)
        elif isinstance(event, MappingStartEvent | SequenceStartEvent):
            self._open(event)
        elif isinstance(event, MappingEndEvent | SequenceEndEvent):
            self.stack.pop()
        elif isinstance(event, AliasEvent):
            self._stop(event, f"{quoted(f'*{event.anchor}')} is an alias", "write the value out: records do not use aliases")
        elif isinstance(event, DocumentStartEvent):
            self.documents += 1
            if self.documents > 1:
                self._stop(event, "a second document starts here", "keep one record in one file")

    def _stop(self, event: Event, message: str, hint: str) -> None:
        self.report(_at(event), message, hint)
        raise _StopReading

    def _refuse_extras(self, event: ScalarEvent | CollectionStartEvent) -> None:
        if event.anchor:
            self._stop(event, f"{quoted(f'&{event.anchor}')} is an anchor", "remove it: records do not use aliases")
        tag = event.ctag if hasattr(event, "ctag") else event.tag
        if tag is not None and str(tag) != "!":
            written = str(tag).replace("tag:yaml.org,2002:", "!!")
            self._stop(event, f"{quoted(written)} is a tag", "remove it: the schema gives each value its type")

    def _scalar(self, event: ScalarEvent) -> None:
        self._refuse_extras(event)
        plain = event.style is None or event.style == ""
        value = None if plain and event.value in ("", "~", "null") else self._clean(event)
        if not self.stack:
            self.root = value
            self.values[()] = _at(event)
            return
        frame = self.stack[-1]
        if isinstance(frame.container, dict) and frame.key is None:
            self._key(frame, event)
            return
        pointer = frame.child()
        if not frame.skip:
            self.values[pointer] = _at(event)
            if not plain:
                self.quoted.add(pointer)
        frame.put(value)

    def _key(self, frame: _Frame, event: ScalarEvent) -> None:
        key = frame.key = self._clean(event).replace("\n", " ")
        assert isinstance(frame.container, dict)
        if "\n" in event.value:
            self.report(_at(event), f"the field name {quoted(key)} runs over a line", "write it on one line")
        if key == "<<":
            self._stop(event, "'<<' is a merge key", "write the values out: records do not merge")
        if key in frame.container:
            first = self.keys[(*frame.pointer, key)]
            frame.skip = True
            self.report(_at(event), f"{quoted(key)} stands twice", f"first on line {first.line}; keep one of them")
            return
        self.keys[(*frame.pointer, key)] = _at(event)

    def _clean(self, event: ScalarEvent) -> str:
        """The text of a scalar; a control character that an escape smuggled in is reported and taken out."""
        value: str = event.value
        bad = syntax.bad_character(value) if event.style == '"' else None
        if bad:
            self.report(_at(event), bad.message, "write the text without that escape")
        return "".join(char for char in value if not syntax.refused(char) or char == "\n") if bad else value

    def _open(self, event: CollectionStartEvent) -> None:
        self._refuse_extras(event)
        if len(self.stack) >= MAX_DEPTH:
            self._stop(event, f"nested more than {MAX_DEPTH} deep", "a record needs no such depth: close some brackets")
        container: dict[str, Data] | list[Data] = {} if isinstance(event, MappingStartEvent) else []
        pointer: Pointer = ()
        if self.stack:
            frame = self.stack[-1]
            if isinstance(frame.container, dict) and frame.key is None:
                self._stop(event, "a key is a list or mapping", "quote it if it is text, for example 'a: b'")
            pointer = frame.child()
            if frame.skip:
                pointer = (*pointer, "(again)")
            frame.put(container)
        else:
            self.root = container
        self.values.setdefault(pointer, _at(event))
        self.stack.append(_Frame(pointer, container))


class _StopReading(Exception):  # noqa: N818
    """The rest of the file cannot be read; the problem has been reported."""


def _at(event: Event) -> Position:
    mark = event.start_mark
    return Position(mark.line + 1, mark.column + 1)


def read(path: Path, shown: Path | None = None) -> Source:
    """Read one file; whatever is wrong with it is in `problems`, never raised.

    `shown` is the path that problems print, when it should differ from the one that is opened.
    """
    shown = shown or path
    try:
        raw = path.read_bytes()
    except OSError as error:
        return _unreadable(shown, Position(1, 1), f"cannot be read: {error.strerror}", "check the path and its rights")
    return read_bytes(raw, shown)


def read_bytes(raw: bytes, shown: Path) -> Source:
    """Like `read`, for content that is already in memory."""
    if len(raw) > MAX_BYTES:
        size = f"the file is larger than {MAX_BYTES // 1000} kB"
        hint = "a record is a few hundred lines: split it or remove what does not belong"
        return _unreadable(shown, Position(1, 1), size, hint)
    if raw[:2] in _UTF_16 or b"\0" in raw[:2]:
        return _unreadable(shown, Position(1, 1), "the file is UTF-16, not UTF-8", "save it as UTF-8")
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        place = _end_of(raw[: error.start].decode("utf-8-sig"))
        return _unreadable(shown, place, "the file is not UTF-8 from here on", "save it as UTF-8")
    return read_text(text, shown)


_UTF_16 = (b"\xff\xfe", b"\xfe\xff")


def _end_of(text: str) -> Position:
    lines = re.split("\r\n|\r|\n", text)
    return Position(len(lines), len(lines[-1]) + 1)


def read_text(text: str, shown: Path) -> Source:
    """Like `read`, for decoded text."""
    reader = _Reader(shown)
    whole = _read_all(reader, text)
    root = reader.root if whole else None
    places = reader.values, reader.keys, frozenset(reader.quoted)
    return Source(shown, text, root, *places, tuple(reader.problems))


def _read_all(reader: _Reader, text: str) -> bool:
    """Whether the text was read to its end; if not, the reader has the reason."""
    try:
        fault = syntax.bad_character(text)
        if not fault:
            for event in _events(text):
                reader.feed(event)
            return True
    except _StopReading:
        return False
    except YAMLError as error:
        fault = syntax.explain(error, text)
    with suppress(_StopReading):
        reader.report(fault.position, fault.message, fault.hint)
    return False


def _events(text: str) -> Iterator[Event]:
    parser = YAML(typ="safe", pure=False)
    yield from parser.parse(text)


def _unreadable(shown: Path, position: Position, message: str, hint: str) -> Source:
    problem = Problem(shown, position, Level.ERROR, "yaml", message, hint)
    return Source(shown, "", None, {}, {}, frozenset(), (problem,))
