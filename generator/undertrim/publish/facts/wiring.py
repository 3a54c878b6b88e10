"""Wiring notes as data: plugs pin by pin, functions without a pin, duties of the factory unit."""

from collections.abc import Iterator
from typing import Any

from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.needs import of_plug
from undertrim.publish.facts import doubts, words
from undertrim.publish.facts.pin_colours import colour
from undertrim.record.model import Blank, Connector, FunctionFact, Pin, VehicleRecord
from undertrim.record.units import Quantity
from undertrim.words import say

Data = dict[str, Any]

_BY = {
    "wire": "by wire, elsewhere",
    "data": "by data: needs an interface",
    "absent": "absent in this car",
    "unknown": words.LOOK_UP,
}
_VIEW = {"wires": "looking at the wires", "contacts": "looking at the contacts"}


def function_name(function: str) -> str:
    """A function in words: `front left +`."""
    return functions().functions[function].words


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
        "pins": [pin(record, item, entry) for entry in item.pins.values()],
        "conflicts": doubts.said(record, of_plug(record, item)),
        "source": list(item.source),
    }


def pin(record: VehicleRecord, plug: Connector, item: Pin) -> Data:
    """One contact: address, function, colour in words, letters and screen colours, and what is known of the wire."""
    return {
        "id": item.id,
        "address": f"{plug.id}/{item.id}",
        "function": item.function,
        "function_words": function_name(item.function),
        "colour": colour(item.colour, plug.scheme),
        "wire": [said for said in _wire(item) if said],
        "metered": item.metered == "yes",
        "conflicts": doubts.marks(record, ("connectors", plug.id, "pins", item.id)),
        "note": item.note,
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
    }


def _wire(item: Pin | FunctionFact) -> Iterator[str]:
    """What is recorded of a wire besides its colour, in words."""
    yield _BEHAVES.get(item.behaves, "")
    yield _known("carries", "what voltage it carries", item.supply)
    yield _known("what hangs on it draws", "the current of what hangs on it", item.draws)
    if isinstance(item, Pin):
        yield f"fuse {say(words.quantity(item.fuse))}" if item.fuse is not None else ""
        yield f"wire {item.gauge.replace('mm2', 'mm²')}" if item.gauge else ""
        yield f"contact {say(words.quantity(item.contact))} wide" if item.contact is not None else ""
        yield "proved with a meter" if item.metered == "yes" else ""


def _known(lead: str, unknown: str, value: Quantity | Blank | None) -> str:
    """A quantity after its lead, or that it is not known; empty where nothing is recorded."""
    if value is None:
        return ""
    return f"{lead} {say(words.quantity(value))}" if isinstance(value, Quantity) else f"{unknown} is unknown"


_BEHAVES = {
    "steady": "always live",
    "on-off": "plus, on or off",
    "dimmed-plus": "plus, dimmed",
    "dimmed-ground": "dimmed on its ground side",
    "closes-to-ground": "a contact that closes to ground",
    "closes-to-plus": "a contact that closes to plus",
    "pulses": "pulses",
    "resistance": "a resistance for each button",
    "message": "data messages",
    "unknown": "how it works is unknown: meter it",
}


def function(record: VehicleRecord, item: FunctionFact) -> Data:
    """A function that stands on no recorded pin."""
    return {
        "id": item.id,
        "name": function_name(item.id),
        "by": item.by,
        "by_words": _BY[item.by],
        "wire": [said for said in _wire(item) if said],
        "conflicts": doubts.marks(record, ("functions", item.id)),
        "note": item.note,
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
    }


def by_data(record: VehicleRecord) -> Iterator[FunctionFact]:
    """Functions that arrive as data, so that a receiver needs an interface for them."""
    return (item for item in record.functions.values() if item.by == "data")
