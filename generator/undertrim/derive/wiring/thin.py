"""Wires of a joint that are thinner than the fuse ahead of them allows. Currents as in derive/electrical/wires.py: a reference, so a word and no refusal."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive.electrical import fuses
from undertrim.derive.electrical.numbers import said
from undertrim.derive.electrical.wires import carries
from undertrim.derive.wiring.bench import Path
from undertrim.record.gear import Lead
from undertrim.record.model import Pin, VehicleRecord
from undertrim.record.units import Quantity, show


@dataclass(frozen=True, slots=True)
class Thin:
    """A wire in words, and the largest fuse in A that it bears; None below the smallest rating."""

    words: str
    fuse: float | None


def thin_wires(record: VehicleRecord, lead: Lead, path: Path) -> tuple[Thin, ...]:
    """Every wire of a joint that the fuse ahead of it does not guard: of an adapter and of the lead behind the car's fuse, and where that is not
    known, of the car behind the fuse of the lead."""
    found = (thin for point in path.sources if point.pin for thin in _at(record, lead, path, point.address))
    return tuple(dict.fromkeys(found))


def _at(record: VehicleRecord, lead: Lead, path: Path, address: str) -> Iterator[Thin]:
    plug, _, position = address.partition("/")
    pin = record.connectors[plug].pins[position]
    adapters = [(held.gear.name, held.lead.gauge) for held in path.contacts if held.address == address]
    if isinstance(pin.fuse, Quantity):
        wires = [*adapters, (f"the lead '{lead.id}'", lead.gauge)]
        yield from _above(pin.fuse, f"of the car at {address}", wires)
    elif isinstance(lead.fuse, Quantity):
        yield from _above(lead.fuse, f"of the lead '{lead.id}'", [*adapters, _of_car(pin, address)])


def _of_car(pin: Pin, address: str) -> tuple[str, str]:
    return f"the car at {address}", pin.gauge


def _above(fuse: Quantity, whose: str, wires: list[tuple[str, str]]) -> Iterator[Thin]:
    for name, gauge in wires:
        limit = carries(gauge) if gauge else None
        if limit and fuse.value > limit.current:
            size = gauge.replace("mm2", "mm²")
            words = f"the fuse {whose} is {show(fuse)}, and {size} of {name} carries {said(limit.current, 'A')}"
            yield Thin(words, fuses.most(limit.current))
