"""What may be typed is held in the model, and stands in a shipped record.

A field that is added to a schema fails here by its name until it has a home in the model and a record that uses it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass, make_dataclass
from functools import cache
from pathlib import Path
from types import UnionType
from typing import Any, get_args, get_origin, get_type_hints

import pytest

from undertrim.record.fields import Node, root, walk
from undertrim.record.gear import GearFacts, GearRecord
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Pointer, read
from undertrim.record.store import Workspace

WORKSPACE = Workspace(Path(__file__).parents[2])
MODELS = {"vehicle": VehicleRecord, "gear": GearRecord}


UNTRIED = {
    "after.side",
    "afterBattery.checked_none",
    "caution.source",
    "connector.pins.contact",
    "connector.pins.place",
    "connector.pins.place.column",
    "connector.pins.place.row",
    "connector.scheme",
    "functionFact.draws",
    "functionFact.supply",
    "opening.high_voltage",
    "prep.wait",
    "prep.wait.source",
    "prep.wait.time",
    "prep.wait.why",
    "prep.when",
    "run.when",
    "todo.source",
    "vehicle.phase",
}
"""Fields that stand in no shipped record yet."""

Home = tuple[str, ...]


# Held in the model


def unheld(node: Node, wanted: Any, name: str) -> Iterator[str]:
    """The fields below a node that the type for it does not hold."""
    wanted = _plain(wanted)
    named = node.schema.get("properties", {})
    if is_dataclass(wanted) and named:
        types = get_type_hints(wanted, include_extras=True)
        for field in named:
            held = types.get(field, types.get(f"{field}_"))
            below = node.child(field)
            assert below
            yield from [f"{name}.{field}"] if held is None else unheld(below, held, field)
    elif get_origin(wanted) in (dict, tuple) and get_args(wanted):
        step: str | int = "*" if get_origin(wanted) is dict else 0
        inner = node.child(step)
        if inner:
            yield from unheld(inner, get_args(wanted)[-1 if step else 0], name)


def _plain(wanted: Any) -> Any:
    """The type without `| None`."""
    if get_origin(wanted) is UnionType:
        return next((part for part in get_args(wanted) if is_dataclass(part) or get_origin(part) is not None), wanted)
    return wanted


@pytest.mark.parametrize("kind", MODELS)
def test_the_model_holds_every_field(kind: str) -> None:
    assert list(unheld(root(kind), MODELS[kind], kind)) == []


def test_a_field_without_a_home_in_the_model_is_named() -> None:
    less = make_dataclass("less", [(item.name, item.type) for item in fields(GearFacts) if item.name != "terminals"])
    whole = make_dataclass("whole", [("format", int), ("demo", str), ("gear", less)])
    assert list(unheld(root("gear"), whole, "gear")) == ["gear.terminals"]


# Shown


@dataclass(frozen=True)
class Use:
    """A field where it is used in a shipped record."""

    path: Path
    kind: str
    pointer: Pointer
    node: Node
    required: bool


@cache
def uses() -> dict[str, list[Use]]:
    """Where each field is used, by the thing it belongs to and its name."""
    found: dict[str, list[Use]] = {field: [] for kind in MODELS for field in written(root(kind), (kind,), set())}
    for path in WORKSPACE.files():
        kind = WORKSPACE.kind(path)
        nodes = {field.pointer: field.node for field in walk(data(path), kind)}
        for pointer, node in nodes.items():
            above = nodes.get(pointer[:-1])
            if above and pointer and pointer[-1] in above.schema.get("properties", ()):
                required = pointer[-1] in above.schema.get("required", ())
                found.get(called(above, str(pointer[-1])), []).append(Use(path, kind, pointer, node, required))
    return found


def holds_fields(node: Node) -> bool:
    """Whether a field is only the home of others, which speak for it."""
    inner = (node.child(step) for step in ("*", 0))
    return bool(node.schema.get("properties")) or any(below and holds_fields(below) for below in inner)


def written(node: Node, name: Home, seen: set[Any]) -> Iterator[str]:
    """The names of all fields at and below a node."""
    if node.home in seen:
        return
    seen.add(node.home)
    for field in node.schema.get("properties", ()):
        below = node.child(field)
        if below and not (field in node.schema.get("required", ()) and holds_fields(below)):
            yield called(node, field)
    for step in (*node.schema.get("properties", ()), "*", 0):
        below = node.child(step)
        if below:
            yield from written(below, name, seen)


def called(above: Node, field: str) -> str:
    """A field as its schema calls it: by the names that lead to it in its schema."""
    document, steps = above.home
    path = [step for step in steps if step not in ("$defs", "properties", "items", "additionalProperties")]
    return ".".join([*(path or [document]), field])


@cache
def data(path: Path) -> Any:
    return read(path).data


@pytest.mark.parametrize("field", [field for field, found in uses().items() if not found])
def test_a_field_that_no_shipped_record_uses_is_known(field: str) -> None:
    assert field in UNTRIED, "use it in a shipped record"
