"""What a rule says, what it may look at, and the shapes a rule can have.

A rule is a module with a docstring (its page), a `LEVEL` and a function: `check` for one vehicle record at a
time, `check_gear` for one gear record at a time, `check_all` for the collection, or `meetings` where it holds few records of the
collection against each other at a time, and takes long over it: what they found is remembered. A rule about something
that both kinds of record have holds `check` and `check_gear` and stands in both registers. It yields findings
and nothing else; id, level and position are added by the runner.
"""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise
from pathlib import Path
from typing import Protocol, runtime_checkable

from undertrim.check.texts import texts
from undertrim.derive import cars
from undertrim.derive.cutting import Bar, bars
from undertrim.derive.procedure.node import home
from undertrim.derive.procedure.planning import Planner, Target, targets
from undertrim.record import build
from undertrim.record.build import KEYED
from undertrim.record.fields import Field, walk
from undertrim.record.gear import AnyRecord, GearFacts, GearRecord
from undertrim.record.model import VehicleFacts, VehicleRecord
from undertrim.record.photo_files import Album, album
from undertrim.record.problem import Level, Position
from undertrim.record.source import Data, Pointer, Source
from undertrim.record.store import Entry
from undertrim.words import Message, sentence, way_out


@dataclass(frozen=True, slots=True)
class Finding:
    """Something wrong at a place in the record; `key` points at the key there instead of the value.

    `said` is what is wrong, with its way out in the catalogue. `about` are the ids that it rests on besides
    those that lead to its place: where one of them could not be read, it is not worth saying. `beside` is for rules for the
    collection: the addresses of all records that it rests on besides its own; empty where it may rest on any, or on one that is not there.
    """

    pointer: Pointer
    said: Message
    key: bool = False
    about: tuple[str, ...] = ()
    beside: tuple[str, ...] = ()

    @property
    def message(self) -> str:
        """What is wrong, in lower case, without a full stop, values in quotes."""
        return sentence(self.said)

    @property
    def hint(self) -> str:
        """The way out; empty where there is nothing to say."""
        return way_out(self.said)

    def rests_on(self, names: Collection[str]) -> bool:
        """Whether one of the ids leads to its place, or is one that it is about."""
        leading = (str(step) for section, step in pairwise(self.pointer) if section in KEYED)
        return any(name in names for name in (*leading, *self.about))


@dataclass(frozen=True)
class Examined:
    """A record of either sort under examination."""

    entry: Entry

    @property
    def source(self) -> Source:
        """The file as read; its `data` is the record as typed."""
        return self.entry.source

    @cached_property
    def fields(self) -> tuple[Field, ...]:
        """Every value as typed, with what the schema says of it."""
        return tuple(walk(self.source.data, self.entry.kind))

    @cached_property
    def texts(self) -> tuple[tuple[Pointer, str], ...]:
        """Every text that people read, with its place."""
        return tuple(texts(self.fields))

    def intact(self, pointer: Pointer) -> bool:
        """Whether the schema refused nothing at this place or below, so that it is complete."""
        return not any(place[: len(pointer)] == pointer for place in self.entry.dropped)


@dataclass(frozen=True)
class Subject(Examined):
    """One vehicle record under examination, with what is derived from it worked out once for all rules."""

    record: VehicleRecord

    @cached_property
    def album(self) -> Album:
        """The record's photographs, each read once for all rules."""
        return album(self.entry.path)

    @cached_property
    def planner(self) -> Planner:
        """Plans visits; shared so that each car's graph is laid out once."""
        return Planner(self.record)

    @cached_property
    def bars(self) -> dict[Pointer, tuple[Bar, ...]]:
        """For each preparation, part and opening what speaks against cutting, drilling or blowing there, by its place."""
        return {home(thing): bars(self.record, thing) for thing in self.record.things}

    @cached_property
    def targets(self) -> tuple[Target, ...]:
        """Every job at every side."""
        return targets(self.record)

    @cached_property
    def cars(self) -> list[dict[str, str]]:
        """Every combination of variant choices that matters, at least one."""
        return cars.assignments(self.record)


@dataclass(frozen=True)
class GearSubject(Examined):
    """One gear record under examination."""

    record: GearRecord


@dataclass(frozen=True)
class Details:
    """What only a few rules ask of a file, and only of some files: where things stand, and what gear meets in a vehicle as typed.

    `joints` (see `joints.py`) is None for gear, and where some of it cannot be read.
    """

    places: Mapping[Pointer, Position] = field(default_factory=dict)
    joints: Data = None

    @cached_property
    def record(self) -> VehicleRecord | None:
        """As much of the vehicle's record as gear meets; None where there are no joints."""
        return build.vehicle(self.joints) if self.joints else None


@dataclass(frozen=True)
class Card:
    """What the collection rules see of one file: who it is, and in short what it says; `typed` are its facts as typed.

    `looks` has the digest of each look at a car by its id, word for word. `sections` has those of a vehicle's sections (see `copies.py`).
    Two files with the same mark in `marks` say the same in their `facts` or `joints`. `more` brings the details when they are asked for,
    `whole` all of the record, read anew; None where nobody can.
    """

    path: Path
    address: str
    facts: VehicleFacts | GearFacts
    typed: Data = None
    looks: Mapping[str, str] = field(default_factory=dict)
    sections: Mapping[str, str] = field(default_factory=dict)
    marks: Mapping[str, str] = field(default_factory=dict)
    more: Callable[[], Details] = field(default=Details, compare=False)
    whole: Callable[[], AnyRecord | None] | None = field(default=None, compare=False)

    @cached_property
    def details(self) -> Details:
        """The details, read once."""
        return self.more()


@dataclass(frozen=True, slots=True)
class Meeting:
    """Records that a rule for the collection holds against each other, apart from all others: a card, where what is `find` would be told, and what it meets.

    What is found is remembered for as long as all of `rests_on` is the same; `beside` is said of each finding.
    """

    card: Card
    rests_on: tuple[str, ...]
    find: Callable[[], Iterable[Finding]]
    beside: tuple[str, ...] = ()


class RecordRule(Protocol):
    """A rule that looks at one vehicle record."""

    LEVEL: Level

    def check(self, subject: Subject, /) -> Iterator[Finding]:
        """Yield what is wrong."""


class GearRule(Protocol):
    """A rule that looks at one gear record."""

    LEVEL: Level

    def check_gear(self, subject: GearSubject, /) -> Iterator[Finding]:
        """Yield what is wrong."""


@runtime_checkable
class CollectionRule(Protocol):
    """A rule that looks at all records together."""

    LEVEL: Level

    def check_all(self, cards: Sequence[Card], /) -> Iterator[tuple[Card, Finding]]:
        """Yield what is wrong, each with the card it is about."""


@runtime_checkable
class MeetingRule(Protocol):
    """A rule that holds some records against some others."""

    LEVEL: Level

    def meetings(self, cards: Sequence[Card], /) -> Iterator[Meeting]:
        """Yield which, each with what it has to say of them."""


Rule = RecordRule | GearRule | CollectionRule | MeetingRule
"""A rule of any shape."""
