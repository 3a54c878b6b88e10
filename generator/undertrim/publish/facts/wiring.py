"""Wiring notes as data: plugs pin by pin, functions without a pin, duties of the factory unit."""

from collections.abc import Iterator
from typing import Any

from undertrim.publish.facts import words
from undertrim.record import colours
from undertrim.record.model import Connector, Duty, FunctionFact, Pin, VehicleRecord

Data = dict[str, Any]

_BY = {
    "wire": "by wire, elsewhere",
    "data": "by data: needs an interface",
    "absent": "absent in this car",
    "unknown": words.LOOK_UP,
}
_KEPT = {
    "stays": "stays where it is",
    "moved": "moves to the new parts",
    "interface": "kept by an interface",
    "none": "LOST with the factory unit",
    "unknown": "unknown whether it can be kept",
}
_VIEW = {"wires": "looking at the wires", "contacts": "looking at the contacts"}


def function_name(function: str) -> str:
    """A function in words: `front left +`."""
    return function.replace("-plus", " +").replace("-minus", " −").replace("-", " ")


def connector(record: VehicleRecord, item: Connector) -> Data:
    """One plug."""
    return {
        "id": item.id,
        "name": item.name,
        "view": _VIEW[item.view],
        "size": f"{item.rows} × {item.columns}",
        "standard": {"iso-10487-a": "ISO 10487 block A", "iso-10487-b": "ISO 10487 block B"}.get(item.standard, ""),
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
        "pins": [pin(record, entry) for entry in item.pins.values()],
        "source": list(item.source),
    }


def pin(record: VehicleRecord, item: Pin) -> Data:
    """One contact, its colour in words, letters and screen colours."""
    return {
        "id": item.id,
        "function": item.function,
        "function_words": function_name(item.function),
        "colour": colour(item.colour),
        "note": item.note,
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
    }


def colour(text: str) -> Data | None:
    """A wire colour; None where it is not recorded. A colour the table does not know is shown as typed."""
    if not text:
        return None
    try:
        wire = colours.parse(text)
    except colours.ColourError:
        return {"words": text, "iec": "", "base": None, "tracers": []}
    return {"words": wire.words, "iec": wire.iec, "base": wire.base.hex, "tracers": list(wire.stripes)}


def function(record: VehicleRecord, item: FunctionFact) -> Data:
    """A function that stands on no recorded pin."""
    return {
        "id": item.id,
        "name": function_name(item.id),
        "by": item.by,
        "by_words": _BY[item.by],
        "note": item.note,
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
    }


def duty(record: VehicleRecord, item: Duty) -> Data:
    """A duty of the factory unit."""
    return {
        "id": item.id,
        "name": item.id.replace("-", " "),
        "kept_by": item.kept_by,
        "kept_words": _KEPT[item.kept_by],
        "note": item.note,
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
    }


def by_data(record: VehicleRecord) -> Iterator[FunctionFact]:
    """Functions that arrive as data, so that a receiver needs an interface for them."""
    return (item for item in record.functions.values() if item.by == "data")
