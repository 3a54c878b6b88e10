"""Safety facts, which are known of the car that they were found at and of no other (data/cautious.toml)."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from undertrim.record.fields import Node, root
from undertrim.record.source import Data, Pointer
from undertrim.resources import table

UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Reassuring:
    """A safety fact that says anything but the worst, where the record may also say that it is unknown."""

    pointer: Pointer


def reassuring(data: Data, place: Pointer) -> Iterator[Reassuring]:
    """The safety facts in the thing at `place` of a whole record that must not be believed of another car."""
    for steps, worst in _facts().items():
        if steps[0] == place[0]:
            yield from _below(data, place, steps[len(place) :], worst)


def _below(value: Data, place: Pointer, steps: tuple[str, ...], worst: str) -> Iterator[Reassuring]:
    if not steps:
        if isinstance(value, str) and value not in (worst, UNKNOWN) and _says_unknown(_node(place)):
            yield Reassuring(place)
        return
    entries: dict[str | int, Data] = (
        dict(value) if isinstance(value, dict) else dict(enumerate(value)) if isinstance(value, list) else {}
    )
    for key, inner in entries.items():
        if steps[0] in ("*", key):
            yield from _below(inner, (*place, key), steps[1:], worst)


@cache
def _facts() -> Mapping[tuple[str, ...], str]:
    """The steps to each safety fact, with the word for the worst; empty where there is no such word."""
    every = table("cautious")["fact"]
    return {tuple(name.split("/")): _worst(fact.get("order", "")) for name, fact in every.items() if fact.get("safety")}


def _worst(order: str | list[str]) -> str:
    return order[0] if isinstance(order, list) else ""


def _node(place: Pointer) -> Node | None:
    node: Node | None = root("vehicle")
    for step in place:
        node = node.child(step) if node else None
    return node


def _says_unknown(node: Node | None) -> bool:
    says = node.schema if node else {}
    return bool(says.get("mayBeUnknown") or UNKNOWN in says.get("enum", ()) or says.get("quantity", {}).get("unknown"))
