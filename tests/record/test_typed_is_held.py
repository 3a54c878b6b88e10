"""What may be typed is held in the model, and stands in a record.

A field that is added to a schema fails here by its name until it has a home in the model and a record that uses it.
"""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, make_dataclass
from functools import reduce
from operator import or_
from types import UnionType
from typing import Any, get_args, get_origin, get_type_hints

import pytest

import typed
from undertrim.record.fields import Node, root
from undertrim.record.gear import GEAR, GearRecord
from undertrim.record.model import Fastener, VehicleRecord
from undertrim.record.model.kinds.speaker import SpeakerGear
from undertrim.resources import table

SELDOM = {
    "after.side",
    "afterBattery.checked_none",
    "afterBattery.not_listed",
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
    "run.reached_for",
    "run.when",
    "soundSystem.powers",
    "todo.source",
    "vehicle.phase",
    "verified.taken",
    "vehicle.verified_parts",
    "verifiedPart.by",
    "verifiedPart.facts",
    "verifiedPart.of",
    "verifiedPart.on",
    "verifiedPart.side",
    "verifiedPart.taken",
}
"""Fields that stand in no shipped record, and are tried with a made-up one."""
MODELS = {"vehicle": VehicleRecord, "gear": GearRecord}


# Held in the model


def unheld(node: Node, wanted: Any, name: str) -> Iterator[str]:
    """The fields below a node that the type for it does not hold."""
    if kinds := _kinds(wanted):
        yield from _unheld_by_kinds(node, kinds, name)
        return
    wanted = _plain(wanted)
    named = node.schema.get("properties", {})
    if is_dataclass(wanted) and named:
        types = get_type_hints(wanted, include_extras=True)
        told_by_kind = table("fasteners") if wanted is Fastener else ()  # its `kind` and `what` hold whichever is typed
        for field in (one for one in named if one not in told_by_kind):
            held = types.get(field, types.get(f"{field}_"))
            below = node.child(field)
            assert below
            yield from [f"{name}.{field}"] if held is None else unheld(below, held, field)
    elif get_origin(wanted) in (dict, tuple) and get_args(wanted):
        step: str | int = "*" if get_origin(wanted) is dict else 0
        inner = node.child(step)
        if inner:
            yield from unheld(inner, get_args(wanted)[-1 if step else 0], name)


def _kinds(wanted: Any) -> dict[str, Any]:
    """The class of each kind, where the type is a choice between kinds."""
    classes = [part for part in get_args(wanted) if is_dataclass(part)]
    return {part.kind: part for part in classes if hasattr(part, "kind")} if len(classes) > 1 else {}


def _unheld_by_kinds(node: Node, kinds: dict[str, Any], name: str) -> Iterator[str]:
    """The same where the schema names the fields of each kind; also the kinds, and fields of a class, that the schema does not name."""
    stated = {branch["if"]["properties"]["kind"]["const"]: branch["then"] for branch in node.schema["allOf"]}
    yield from (f"{name} of kind {kind}" for kind in {*node.schema["properties"]["kind"]["enum"], *stated} ^ {*kinds})
    for kind, wanted in kinds.items():
        types = get_type_hints(wanted, include_extras=True)
        allowed = [field for field in stated[kind]["propertyNames"]["enum"] if field != "kind"]
        yield from (
            f"{kind}: {one.name}" for one in fields(wanted) if one.name not in (*allowed, "id", "form_of", "named_for")
        )
        for field in allowed:
            below = node.child(field)
            assert below
            held = types.get(field) if field in {one.name for one in fields(wanted)} else None
            yield from [f"{kind}.{field}"] if held is None else unheld(below, held, f"{kind}.{field}")


def _plain(wanted: Any) -> Any:
    """The type without `| None`."""
    if get_origin(wanted) is UnionType:
        return next((part for part in get_args(wanted) if is_dataclass(part) or get_origin(part) is not None), wanted)
    return wanted


@pytest.mark.parametrize("kind", MODELS)
def test_the_model_holds_every_field(kind: str) -> None:
    assert list(unheld(root(kind), MODELS[kind], kind)) == []


def _with_gear(kinds: Any) -> Any:
    """The class of gear records with other kinds of gear."""
    held = get_type_hints(GearRecord, include_extras=True) | {"gear": kinds}
    return make_dataclass("whole", held.items())


def test_a_field_without_a_home_in_the_model_is_named() -> None:
    held = [(item.name, item.type) for item in fields(SpeakerGear) if item.name != "terminals"]
    less = make_dataclass("less", [*held, ("flavour", str)], namespace={"kind": "speaker"})
    others = [kind for kind in GEAR.values() if kind is not SpeakerGear]
    assert sorted(unheld(root("gear"), _with_gear(reduce(or_, others, less)), "gear")) == [
        "speaker.terminals",
        "speaker: flavour",
    ]


def test_a_kind_without_a_class_is_named() -> None:
    others = [kind for kind in GEAR.values() if kind is not SpeakerGear]
    assert list(unheld(root("gear"), _with_gear(reduce(or_, others)), "gear")) == ["gear of kind speaker"]


# Used


@pytest.mark.parametrize("field", typed.uses())
def test_a_record_uses_every_field(field: str) -> None:
    assert typed.uses()[field], "use it in a shipped record, or in tests/publish/seldom.yaml where none has a reason to"


def test_what_no_shipped_record_uses_is_known() -> None:
    """The record of what is seldom used is needed for each of these; where a shipped record uses one, it leaves the list."""
    shipped = {name for name, uses in typed.uses().items() if any(use.path != typed.SELDOM for use in uses)}
    assert typed.uses().keys() - shipped == SELDOM
