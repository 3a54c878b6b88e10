"""Facts in words: quantities, counts, conditions, places. An unknown is said, never left blank."""

import math
from collections.abc import Mapping

from undertrim.derive import cars
from undertrim.record.model import Blank, Caution, Fastener, VehicleRecord, When
from undertrim.record.units import Quantity, show
from undertrim.resources import table

UNKNOWN = "unknown"
LOOK_UP = "unknown: look it up in the maker's information"


def quantity(value: Quantity | Blank | None) -> str:
    """A quantity in both systems, `unknown` or `none`; empty where the record says nothing."""
    if value is None:
        return ""
    return str(value) if isinstance(value, Blank) else show(value)


def minutes(value: float) -> str:
    """Minutes as people say them, to the second: `45 s`, `3 min`, `1 min 30 s`, `1 h 20 min`."""
    seconds = math.floor(value * 60 + 0.5)  # as the page's script rounds
    parts = ((seconds // 3600, "h"), (seconds // 60 % 60, "min"), (seconds % 60, "s"))
    return " ".join(f"{count} {unit}" for count, unit in parts if count) or "0 s"


def when(record: VehicleRecord, condition: When) -> str:
    """A condition by the labels of its choices: `Map radio`, `Map radio or plain radio, right-hand drive`."""
    known = cars.variants(record) if condition.clauses else {}
    clauses = []
    for name, choices in condition.clauses:
        labels = [known[name].choices[c].label if name in known and c in known[name].choices else c for c in choices]
        clauses.append(" or ".join(labels))
    return ", ".join(clauses)


def clauses(condition: When) -> dict[str, list[str]]:
    """A condition as data: variant -> choices."""
    return {name: list(choices) for name, choices in condition.clauses}


_PLACES = {"corners": "in the corners", "centre": "in the middle"}


def places(at: Mapping[str, int]) -> str:
    """Where fasteners are: `2 top, 2 left, 2 right`."""
    if len(at) == 1 and next(iter(at)) in _PLACES:
        return _PLACES[next(iter(at))]
    return ", ".join(f"{count} {_PLACES.get(edge, edge)}" for edge, count in at.items())


def fastener(item: Fastener) -> str:
    """Fasteners with their count: `4 × hex 7 mm screws`, `unknown number of push clips`."""
    words = table("fasteners")[item.kind]
    if words.get("one_lot"):
        return f"{item.what} {words['label']}"
    if not isinstance(item.count, int):
        return f"unknown number of {item.said} {words['plural']}"
    return f"{item.count} × {item.said} {words['label'] if item.count == 1 else words['plural']}"


_ROLES = {
    "ordinary": "",
    "seat": "holds a seat: tighten it to the maker's torque",
    "belt": "holds a belt: tighten it to the maker's torque",
    "wheel": "holds a wheel: tighten it to the maker's torque",
}


def fastener_detail(item: Fastener) -> str:
    """What else is recorded of a fastener: thread, length, place, torque, what depends on it, note."""
    parts = [
        item.thread,
        f"{quantity(item.diameter)} thick" if item.diameter else "",
        f"{quantity(item.length)} long" if item.length else "",
        places(item.at),
        f"torque {quantity(item.torque)}" if item.torque else "",
        _ROLES[item.role],
    ]
    facts = ", ".join(part for part in parts if part)
    return ". ".join(part for part in (facts, item.note.rstrip(".")) if part)


def caution(record: VehicleRecord, item: Caution) -> dict[str, str]:
    """A caution as data; `when` says in words in which cars it holds, empty for all."""
    return {
        "signal": item.signal,
        "hazard": item.hazard,
        "consequence": item.consequence,
        "avoid": item.avoid,
        "when": when(record, item.when),
    }
