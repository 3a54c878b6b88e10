"""What may be typed is held in the model, and what is typed is shown: changed in a shipped record, it changes what is published.

A field that is added to a schema fails here by its name until it has a home in the model, stands in a shipped record and is published
there, or stands in `NOT_SHOWN` with the reason.
"""

import copy
import json
import os
import re
from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass, make_dataclass, replace
from functools import cache
from pathlib import Path
from types import UnionType
from typing import Any, get_args, get_origin, get_type_hints

import pytest

from undertrim.derive.fit.stock import Gear, Stock
from undertrim.publish import facts
from undertrim.publish.facts.vehicle import Unplannable
from undertrim.record import build
from undertrim.record.fields import Node, root, walk
from undertrim.record.gear import GearFacts, GearRecord
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Pointer, read
from undertrim.record.store import Entry, Workspace

WORKSPACE = Workspace(Path(__file__).parents[2])
MODELS = {"vehicle": VehicleRecord, "gear": GearRecord}

_FORM = "it says how the file is to be read"
_RULES = "only rules go by it"
_SOURCE = "evidence is shown as a whole, and at a fact where claims about it differ"
_OPEN = "it should be shown and is not yet"
NOT_SHOWN = {
    "vehicle.format": _FORM, "gear.format": _FORM, "gear.demo": _FORM,
    "vehicle.boundaries": _RULES, "vehicle.confirmed_across": _RULES,
    "vehicle.closures": _RULES, "closure.latch": _RULES, "closure.key": _RULES,
    **{f"{name}.source": _SOURCE for name in (
        "vehicle", "variant", "fastener", "areaFacts", "closure", "tether", "opening.depth", "connector.pins", "functionFact",
        "soundSystem", "afterBattery",
    )},
    "gear.nominal": _OPEN, "gear.least_load": _OPEN, "gear.terminals": _OPEN, "gear.note": _OPEN, "gear.assembly.part": _OPEN,
    "fastener.role": _OPEN,
}  # fmt: skip
"""Fields that are published nowhere, with the reason."""

UNTRIED = {
    "vehicle.phase", "prep.when", "prep.wait", "after.side", "prep.wait.time", "prep.wait.why", "prep.wait.source", "caution.source",
    "opening.high_voltage", "connector.scheme", "connector.pins.contact", "connector.pins.place", "connector.pins.place.row",
    "connector.pins.place.column", "functionFact.supply", "functionFact.draws", "run.when", "afterBattery.checked_none", "todo.source",
    "caution.when", "opening.behind", "ladder.buttons", "verified.facts",
}  # fmt: skip
"""Fields that stand in no shipped record, or there only where no other value can be put in their place."""

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
    """A field as `NOT_SHOWN` calls it: by the names that lead to it in its schema."""
    document, steps = above.home
    path = [step for step in steps if step not in ("$defs", "properties", "items", "additionalProperties")]
    return ".".join([*(path or [document]), field])


@cache
def data(path: Path) -> Any:
    return read(path).data


@cache
def vehicles() -> list[Entry]:
    entries = [WORKSPACE.load(path) for path in WORKSPACE.files([WORKSPACE.records / "vehicles"])]
    return sorted(entries, key=lambda item: len(item.source.text))


@cache
def stock() -> Stock:
    return Stock(tuple(_gear(path, data(path)) for path in WORKSPACE.files([WORKSPACE.records / "gear"])))


def _gear(path: Path, typed: Any) -> Gear:
    return Gear(path.stem, build.gear(typed).gear)


@cache
def published(path: Path) -> str:
    [entry] = [item for item in vehicles() if item.path == path]
    return said(entry, stock())


def said(entry: Entry, shelf: Stock) -> str:
    """All that page, sheets and data are made from."""
    return json.dumps(facts.vehicle(entry, None, shelf))


def others(use: Use, value: Any) -> Iterator[Any]:
    """Other values that may stand in a field; None for leaving it out."""
    spec = use.node.schema
    if not use.required:
        yield None
    if "drive" in spec:
        yield "T45"
    elif "enum" in spec:
        yield from (other for other in spec["enum"] if other != value)
    elif isinstance(value, list) and len(value) > 1:
        yield value[:1]
    elif isinstance(value, dict) and len(value) > 1:
        yield dict(list(value.items())[1:])
    elif isinstance(value, str):
        yield (
            re.sub(r"\d+", lambda found: str(int(found[0]) + 1), value, count=1)
            if value[:1].isdigit()
            else f"{value} q"
        )


def changed(use: Use, value: Any) -> Any:
    whole = copy.deepcopy(data(use.path))
    inner = whole
    for step in use.pointer[:-1]:
        inner = inner[step]
    if value is None:
        del inner[use.pointer[-1]]
    else:
        inner[use.pointer[-1]] = value
    return whole


def shows(use: Use) -> bool:
    """Whether some other value changes what is published of some vehicle."""
    value = data(use.path)
    for step in use.pointer:
        value = value[step]
    return any(_differs(use, changed(use, other)) for other in others(use, value))


def _differs(use: Use, whole: Any) -> bool:
    try:
        if use.kind == "vehicle":
            [entry] = [item for item in vehicles() if item.path == use.path]
            return said(replace(entry, record=build.vehicle(whole)), stock()) != published(use.path)
        shelf = Stock(tuple(_gear(use.path, whole) if item.id == use.path.stem else item for item in stock().items))
        return any(said(entry, shelf) != published(entry.path) for entry in vehicles())
    except (Unplannable, ValueError, KeyError, AssertionError, RuntimeError):
        return False  # no record that could be: another change is tried


def some(found: list[Use]) -> list[Use]:
    """A few uses, of different records first."""
    by_record = {use.path: use for use in reversed(found)}
    return sorted([*by_record.values(), *found[:4]], key=lambda use: use.path.stat().st_size)[:6]


def test_the_lists_name_fields() -> None:
    assert sorted({*NOT_SHOWN, *UNTRIED}.difference(uses())) == []


@pytest.mark.parametrize("field", [field for field, found in uses().items() if not found])
def test_a_field_that_no_shipped_record_uses_is_known(field: str) -> None:
    assert field in UNTRIED, "use it in a shipped record"


@pytest.mark.skipif(not os.environ.get("UNDERTRIM_SHOWN"), reason="takes minutes: set UNDERTRIM_SHOWN=1")
@pytest.mark.parametrize("field", [field for field in uses() if field not in {*NOT_SHOWN, *UNTRIED}])
def test_what_is_typed_is_shown(field: str) -> None:
    assert any(shows(use) for use in some(uses()[field])), "it is published nowhere"
