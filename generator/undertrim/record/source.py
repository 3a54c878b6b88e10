"""Reads YAML into plain data and remembers the line and column of every key and value.

Scalars stay text: the schema, not the parser, decides what `no`, `1.10` or `2014` mean. Aliases, tags, merge
keys and several documents in one file have no use in a record and are refused; a duplicate key is reported and
the first value kept. Where reading stops before the end there is no data: what was read so far would only seem
to lack the rest.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

from undertrim.record import plain_files
from undertrim.record.parsing import parse
from undertrim.record.problem import Level, Position, Problem
from undertrim.record.reader import MAX_PROBLEMS, Data, Pointer, Span
from undertrim.record.retyping import Mend
from undertrim.record.taken import Taken
from undertrim.words import Message, message

if TYPE_CHECKING:
    from undertrim.record.complaint import Complaint

__all__ = ["MAX_BYTES", "MAX_PROBLEMS", "Data", "Pointer", "Source", "read", "read_bytes", "read_text"]

MAX_BYTES = 1_000_000


@dataclass(frozen=True, slots=True)
class Source:
    """One file as read: its data, where everything stands, and what was wrong with the YAML itself.

    `spans` are the stretches of quoted texts and texts of several lines, from the first character to behind the last. `origin` is
    what the data was spread from (`spreading.py`), where it was; places then lead into the whole, positions to where it was typed.
    `mends` are the lines that YAML would not read, or not as they were meant, each as it must be typed; the data is read as if they were.
    `again` are the keys that stand twice; what stood under the second is lost.
    """

    path: Path
    text: str
    data: Data
    values: dict[Pointer, Position]
    keys: dict[Pointer, Position]
    quoted: frozenset[Pointer]
    problems: tuple[Problem, ...]
    spans: tuple[Span, ...] = ()
    origin: "Origin | None" = None
    mends: tuple[Mend, ...] = ()
    again: frozenset[Pointer] = frozenset()

    @classmethod
    def empty(cls, path: Path) -> "Source":
        """A file of which nothing was read."""
        return cls(path, "", None, {}, {}, frozenset(), ())

    @property
    def as_typed(self) -> "Source":
        """The same file before anything was spread."""
        return self.origin.typed if self.origin else self

    def position(self, pointer: Pointer, *, key: bool = False) -> Position:
        """Where `pointer` stands, or the nearest thing around it that exists; `key` asks for its key."""
        for known in (self, self.as_typed):  # of what only shares something out, nothing is left in the whole
            where = known.keys if key else known.values
            if pointer in where:
                return where[pointer]
        while pointer:
            pointer = pointer[:-1]
            if pointer in self.values:
                return self.keys.get(pointer, self.values[pointer])
        return Position(1, 1)


FORMED = ("parts", "openings", "connectors", "ladders")
"""The sections of what others, such as gear, name by the id it is written under."""


def _marked(things: Data, marks: Mapping[str, dict[str, Data]]) -> Data:
    if not isinstance(things, dict):
        return things
    return {
        name: {**thing, **marks.get(name, {})} if isinstance(thing, dict) else thing for name, thing in things.items()
    }


class Sister(Protocol):
    """Another vehicle's record, from which one takes: by itself, without what it takes from others."""

    @property
    def source(self) -> Source:
        """Its source as a whole."""

    @property
    def address(self) -> str:
        """What it is called."""

    @property
    def problems(self) -> Sequence[Problem]:
        """What is wrong with it."""


@dataclass(frozen=True, slots=True)
class Twice:
    """A field that says what follows anyway, with what it follows from: a code such as `group` or `built`."""

    pointer: Pointer
    source: str


