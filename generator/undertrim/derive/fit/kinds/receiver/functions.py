"""Where a receiver gets the functions it needs in one car."""

from collections.abc import Iterator, Mapping, Sequence

from undertrim.derive.evidence.claims import METER, claims
from undertrim.derive.evidence.conflicts import Dispute
from undertrim.derive.evidence.disputed import open_disputes
from undertrim.derive.fit.factory_sound import TURN_ON, woken_by_data
from undertrim.derive.fit.need import Need
from undertrim.derive.fit.piece import Piece
from undertrim.derive.fit.stock import Gear
from undertrim.record.model import Connector, Pin, VehicleRecord
from undertrim.record.model.kinds.receiver import HarnessGear, InterfaceGear
from undertrim.resources import table
from undertrim.words import Items, Message, Value, message, one_of, word


def needs(
    wanted: Sequence[str], record: VehicleRecord, car: Mapping[str, str], adapters: Sequence[Gear]
) -> tuple[Need, ...]:
    """Each wanted function in this car. `adapters` are the harnesses and interfaces that suit the opening there."""
    return tuple(_need(function, record, car, adapters) for function in wanted)


def _need(function: str, record: VehicleRecord, car: Mapping[str, str], adapters: Sequence[Gear]) -> Need:
    doubt = [claims(dispute) for dispute in _disputes(function, record, car)]
    by, where = _source(function, record, car)
    if doubt:
        brought = tuple(item.piece for item in adapters if function in item.facts.brings)
        return Need(function, "unknown", _doubted(where if by == "wire" else None, doubt), brought, disputed=True)
    kinds = (InterfaceGear,) if by == "data" else (HarnessGear, InterfaceGear)
    found = [item for item in adapters if isinstance(item.facts, kinds) and function in item.facts.brings]
    pieces = tuple(item.piece for item in found)
    if by == "data":
        return Need(function, by, _by_data(pieces), pieces)
    if by == "wire":
        return Need(function, by, _brought(where, pieces) if pieces else where, pieces)
    return Need(function, by, where)


def _doubted(where: Value | None, doubt: Sequence[Value]) -> Message:
    """That the claims differ, and on which pin."""
    claimed = Items(tuple(doubt), "semicolon")
    if where:
        return message("fit-receiver/doubted-at", meter=METER, where=where, claims=claimed)
    return message("fit-receiver/doubted", meter=METER, claims=claimed)


def _by_data(gear: Sequence[Piece]) -> Message:
    return message("fit-receiver/data", names=one_of(*gear)) if gear else _DATA


def _brought(where: Value, gear: Sequence[Piece]) -> Message:
    return message("fit-receiver/brought", where=where, names=one_of(*gear))


def _source(function: str, record: VehicleRecord, car: Mapping[str, str]) -> tuple[str, Value]:
    """By what the car provides a function, and where."""
    if pins := _pins(function, record, car):
        at = (message("fit-receiver/pin", pin=pin.id, plug=plug.name) for plug, pin in pins)
        return "wire", Items(tuple(at), "each")
    fact = record.function_fact(function, car)
    there = fact if fact is not None and fact.by != "unknown" else None
    if there is None and function == TURN_ON and woken_by_data(record, car):
        return "data", _DATA
    if there is None:
        return "unknown", message("fit-receiver/function-unknown")
    had = _had(function, there.by)
    return there.by, message("fit-receiver/noted", had=had, note=there.note.rstrip(".")) if there.note else had


def _pins(function: str, record: VehicleRecord, car: Mapping[str, str]) -> list[tuple[Connector, Pin]]:
    plugs = [plug for plug in record.connectors.values() if plug.at_radio and plug.when.holds(car)]
    pins = [(plug, pin) for plug in plugs for pin in plug.pins.values() if pin.function == function]
    return [(plug, pin) for plug, pin in pins if pin.when.holds(car)]


def _disputes(function: str, record: VehicleRecord, car: Mapping[str, str]) -> Iterator[Dispute]:
    """What is disputed about where the car has a function."""
    pins = _pins(function, record, car)
    for plug, pin in pins:
        yield from doubts_at(record, plug, pin)
    if not pins:
        fact = record.function_fact(function, car)
        yield from open_disputes(record, "functions", fact.id) if fact else ()


def doubts_at(record: VehicleRecord, plug: Connector, pin: Pin) -> list[Dispute]:
    """What is disputed about a pin, or about its plug as a whole."""
    found, whole = open_disputes(record, "connectors", plug.id), ("connectors", plug.id, "pins")
    return [item for item in found if item.below(*whole, pin.id) or not item.below(*whole)]


_DATA = message("fit-receiver/data-none")


def _had(function: str, by: str) -> Message:
    """How a function that stands on no pin is had; for an absent one, what is usually done instead (data/fit.toml)."""
    if by == "absent":
        usual = function if function in table("fit")["absent"] else "otherwise"
        return message("fit-receiver/absent", instead=word("fit", "absent", usual))
    return message("fit-receiver/wire-on-no-pin") if by == "wire" else _DATA
