"""Where a receiver gets the functions it needs in one car."""

from collections.abc import Mapping, Sequence

from undertrim.derive.fit.need import Need
from undertrim.derive.fit.stock import Gear
from undertrim.derive.wiring.claims import METER, claims
from undertrim.derive.wiring.needs import Point, sources
from undertrim.record.model import VehicleRecord
from undertrim.resources import table


def needs(
    wanted: Sequence[str], record: VehicleRecord, car: Mapping[str, str], adapters: Sequence[Gear]
) -> tuple[Need, ...]:
    """Each wanted function in this car. `adapters` are the harnesses and interfaces that suit the opening there."""
    return tuple(_need(function, record, car, adapters) for function in wanted)


def _need(function: str, record: VehicleRecord, car: Mapping[str, str], adapters: Sequence[Gear]) -> Need:
    points = sources(function, record, car)
    doubt = [claims(dispute) for point in points for dispute in point.disputed]
    by, where = _source(function, record, points)
    if doubt:
        at = f"{where}, " if by == "wire" else ""
        brought = tuple(item.name for item in adapters if function in item.facts.brings)
        return Need(function, "unknown", f"{METER}: {at}{'; '.join(doubt)}", brought, disputed=True)
    kinds = ("interface",) if by == "data" else ("harness", "interface")
    found = [item for item in adapters if item.facts.kind in kinds and function in item.facts.brings]
    names = tuple(item.name for item in found)
    if by == "data":
        lacking = "none in stock suits"
        return Need(function, by, f"comes as data: interface needed, {' or '.join(names) or lacking}", names)
    if by == "wire":
        return Need(function, by, f"{where}{', brought by ' + ' or '.join(names) if names else ''}", names)
    return Need(function, by, where)


def _source(function: str, record: VehicleRecord, points: Sequence[Point]) -> tuple[str, str]:
    """By what the car provides a function, and where in words."""
    if points[0].by == "pin":
        return "wire", " and ".join(
            f"pin {one.pin} of the {record.connectors[one.plug].name.lower()}" for one in points
        )
    by, note = points[0].by, points[0].note.rstrip(".")
    if by == "unknown":
        return by, "unknown: look it up in the maker's information or find out with a meter"
    return by, _words(function, by) + (f" ({note})" if note else "")


def _words(function: str, by: str) -> str:
    """How a function that stands on no pin is had; for an absent one, what is usually done instead (data/fit.toml)."""
    if by == "absent":
        usual = table("fit")["absent"]
        return f"absent: {usual.get(function, usual['otherwise'])}"
    return "by wire, on no recorded pin" if by == "wire" else ""
