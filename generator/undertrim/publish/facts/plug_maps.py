"""The other maps of a plug as data: what differs, for which cars each is, and how to tell at the car."""

from collections.abc import Iterator
from typing import Any

from undertrim.derive.cars import AnyChoice
from undertrim.derive.wiring import differences
from undertrim.derive.wiring.differences import Comparison, Difference
from undertrim.publish.facts import words
from undertrim.publish.facts.pin_colours import colour
from undertrim.publish.facts.wiring import function_name
from undertrim.record.model import Built, Connector, Pin, VehicleRecord
from undertrim.words import say

Data = dict[str, Any]

_BOTH = "Some car would have both maps: the record does not say which of them is for it."


def maps(record: VehicleRecord, connector: Connector) -> list[Data]:
    """Every other map of the same plug, compared with this one."""
    others = differences.maps_beside(record, connector)
    return [_beside(record, differences.compare(connector, other)) for other in others]


def told_by(record: VehicleRecord, connector: Connector) -> list[Data]:
    """How to know that a map is for this car; empty where it is for all of them."""
    return [
        {"ask": answer.ask, "choices": [_choice(choice) for choice in answer.choices]}
        for answer in differences.answers(record, connector)
    ]


def _beside(record: VehicleRecord, found: Comparison) -> Data:
    return {
        "id": found.second.id,
        "name": found.second.name,
        "when": words.when(record, found.second.when),
        "told_by": told_by(record, found.second),
        "warning": "" if found.apart else _BOTH,
        "differences": [_difference(record, found, item) for item in found.differences],
    }


def _choice(choice: AnyChoice) -> Data:
    return {"label": choice.label, "tell": choice.tell, "built": _built(choice.built)}


def _built(built: Built | None) -> str:
    return f"built from {built.from_} until before {built.to}" if built else ""


def _difference(record: VehicleRecord, found: Comparison, item: Difference) -> Data:
    return {
        "pin": item.pin,
        "kind": item.kind,
        "what": list(item.what),
        "words": f"Pin {item.pin}: {'; '.join(_said(record, found, item))}",
    }


def _said(record: VehicleRecord, found: Comparison, item: Difference) -> Iterator[str]:
    """What this map says and what the other one does."""
    first, second = item.first, item.second
    if first and second:
        if "function" in item.what:
            yield f"{function_name(first.function)} here, {function_name(second.function)} there"
        if "colour" in item.what:
            yield f"{_colour(found.first, first)} here, {_colour(found.second, second)} there"
        if "cars" in item.what:
            yield f"in {_cars(record, first)} here, in {_cars(record, second)} there"
    elif first:
        yield f"{function_name(first.function)} here, {_none(item)} there"
    elif second:
        yield f"{_none(item)} here, {function_name(second.function)} there"


def _none(item: Difference) -> str:
    return "not recorded" if item.kind == "open" else "empty"


def _cars(record: VehicleRecord, pin: Pin) -> str:
    return say(words.when(record, pin.when)) or "every car of the map"


def _colour(connector: Connector, pin: Pin) -> str:
    found = colour(pin.colour, connector.scheme)
    return str(found["words"]) if found else "no colour"
