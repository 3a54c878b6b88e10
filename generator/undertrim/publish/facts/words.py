"""Facts as they are shown: quantities, counts, conditions, places. An unknown is said, never left blank."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive import cars, fastener_words
from undertrim.derive.procedure.steps import Step
from undertrim.derive.procedure.usual_caution import AnyCaution
from undertrim.record.model import Blank, Fastener, Opening, VehicleRecord, When
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import Items, Value, message

Clauses = Mapping[str, Sequence[str]]
"""A condition as data: variant -> choices, of which any one holds; empty for every car."""

UNKNOWN = message("facts/unknown")
LOOK_UP = message("facts/look-up")


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution with its signal word; `when` says in words in which cars it holds, empty for all."""

    signal: str
    hazard: Value
    consequence: Value
    avoid: Value
    when: Value


def quantity(value: Quantity | Blank | None) -> Value:
    """A quantity in both systems, `unknown` or `none`; empty where the record says nothing."""
    if value is None:
        return ""
    return message(f"facts/{value}") if isinstance(value, Blank) else value


def minutes(value: float) -> Value:
    """Minutes as people say them, to the second: `45 s`, `3 min`, `1 min 30 s`, `1 h 20 min`."""
    seconds = math.floor(value * 60 + 0.5)  # as the page's script rounds
    parts = {"hours": seconds // 3600, "minutes": seconds // 60 % 60, "seconds": seconds % 60}
    said = tuple(message(f"times/{unit}", number=number) for unit, number in parts.items() if number)
    return Items(said, "spaced") if said else message("times/seconds", number=0)


def when(record: VehicleRecord, condition: When) -> Value:
    """A condition by the labels of its choices: `Map radio`, `Map radio or plain radio, right-hand drive`; empty for every car."""
    if not condition.clauses:
        return ""
    known = cars.variants(record)
    clauses = (either(cars.label(known, name, choice) for choice in choices) for name, choices in condition.clauses)
    return Items(tuple(clauses), "comma")


def others(record: VehicleRecord, condition: When, opening: Opening) -> Value:
    """A condition beside the name of an opening: what that tells already is left out."""
    told = {clause for clause in opening.when.clauses if clause[0] in opening.named_for}
    return when(record, When(tuple(clause for clause in condition.clauses if clause not in told)))


def beside(record: VehicleRecord, condition: When, step: Step) -> Value:
    """A condition beside the title of a step: what is done at an opening is titled by its name."""
    thing = step.node.thing if step.node else None
    return others(record, condition, thing) if isinstance(thing, Opening) else when(record, condition)


def either(values: Iterable[Value]) -> Items:
    """Values of which any one will do, with `or` between all of them: beside commas it cannot be misread."""
    return Items(tuple(values), "either")


def listed(*values: Value, joined: str = "comma") -> Value:
    """Those of the values that are not empty; empty where none is left."""
    kept = tuple(value for value in values if value != "")
    return Items(kept, joined) if kept else ""


def clauses(condition: When) -> Clauses:
    """A condition as data: variant -> choices."""
    return {name: list(choices) for name, choices in condition.clauses}


def fastener(item: Fastener) -> Value:
    """Fasteners with their count: `4 × hex 7 mm screws`, `unknown number of push clips`."""
    if table("fasteners")[item.kind].get("one_lot"):
        return fastener_words.one(item)
    if not isinstance(item.count, int):
        return message("fasteners/unknown-number", fasteners=fastener_words.many(item))
    return fastener_words.counted(item, item.count)


def fastener_detail(item: Fastener) -> Value:
    """What else is recorded of a fastener: thread, length, colour, number, place, torque, what depends on it, note."""
    facts = listed(
        item.thread,
        message("fasteners/thick", diameter=quantity(item.diameter)) if item.diameter else "",
        message("fasteners/long", length=quantity(item.length)) if item.length else "",
        item.colour,
        message("fasteners/part-number", number=item.part_number) if item.part_number else "",
        fastener_words.places(item.at),
        message(f"spots/{item.where}") if item.where else "",
        tightness(item),
    )
    note = item.note.rstrip(".")
    return message("fasteners/noted", facts=facts, note=note) if facts and note else facts or note


def tightness(item: Fastener) -> Value:
    """How tight it must be, and what depends on it; empty where neither is recorded."""
    torque = message("fasteners/torque", torque=quantity(item.torque)) if item.torque else ""
    return listed(torque, "" if item.role == "ordinary" else message(f"fasteners/holds-{item.role}"))


def caution(record: VehicleRecord, item: AnyCaution) -> Caution:
    """A caution as it is shown in the cars of a record."""
    return Caution(item.signal, item.hazard, item.consequence, item.avoid, when(record, item.when))
