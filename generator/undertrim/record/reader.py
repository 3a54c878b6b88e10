"""Builds plain data from the events of a YAML parser, and remembers where everything stands.

Nothing here recurses, so deep nesting cannot exhaust the stack.
"""

import unicodedata
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

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

from undertrim.record import unseen_signs
from undertrim.record.numerals import quoted
from undertrim.record.problem import Level, Position, Problem
from undertrim.words import Message, message

MAX_DEPTH = 20
MAX_TEXT = 10_000
"""Characters of one text: five times what the longest field takes, so that its own limit can still speak of it."""
MAX_PROBLEMS = 50

Pointer = tuple[str | int, ...]
Data = Any  # dict[str, Data] | list[Data] | str | None
Span = tuple[Position, Position]


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
class Reader:
    """Builds the data from parser events, one pass, no recursion."""

    path: Path
    values: dict[Pointer, Position] = field(default_factory=dict)
    keys: dict[Pointer, Position] = field(default_factory=dict)
    quoted: set[Pointer] = field(default_factory=set)
    blanks: list[Pointer] = field(default_factory=list)
    """The fields without a value."""
    again: set[Pointer] = field(default_factory=set)
    """The keys that stand twice."""
    loose: list[Pointer] = field(default_factory=list)
    """The texts without quotes that end with a comma, or with a quote."""
    spans: list[Span] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    stack: list[_Frame] = field(default_factory=list)
    root: Data = None
    documents: int = 0

    def report(self, position: Position, said: Message) -> None:
        """Add a problem; raises `StopReading` where there are too many."""
        if len(self.problems) == MAX_PROBLEMS:
            said = message("yaml/too-many", most=MAX_PROBLEMS)
        self.problems.append(Problem(self.path, position, Level.ERROR, "yaml", said))
        if len(self.problems) > MAX_PROBLEMS:
            raise StopReading

    def at(self, pointer: Pointer) -> Data:
        """What was read at a place; None where nothing was."""
        found = self.root
        for step in pointer:
            inside = isinstance(found, dict) and step in found
            if not inside and not (isinstance(found, list) and isinstance(step, int) and step < len(found)):
                return None
            found = found[step]
        return found

    def feed(self, event: Event) -> None:
        """Take one event; raises `StopReading` on what cannot be read on."""
        if isinstance(event, ScalarEvent):
            self._scalar(event)
        elif isinstance(event, MappingStartEvent | SequenceStartEvent):
            self._open(event)
        elif isinstance(event, MappingEndEvent | SequenceEndEvent):
            self.stack.pop()
        elif isinstance(event, AliasEvent):
            self._stop(event, message("yaml/alias", alias=quoted(f"*{event.anchor}")))
        elif isinstance(event, DocumentStartEvent):
            self.documents += 1
            if self.documents > 1:
                self._stop(event, message("yaml/second-document"))

    def _stop(self, event: Event, said: Message) -> None:
        self.report(_at(event), said)
        raise StopReading

    def _refuse_extras(self, event: ScalarEvent | CollectionStartEvent) -> None:
        if event.anchor:
            self._stop(event, message("yaml/anchor", anchor=quoted(f"&{event.anchor}")))
        tag = event.ctag if hasattr(event, "ctag") else event.tag
        if tag is not None and str(tag) != "!":
            written = str(tag).replace("tag:yaml.org,2002:", "!!")
            self._stop(event, message("yaml/tag", tag=quoted(written)))

    def _scalar(self, event: ScalarEvent) -> None:
        self._refuse_extras(event)
        plain = event.style is None or event.style == ""
        if not plain:
            self.spans.append((_at(event), _position(event.end_mark)))
        key = bool(self.stack) and isinstance(self.stack[-1].container, dict) and self.stack[-1].key is None
        if key:
            self._key(self.stack[-1], event, self._clean(event))
            return
        value = None if plain and event.value in ("", "~", "null") else self._clean(event)
        if not self.stack:
            self.root = value
            self.values[()] = _at(event)
            return
        frame = self.stack[-1]
        pointer = frame.child()
        if not frame.skip:
            self.values[pointer] = _at(event)
            if not plain:
                self.quoted.add(pointer)
            elif event.value.endswith((",", '"')):
                self.loose.append(pointer)
            elif not event.value and frame.key is not None:
                self.blanks.append(pointer)
        frame.put(value)

    def _key(self, frame: _Frame, event: ScalarEvent, text: str) -> None:
        key = frame.key = text.replace("\n", " ")
        assert isinstance(frame.container, dict)
        if "\n" in text:
            self.report(_at(event), message("yaml/key-over-lines", key=quoted(key)))
        if key == "<<":
            self._stop(event, message("yaml/merge-key"))
        if key in frame.container:
            first = self.keys[(*frame.pointer, key)]
            frame.skip = True
            self.again.add((*frame.pointer, key))
            self.report(_at(event), message("yaml/key-twice", key=quoted(key), first=first.line))
            return
        self.keys[(*frame.pointer, key)] = _at(event)

    def _clean(self, event: ScalarEvent) -> str:
        """The text of a scalar, its letters whole (Unicode NFC): an e with an accent is one sign, however it was typed.

        A control character that an escape smuggled in is reported and taken out, and so is a text that has no end.
        """
        value: str = event.value if event.value.isascii() else unicodedata.normalize("NFC", event.value)
        if len(value) > MAX_TEXT:
            self.report(_at(event), message("yaml/long-text", size=len(value)))
            return value[:MAX_TEXT]
        bad = next(unseen_signs.places(value), None) if event.style == '"' else None
        if bad is None:
            return value
        self.report(_at(event), message("yaml/escaped-sign", sign=unseen_signs.named(value[bad])))
        return "".join(char for char in value if not unseen_signs.refused(char))

    def _open(self, event: CollectionStartEvent) -> None:
        self._refuse_extras(event)
        if len(self.stack) >= MAX_DEPTH:
            self._stop(event, message("yaml/too-deep", most=MAX_DEPTH))
        container: dict[str, Data] | list[Data] = {} if isinstance(event, MappingStartEvent) else []
        pointer: Pointer = ()
        if self.stack:
            frame = self.stack[-1]
            if isinstance(frame.container, dict) and frame.key is None:
                self._stop(event, message("yaml/key-is-no-word"))
            pointer = frame.child()
            if frame.skip:
                pointer = (*pointer, "(again)")
            frame.put(container)
        else:
            self.root = container
        self.values.setdefault(pointer, _at(event))
        self.stack.append(_Frame(pointer, container))


class StopReading(Exception):  # noqa: N818
    """The rest of the file cannot be read; the problem has been reported."""


def _at(event: Event) -> Position:
    return _position(event.start_mark)


def _position(mark: Any) -> Position:
    return Position(mark.line + 1, mark.column + 1)
