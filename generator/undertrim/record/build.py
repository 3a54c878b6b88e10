"""Builds the typed model from data that the schema has passed."""

from collections.abc import Callable, Mapping
from functools import cache
from types import UnionType
from typing import Annotated, Any, Literal, get_args, get_origin

import cattrs
from cattrs.gen import make_dict_structure_fn, override

from undertrim.record import model, units
from undertrim.record.gear import GEAR, GearFacts, GearRecord
from undertrim.record.own_text import in_language
from undertrim.record.source import Data
from undertrim.resources import table

KEYED = {
    "variants", "choices", "areas", "closures", "conflicts", "evidence", "preps", "parts", "tethers", "openings", "connectors", "pins", "functions",
    "verified_parts", "duties", "before", "after", "sound", "ladders", "runs", "leads", "tried",
}  # fmt: skip
"""Mappings whose keys are the ids of what stands under them."""


def vehicle(data: Data) -> model.VehicleRecord:
    """The vehicle record in `data`."""
    record = _converter().structure(_with_ids(data), model.VehicleRecord)
    return in_language(record, record.lang)


def gear(data: Data) -> GearRecord:
    """The gear record in `data`."""
    record = _converter().structure(_with_ids(data), GearRecord)
    return in_language(record, record.lang)


def car_seen(data: Data) -> model.CarSeen:
    """A car that somebody looked at, from what evidence says of it."""
    return _converter().structure(data, model.CarSeen)


def section(name: str, data: Data) -> model.VehicleFacts | GearFacts:
    """What a record says of itself, from its section `vehicle` or `gear`."""
    if name == "vehicle":
        return _converter().structure(_with_ids(data), model.VehicleFacts)
    facts: GearFacts = _converter().structure(_with_ids(data), GEAR[data["kind"]])
    return facts


def _with_ids(data: Data) -> Data:
    """A copy in which everything that stands under an id carries that id."""
    if isinstance(data, list):
        return [_with_ids(item) for item in data]
    if not isinstance(data, dict):
        return data
    return {
        key: _identified(value) if key in KEYED and isinstance(value, dict) else _with_ids(value)
        for key, value in data.items()
    }


def _identified(things: dict[str, Data]) -> dict[str, Data]:
    """The same for what stands under ids: an id may be any word, even one of `KEYED`."""
    return {
        name: {**inner, "id": name} if isinstance(inner := _with_ids(thing), dict) else inner
        for name, thing in things.items()
    }


@cache
def _converter() -> cattrs.Converter:
    # Long because it is one table: how each type is read, a line each.
    converter = cattrs.Converter(forbid_extra_keys=False, detailed_validation=False)
    converter.register_structure_hook_func(_is_quantity, _quantity)
    converter.register_structure_hook(model.When, _when)
    converter.register_structure_hook(model.Month, _month)
    converter.register_structure_hook_func(lambda wanted: wanted == model.Count | None, _count)
    converter.register_structure_hook_func(lambda wanted: wanted == model.Sources, _sources)
    converter.register_structure_hook_func(_is_literal, lambda value, _: value)
    converter.register_structure_hook(model.Ref, lambda value, _: _ref(converter, value))
    converter.register_structure_hook(
        model.Built, make_dict_structure_fn(model.Built, converter, from_=override(rename="from"))
    )
    converter.register_structure_hook(
        model.Ladder, make_dict_structure_fn(model.Ladder, converter, return_=override(rename="return"))
    )
    converter.register_structure_hook(
        model.Run, make_dict_structure_fn(model.Run, converter, from_=override(rename="from"))
    )
    converter.register_structure_hook(
        model.Evidence, make_dict_structure_fn(model.Evidence, converter, with_=override(rename="with"))
    )
    converter.register_structure_hook_func(
        lambda wanted: wanted == model.Opening, lambda value, _: _of_its_kind(converter, value, model.OPENINGS)
    )
    converter.register_structure_hook_func(
        lambda wanted: wanted == GearFacts, lambda value, _: _of_its_kind(converter, value, GEAR)
    )
    fastener = make_dict_structure_fn(model.Fastener, converter)
    converter.register_structure_hook(model.Fastener, lambda value, wanted: fastener(_with_kind(value), wanted))
    by_field = make_dict_structure_fn(model.CarSeen, converter, is_=override(rename="is"))
    converter.register_structure_hook(model.CarSeen, lambda value, wanted: _car(by_field, value, wanted))
    return converter


def _of_its_kind(converter: cattrs.Converter, value: dict[str, Any], classes: Mapping[str, type[Any]]) -> Any:
    return converter.structure(value, classes[value["kind"]])


def _with_kind(value: dict[str, Any]) -> dict[str, Any]:
    """A fastener, whose kind is the field under which it says what it is; both are empty where the schema refused that."""
    kind = next((name for name in table("fasteners") if name in value), "")
    return {**value, "kind": kind, "what": value.get(kind, "")}


def _is_literal(wanted: Any) -> bool:
    origin: Any = get_origin(wanted)
    return origin is Literal


def _is_quantity(wanted: Any) -> bool:
    optional = [part for part in get_args(wanted) if get_origin(part) is Annotated]
    union = get_origin(wanted) is UnionType
    return _kind(wanted) is not None or (union and len(optional) == 1 and _kind(optional[0]) is not None)


def _kind(wanted: Any) -> str | None:
    if get_origin(wanted) is not Annotated:
        return None
    return next((mark.name for mark in wanted.__metadata__ if isinstance(mark, model.Kind)), None)


def _quantity(value: str | None, wanted: Any) -> units.Quantity | model.Blank | None:
    kind = _kind(wanted) or next(kind for part in get_args(wanted) if (kind := _kind(part)))
    if value is None:
        return None
    if value in tuple(model.Blank):
        return model.Blank(value)
    return units.parse(value, kind)


def _when(value: dict[str, Any], _: Any) -> model.When:
    return model.When(tuple((name, _words(choice)) for name, choice in value.items()))


def _words(value: str | list[str]) -> tuple[str, ...]:
    return (value,) if isinstance(value, str) else tuple(value)


def _month(value: str, _: Any) -> model.Month:
    year, month = value.split("-")
    return model.Month(int(year), int(month))


def _count(value: str | None, _: Any) -> model.Count | None:
    if value is None:
        return None
    return model.Blank.UNKNOWN if value == "unknown" else int(value)


def _sources(value: str | list[str], _: Any) -> tuple[str, ...]:
    return _words(value)


def _car(
    by_field: Callable[[dict[str, Any], Any], model.CarSeen], value: str | dict[str, Any], wanted: Any
) -> model.CarSeen:
    return model.CarSeen(value) if isinstance(value, str) else by_field(value, wanted)


def _ref(converter: cattrs.Converter, value: str | dict[str, Any]) -> model.Ref:
    if isinstance(value, str):
        return model.Ref(value)
    when = _when(value["when"], None) if "when" in value else model.ALWAYS
    return model.Ref(value["part"], when, value.get("side"))
