"""The wiring behind the factory radio as data: the plugs pin by pin, and every function by how the car has it."""

from collections.abc import Iterator, Mapping
from typing import Any

from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.wiring.leads import named, table_order
from undertrim.derive.wiring.needs import conditions_of, natural
from undertrim.publish.encoding import said
from undertrim.publish.facts import doubts, words
from undertrim.publish.facts.pin_colours import colour
from undertrim.publish.facts.wiring import supply
from undertrim.record.model import Connector, Pin, VehicleRecord, When
from undertrim.words import message

Data = dict[str, Any]

SOURCES = {
    "pin": message("plugs/source-pin"),
    "wire": message("plugs/source-wire"),
    "data": message("plugs/source-data"),
    "absent": message("plugs/source-absent"),
    "unknown": message("plugs/source-unknown"),
}
"""How a car can have a function, in words."""


def car_wiring(record: VehicleRecord, address: str, car: Mapping[str, str]) -> Data:
    """Plugs and functions of the cars that `car` leaves open, as plain data. What is not in all of them carries `when`."""
    facts, record = record.vehicle, reckoned(record)
    made = {
        "vehicle": address,
        "title": f"{facts.make} {facts.model}",
        "demo": record.demo == "yes",
        "car": dict(car),
        "plugs": [
            _plug(record, item, car)
            for item in record.connectors.values()
            if all(when.holds(car) for when in conditions_of(record, item))
        ],
        "functions": sorted(_functions(record, car), key=lambda item: table_order(item["function"])),
        "sound": [
            {"id": item.id, "output": item.output, "amplifier": item.amplifier, "turn_on": item.turn_on, "conflicts": doubts.marks(record, ("sound", item.id)), **_when(record, item.when, car)}
            for item in record.sound.values()
            if item.when.holds(car)
        ],
    }  # fmt: skip
    return dict(said(made))


def _plug(record: VehicleRecord, item: Connector, car: Mapping[str, str]) -> Data:
    held = sorted((pin for pin in item.pins.values() if pin.when.holds(car)), key=lambda pin: natural(pin.id))
    return {
        "id": item.id,
        "name": item.name,
        "blanks": sorted(item.blanks, key=natural),
        "conflicts": doubts.of_plug(record, item),
        "pins": [_pin(record, item, pin, car) for pin in held],
        **_when(record, item.when, car),
    }


def _pin(record: VehicleRecord, plug: Connector, pin: Pin, car: Mapping[str, str]) -> Data:
    return {
        "address": f"{plug.id}/{pin.id}",
        "function": pin.function,
        "function_words": named(pin.function),
        "colour": colour(pin.colour, plug.scheme),
        "behaves": pin.behaves,
        "supply": supply(pin.supply),
        "draws": words.quantity(pin.draws),
        "fuse": words.quantity(pin.fuse),
        "gauge": pin.gauge,
        "metered": pin.metered == "yes",
        "conflicts": doubts.marks(record, ("connectors", plug.id, "pins", pin.id)),
        "note": pin.note,
        **_when(record, pin.when, car),
    }


def _functions(record: VehicleRecord, car: Mapping[str, str]) -> Iterator[Data]:
    """One entry for each pin, and one for each function that the record says something of."""
    for plug in record.connectors.values():
        conditions = conditions_of(record, plug)
        for pin in plug.pins.values():
            if pin.function != "spare" and all(when.holds(car) for when in (*conditions, pin.when)):
                both = When((*plug.when.clauses, *pin.when.clauses))
                yield _function(record, (pin.function, "pin"), f"{plug.id}/{pin.id}", "", both, car)
    for fact in record.functions.values():
        if fact.when.holds(car):
            yield _function(record, (fact.id, fact.by), "", fact.note, fact.when, car)


def _function(
    record: VehicleRecord, what: tuple[str, str], address: str, note: str, when: When, car: Mapping[str, str]
) -> Data:
    function, by = what
    how = {"function": function, "function_words": named(function), "by": by, "by_words": SOURCES[by]}
    doubted = doubts.marks(record, ("functions", function)) if by != "pin" else []
    return {**how, "address": address, "conflicts": doubted, "note": note, **_when(record, when, car)}


def _when(record: VehicleRecord, when: When, car: Mapping[str, str]) -> Data:
    """In which cars it is, beyond what `car` has already chosen."""
    left = When(tuple(clause for clause in when.clauses if clause[0] not in car))
    return {"when": words.when(record, left), "clauses": words.clauses(left)}
