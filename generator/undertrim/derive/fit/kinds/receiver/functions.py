"""Where a receiver gets the functions it needs in one car."""

from collections.abc import Iterator, Mapping, Sequence

from undertrim.derive.evidence.claims import METER, claims
from undertrim.derive.evidence.conflicts import Dispute
from undertrim.derive.evidence.disputed import open_disputes
from undertrim.derive.fit.factory_sound import TURN_ON, woken_by_data
from undertrim.derive.fit.need import Need
from undertrim.derive.fit.stock import Gear
from undertrim.record.model import Connector, Pin, VehicleRecord
from undertrim.record.model.kinds.receiver import HarnessGear, InterfaceGear
from undertrim.resources import table


def needs(
    wanted: Sequence[str], record: VehicleRecord, car: Mapping[str, str], adapters: Sequence[Gear]
) -> tuple[Need, ...]:
    """Each wanted function in this car. `adapters` are the harnesses and interfaces that suit the opening there."""
    return tuple(_need(function, record, car, adapters) for function in wanted)


def _need(function: str, record: VehicleRecord, car: Mapping[str, str], adapters: Sequence[Gear]) -> Need:
    doubt = [claims(dispute) for dispute in _disputes(function, record, car)]
    by, where = _source(function, record, car)
    if doubt:
        at = f"{where}, " if by == "wire" else ""
        brought = tuple(item.name for item in adapters if function in item.facts.brings)
        return Need(function, "unknown", f"{METER}: {at}{'; '.join(doubt)}", brought, disputed=True)
    kinds = (InterfaceGear,) if by == "data" else (HarnessGear, InterfaceGear)
    found = [item for item in adapters if isinstance(item.facts, kinds) and function in item.facts.brings]
    names = tuple(item.name for item in found)
    if by == "data":
        lacking = "none in stock suits"
        return Need(function, by, f"comes as data: interface needed, {' or '.join(names) or lacking}", names)
    if by == "wire":
        return Need(function, by, f"{where}{', brought by ' + ' or '.join(names) if names else ''}", names)
    return Need(function, by, where)


def _source(function: str, record: VehicleRecord, car: Mapping[str, str]) -> tuple[str, str]:
    """By what the car provides a function, and where in words."""
    if pins := _pins(function, record, car):
        return "wire", " and ".join(f"pin {pin.id} of the {plug.name.lower()}" for plug, pin in pins)
    fact = record.functions.get(function)
    there = fact if fact is not None and fact.when.holds(car) and fact.by != "unknown" else None
    if there is None and function == TURN_ON and woken_by_data(record, car):
        return "data", ""
    if there is None:
        return "unknown", "unknown: look it up in the maker's information or find out with a meter"
    note = f" ({there.note.rstrip('.')})" if there.note else ""
    return there.by, _words(function, there.by) + note


def _pins(function: str, record: VehicleRecord, car: Mapping[str, str]) -> list[tuple[Connector, Pin]]:
    plugs = [plug for plug in record.connectors.values() if plug.when.holds(car)]
    pins = [(plug, pin) for plug in plugs for pin in plug.pins.values() if pin.function == function]
    return [(plug, pin) for plug, pin in pins if pin.when.holds(car)]


def _disputes(function: str, record: VehicleRecord, car: Mapping[str, str]) -> Iterator[Dispute]:
    """What is disputed about where the car has a function."""
    pins = _pins(function, record, car)
    for plug, pin in pins:
        found = open_disputes(record, "connectors", plug.id)
        whole = ("connectors", plug.id, "pins")
        yield from (item for item in found if item.below(*whole, pin.id) or not item.below(*whole))
    if not pins:
        yield from open_disputes(record, "functions", function)


def _words(function: str, by: str) -> str:
    """How a function that stands on no pin is had; for an absent one, what is usually done instead (data/fit.toml)."""
    if by == "absent":
        usual = table("fit")["absent"]
        return f"absent: {usual.get(function, usual['otherwise'])}"
    return "by wire, on no recorded pin" if by == "wire" else ""