@dataclass(frozen=True, slots=True)
class Origin:
    """What a whole was spread from: the file as typed, and what showed on the way.

    `inherited` leads from each place whose value was said elsewhere to there; `faults` are what could not be spread, `twice` what
    need not have been said. `forms` are the ids under which something stands that is divided by kinds of car, by its place as typed;
    `led` the places of what is divided only because of what it names. `taken` are the topmost places that hold what another record
    says, and `sisters` are those records.
    """

    typed: Source
    inherited: dict[Pointer, Pointer]
    faults: "tuple[Complaint, ...]"
    twice: tuple[Twice, ...]
    forms: Mapping[Pointer, tuple[str, ...]] = field(default_factory=dict)
    led: frozenset[Pointer] = frozenset()
    named_for: Mapping[Pointer, tuple[str, ...]] = field(default_factory=dict)

    def bases(self, section: str) -> dict[str, str]:
        """By the id of each form in a section the id as typed."""
        made = {name: str(place[1]) for place, names in self.forms.items() if place[:1] == (section,) for name in names}
        return {name: made.get(base, base) for name, base in made.items()}

    def marked(self, data: Data) -> Data:
        """A whole in which parts, openings and plugs that are written as one for several kinds of car say so, as `form_of`; an opening also which variants its name tells."""
        if not self.forms or not isinstance(data, dict):
            return data
        marked = {section: _marked(data[section], self._marks(section)) for section in FORMED if section in data}
        return {**data, **marked}

    def _marks(self, section: str) -> dict[str, dict[str, Data]]:
        made: dict[str, dict[str, Data]] = {name: {"form_of": base} for name, base in self.bases(section).items()}
        for (_, name), told in ((place, told) for place, told in self.named_for.items() if place[0] == section):
            made[str(name)] = {**made.get(str(name), {}), "named_for": list(told)}
        return made

    taken: dict[Pointer, Taken] = field(default_factory=dict)
    sisters: "tuple[Sister, ...]" = ()

    def is_taken(self, pointer: Pointer) -> bool:
        """Whether a place holds what another record says."""
        return bool(self.taken) and any(pointer[:depth] in self.taken for depth in range(1, len(pointer) + 1))

    def said_at(self, pointer: Pointer) -> Pointer:
        """Where the value at a place was said: the place itself, or where it is inherited from."""
        for depth in range(len(pointer), 0, -1):
            if pointer[:depth] in self.inherited:
                return (*self.inherited[pointer[:depth]], *pointer[depth:])
        return pointer


def read(path: Path, shown: Path | None = None) -> Source:
    """Read one file; whatever is wrong with it is in `problems`, never raised.

    `shown` is the path that problems print, when it should differ from the one that is opened.
    """
    shown = shown or path
    start = Position(1, 1)
    try:
        raw = plain_files.read(path, MAX_BYTES)
    except plain_files.NotPlain:
        return _unreadable(shown, start, message("yaml/no-file"))
    except OSError:
        return _unreadable(shown, start, message("yaml/cannot-read"))
    return read_bytes(raw, shown)


def read_bytes(raw: bytes, shown: Path) -> Source:
    """Like `read`, for content that is already in memory."""
    if len(raw) > MAX_BYTES:
        return _unreadable(shown, Position(1, 1), message("yaml/too-large", most=MAX_BYTES // 1000))
    if raw[:2] in _UTF_16 or b"\0" in raw[:2]:
        return _unreadable(shown, Position(1, 1), message("yaml/utf-16"))
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        place = _end_of(raw[: error.start].decode("utf-8-sig"))
        return _unreadable(shown, place, message("yaml/not-utf-8"))
    return read_text(text, shown)


_UTF_16 = (b"\xff\xfe", b"\xfe\xff")


def _end_of(text: str) -> Position:
    lines = re.split("\r\n|\r|\n", text)
    return Position(len(lines), len(lines[-1]) + 1)


def read_text(text: str, shown: Path) -> Source:
    """Like `read`, for decoded text."""
    parsed = parse(text, shown)
    reader = parsed.reader
    root = reader.root if parsed.whole else None
    places = reader.values, reader.keys, frozenset(reader.quoted)
    lost = frozenset(reader.again)
    return Source(
        shown, text, root, *places, tuple(reader.problems), tuple(reader.spans), mends=parsed.mends, again=lost
    )


def _unreadable(shown: Path, position: Position, said: Message) -> Source:
    problem = Problem(shown, position, Level.ERROR, "yaml", said)
    return Source(shown, "", None, {}, {}, frozenset(), (problem,))
