"""The fields of the schemas, and where records use each."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from undertrim.record.fields import Node, Place, root, walk
from undertrim.record.source import Pointer, read
from undertrim.record.spreading import spread
from undertrim.record.store import Workspace

WORKSPACE = Workspace(Path(__file__).parents[1])
KINDS = ("vehicle", "gear")
SELDOM = Path(__file__).parent / "publish/seldom.yaml"
"""A record that uses what no shipped one has a reason to use."""


@dataclass(frozen=True)
class Use:
    """A field where it is used in a record."""

    path: Path
    kind: str
    pointer: Pointer
    node: Node
    required: bool

    @property
    def value(self) -> Any:
        """As typed."""
        return at(data(self.path), self.pointer)


@cache
def uses() -> dict[str, list[Use]]:
    """Where each field is used, by the thing it belongs to and its name."""
    found: dict[str, list[Use]] = {field: [] for kind in KINDS for field in _written(root(kind), set())}
    for path, kind in records().items():
        nodes = {field.pointer: field.node for field in walk(data(path), kind)}
        for pointer, node in nodes.items():
            above = nodes.get(pointer[:-1])
            if above and pointer and pointer[-1] in above.schema.get("properties", ()):
                required = pointer[-1] in above.schema.get("required", ())
                found.get(_called(above, str(pointer[-1])), []).append(Use(path, kind, pointer, node, required))
    return found


@cache
def records() -> dict[Path, str]:
    """The shipped records and the one of what is seldom used, each with its kind."""
    return {**{path: WORKSPACE.kind(path) for path in WORKSPACE.files()}, SELDOM: "vehicle"}


def at(data: Any, pointer: Pointer) -> Any:
    """What stands at a place."""
    for step in pointer:
        data = data[step]
    return data


@cache
def data(path: Path) -> Any:
    """What a record says, every value as text."""
    return (WORKSPACE.load(path).source if WORKSPACE.kind(path) else spread(read(path))).data


def _written(node: Node, seen: set[Place]) -> Iterator[str]:
    """The names of all fields at and below a node."""
    if node.home in seen:
        return
    seen.add(node.home)
    for field in node.schema.get("properties", ()):
        below = node.child(field)
        if below and not (field in node.schema.get("required", ()) and holds_fields(below)):
            yield _called(node, field)
    for step in (*node.schema.get("properties", ()), "*", 0):
        below = node.child(step)
        if below:
            yield from _written(below, seen)


def holds_fields(node: Node) -> bool:
    """Whether a field is only the home of others, which speak for it."""
    inner = (node.child(step) for step in ("*", 0))
    return bool(node.schema.get("properties")) or any(below and holds_fields(below) for below in inner)


def _called(above: Node, field: str) -> str:
    """A field as its schema calls it: by the names that lead to it in its schema."""
    document, steps = above.home
    path = [step for step in steps if step not in ("$defs", "properties", "items", "additionalProperties")]
    return ".".join([*(path or [document]), field])
