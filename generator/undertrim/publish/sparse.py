"""The data beside a vehicle's pages: its facts without what is empty and without what pages alone are made of, each caution once; and their description.

An empty text, list or object says nothing, and a fifth of the bytes were that. `false` and `null` stay: a blank never reads as no, or as unknown.
"""

from collections.abc import Mapping, Sequence
from typing import Any

Schema = dict[str, Any]

PAGE_ALONE: Mapping[str, frozenset[str]] = {
    "vehicle": frozenset({"from_above", "removal_order", "asked"}),
    "opening": frozenset({"drawn", "form"}),
    "connector": frozenset({"meter"}),
    "plug": frozenset({"faces"}),
    "step": frozenset({"state_words", "time"}),
    "fastener-line": frozenset({"head", "counts", "fate_words", "later_words"}),
    "tether-line": frozenset({"act_words", "kind_words", "later_words"}),
}
"""What only the page wants, by the definition it belongs to: drawings in their own units, what its scripts reckon with or ask, and words for what stands beside them as a code or a number."""

_WHOLE = ("plans", "visit_words")  # in this order: a set has another in each process
"""Facts whose lists are found by ids: what such an id has none of is not the same as an id that is not there."""
_HOLDS = frozenset({dict, list})
_CAN_BE_EMPTY = (str, list, dict)


def sparse(data: Any) -> Any:
    """Plain data without the keys of what is empty; an entry of a list keeps its place."""
    if type(data) is dict:  # as nearly all of it is, and asking for the type alone takes half the time
        left = [(key, sparse(value) if type(value) in _HOLDS else value) for key, value in data.items()]
        return {key: value for key, value in left if value or not isinstance(value, _CAN_BE_EMPTY)}
    return [sparse(value) if type(value) in _HOLDS else value for value in data]


def of_vehicle(facts: Mapping[str, Any]) -> Any:
    """What stands beside the pages of a vehicle."""
    plugs = ({**plug, "drawn": _left("plug", plug["drawn"])} for plug in facts["connectors"])
    openings = [_left("opening", opening) for opening in facts["openings"]]
    some = {key: value for key, value in _left("vehicle", facts).items() if key not in _WHOLE}
    left = {**some, "openings": openings, "connectors": [_left("connector", plug) for plug in plugs]}
    steps = list(map(_step, facts["steps"]))
    return {**sparse({**left, **_told_once(steps)}), **{key: facts[key] for key in _WHOLE}}


def _step(step: Mapping[str, Any]) -> dict[str, Any]:
    fasteners, tethers = ([_left(f"{kind}-line", one) for one in step[f"{kind}s"]] for kind in ("fastener", "tether"))
    return {**_left("step", step), "fasteners": fasteners, "tethers": tethers}


def _told_once(steps: Sequence[Mapping[str, Any]]) -> dict[str, Any]:
    """The cautions of all steps, each once, and the steps with the places of theirs: a few are told before nearly every step."""
    places: dict[tuple[Any, ...], int] = {}
    found = [
        {**step, "cautions": [places.setdefault(tuple(told.items()), len(places)) for told in step["cautions"]]}
        for step in steps
    ]
    return {"cautions": [dict(told) for told in places], "steps": found}


def _left(of: str, fact: Mapping[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in fact.items() if key not in PAGE_ALONE[of]}


def description(schema: Schema) -> Schema:
    """A description of facts as one of what stands beside a page: nothing is required that may be empty."""
    defined = _with_places(schema["$defs"])
    return {**schema, "$defs": {name: _described(name, block, defined) for name, block in defined.items()}}


def _with_places(defined: dict[str, Schema]) -> dict[str, Schema]:
    step, vehicle = (defined[name]["properties"] for name in ("step", "vehicle"))
    once = {**step["cautions"], "description": "What to mind before the steps that name it by its place here, from 0."}
    places = {
        **step["cautions"],
        "description": "What to mind before it, by places in the vehicle's list.",
        "items": {"type": "integer"},
    }
    told = {"step": {**step, "cautions": places}, "vehicle": {**vehicle, "cautions": once}}
    return {name: {**block, "properties": told[name]} if name in told else block for name, block in defined.items()}


def _described(name: str, block: Schema, defined: dict[str, Schema]) -> Schema:
    if "properties" not in block:
        return block
    alone = PAGE_ALONE.get(name, frozenset())
    fields = {key: field for key, field in block["properties"].items() if key not in alone}
    required = [key for key in block.get("required", ()) if key in fields and not _may_be_empty(fields[key], defined)]
    return {**block, "properties": fields, "required": required}


def _may_be_empty(field: Schema, defined: dict[str, Schema]) -> bool:
    if "$ref" in field:
        return _may_be_empty(defined[field["$ref"].rpartition("/")[2]], defined)
    if "anyOf" in field:
        return any(_may_be_empty(one, defined) for one in field["anyOf"])
    if "enum" in field or "const" in field:
        return "" in field.get("enum", ())
    kinds = field["type"] if isinstance(field["type"], list) else [field["type"]]
    needed = [field["properties"][key] for key in field.get("required", ())]
    return (
        "string" in kinds
        or "array" in kinds
        or ("object" in kinds and all(_may_be_empty(key, defined) for key in needed))
    )
