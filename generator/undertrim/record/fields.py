"""Walks a record together with its schema: every value with what the schema says of its field."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache
from typing import NamedTuple

from undertrim.record import schema
from undertrim.record.schema import Schema
from undertrim.record.source import Data, Pointer

_PREFIX = "urn:undertrim:"

Place = tuple[str, tuple[str, ...]]
"""Which schema (common, vehicle, gear), and the steps to a field's description in it."""


@dataclass(frozen=True, slots=True)
class Node:
    """What the schema says of one field: references followed, the words beside a reference first.

    `home` is where the last reference led; two fields with the same `home` are of one kind.
    """

    schema: Schema
    home: Place
    _below: "dict[tuple[str, ...], Node]" = field(default_factory=dict, compare=False, repr=False)

    def child(self, step: str | int) -> "Node | None":
        """The node of a key or list entry; None where the schema does not know it."""
        if isinstance(step, int):
            return self._at("items") if "items" in self.schema else None
        if step in self.schema.get("properties", ()):
            return self._at("properties", step)
        return self._at("additionalProperties") if isinstance(self.schema.get("additionalProperties"), dict) else None

    def _at(self, *steps: str) -> "Node":
        if steps not in self._below:
            self._below[steps] = node_at(self.home, *steps)
        return self._below[steps]


class Field(NamedTuple):
    """One value of a record (a scalar, list or mapping as typed) with its node."""

    pointer: Pointer
    value: Data
    node: Node


def root(name: str) -> Node:
    """The node of a whole record of one kind: vehicle or gear; `vehicle/group` is a block of it that is defined there."""
    document, _, block = name.partition("/")
    return _at((document, ("$defs", block) if block else ()))


DOCUMENTS = ("vehicle", "gear")


def document_of(place: Pointer) -> str:
    """In which sort of record an address leads somewhere: its first key says so. What both have (`evidence`, `conflicts`) is the same in both."""
    return next((name for name in DOCUMENTS if place and root(name).child(place[0])), DOCUMENTS[0])


def node_of(place: Pointer) -> Node | None:
    """The node that an address leads to; None where no schema knows it."""
    node: Node | None = root(document_of(place))
    for step in place:
        node = node.child(step) if node else None
    return node


def node_at(home: Place, *steps: str) -> Node:
    """The node of a schema that stands below another one under these keywords."""
    return _at((home[0], (*home[1], *steps)))


def walk(data: Data, name: str) -> Iterator[Field]:
    """Every value in `data` that the schema `name` describes, in file order, the whole before its parts.

    What the schema does not know is passed over, with all that is below it; nothing is validated.
    """
    found: list[Field] = []
    _gather((), data, root(name), found)
    yield from found


def _gather(pointer: Pointer, value: Data, node: Node, found: list[Field]) -> None:
    """Adds a value and all below it; generators in one another would hand each on once for every level."""
    found.append(Field(pointer, value, node))
    entries = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, inner in entries:
        below = node.child(step)
        if below:
            _gather((*pointer, step), inner, below, found)


@cache
def _at(place: Place) -> Node:
    found = _lookup(place)
    if "$ref" not in found:
        return Node(found, place)
    beside = {word: said for word, said in found.items() if word != "$ref"}
    target = _at(_target(found["$ref"], place[0]))
    return Node({**target.schema, **beside}, target.home)


def _lookup(place: Place) -> Schema:
    found = schema.load(place[0])
    for step in place[1]:
        found = found[step]
    return found


def _target(reference: str, document: str) -> Place:
    where, _, steps = reference.partition("#/")
    return (where.removeprefix(_PREFIX) or document, tuple(steps.split("/")))
