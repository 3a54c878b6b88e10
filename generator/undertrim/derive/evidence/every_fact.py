"""All facts of a record, each at its address: the keys that lead to it, as `facts.fact_at`, conflicts and claims name them."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, is_dataclass

from undertrim.derive.evidence.facts import sized, text_of
from undertrim.derive.evidence.fingerprint import NO_FACTS
from undertrim.derive.evidence.typed_names import typed_names
from undertrim.derive.once import once
from undertrim.record.fields import Node, node_of
from undertrim.record.gear import AnyRecord
from undertrim.record.model import Month, When
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity
from undertrim.words import Value

ABOUT_OTHERS = frozenset({"source", "when", "photos", "tried"})
"""Fields that say something of the facts beside them, and are none."""
_WHOLE = (type, When, Quantity, Month)


@dataclass(frozen=True, slots=True)
class Place:
    """One fact: the keys that lead to it, joined with `/`, what its fields are called from the thing that it is of downwards, and its value as typed.

    `sized` where it has a unit, a number or a word of a list: what can be measured or read off, and is no name and no sentence.
    """

    about: str
    labels: tuple[Value, ...]
    text: str
    sized: bool = False


@dataclass(frozen=True, slots=True)
class Thing:
    """A part, an opening, a plug or whatever else facts are of: its address, its name, and the facts."""

    about: str
    name: Value
    facts: tuple[Place, ...]


@once
def things(record: AnyRecord) -> tuple[Thing, ...]:
    """Everything that facts are of, in the order of the record; what has none is left out."""
    return tuple(_things(record))


def _things(record: AnyRecord) -> Iterator[Thing]:
    for key, value in _children(record):
        node = node_of((key,))
        if key in NO_FACTS or node is None:
            continue
        for pointer, name, one, below in _held(str(key), value, node):
            found: list[Place] = []
            if below:
                _gather(pointer, (), one, below, found)
            if found:
                yield Thing("/".join(pointer), name, tuple(found))


def _held(key: str, value: object, node: Node) -> Iterator[tuple[tuple[str, ...], Value, object, Node | None]]:
    """The things of a section: its entries by their names, or itself."""
    if isinstance(value, Mapping):
        yield from (
            ((key, name), getattr(one, "name", "") or name, one, node.child(name)) for name, one in value.items()
        )
    else:
        yield (key,), node.schema.get("title", key), value, node


def _gather(pointer: Pointer, labels: tuple[Value, ...], value: object, node: Node, found: list[Place]) -> None:
    """Adds the fact at a place, or those below it; generators in one another would hand each on once for every level."""
    if text := text_of(value):
        about = "/".join(map(str, pointer))
        named = labels or (node.schema.get("title", about),)
        found.append(Place(about, named, text, sized(node.schema, pointer)))
        return
    for key, one in _children(value):
        below = node.child(key)
        if key not in ABOUT_OTHERS and below is not None and one not in (None, ""):
            _gather((*pointer, key), (*labels, _label(node, key, below)), one, below, found)


def _label(node: Node, key: str | int, below: Node) -> Value:
    """A field by its title, an entry by its own name, and of a list by its number."""
    if isinstance(key, int):
        return str(key + 1)
    title: Value = (
        below.schema["title"] if key in node.schema.get("properties", ()) and "title" in below.schema else key
    )
    return title


def _children(value: object) -> list[tuple[str | int, object]]:
    """What is directly below a value, by the keys that the record has for it."""
    if isinstance(value, Mapping):
        return list(value.items())
    if isinstance(value, tuple):
        return list(enumerate(value))
    if is_dataclass(value) and not isinstance(value, _WHOLE):
        return [(name, getattr(value, own)) for name, own in typed_names(value).items()]
    return []
