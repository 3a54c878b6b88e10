"""Wires of a joint that are thinner than the fuse ahead of them allows. Currents as in derive/electrical/wires.py: a reference, so a word and no refusal."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive.electrical import fuses
from undertrim.derive.electrical.numbers import Amount
from undertrim.derive.electrical.wires import carries
from undertrim.derive.wiring.bench import Path
from undertrim.record.gear import Lead
from undertrim.record.model import VehicleRecord
from undertrim.record.units import Quantity
from undertrim.words import Message, Value, message


@dataclass(frozen=True, slots=True)
class Thin:
    """What is said of a wire, and the largest fuse in A that it bears; None below the smallest rating."""

    words: Message
    fuse: float | None


def thin_wires(record: VehicleRecord, lead: Lead, path: Path) -> tuple[Thin, ...]:
    """Every wire of a joint that the fuse ahead of it does not guard: of an adapter and of the lead behind the car's fuse, and where that is not
    known, of the car behind the fuse of the lead."""
    found = (thin for point in path.sources if point.pin for thin in _at(record, lead, path, point.address))
    return tuple(dict.fromkeys(found))


def _at(record: VehicleRecord, lead: Lead, path: Path, address: str) -> Iterator[Thin]:
    plug, _, position = address.partition("/")
    pin = record.connectors[plug].pins[position]
    adapters: list[tuple[Value, str]] = [
        (held.gear.name, held.lead.gauge) for held in path.contacts if held.address == address
    ]
    of_lead, of_car = message("joint/the-lead", lead=lead.id), message("joint/the-car-at", at=address)
    if isinstance(pin.fuse, Quantity):
        yield from _above(pin.fuse, of_car, [*adapters, (of_lead, lead.gauge)])
    elif isinstance(lead.fuse, Quantity):
        yield from _above(lead.fuse, of_lead, [*adapters, (of_car, pin.gauge)])


def _above(fuse: Quantity, whose: Value, wires: list[tuple[Value, str]]) -> Iterator[Thin]:
    for name, gauge in wires:
        limit = carries(gauge) if gauge else None
        if limit and fuse.value > limit.current:
            size, carried = gauge.replace("mm2", "mm²"), Amount(limit.current, "A")
            words = message("joint/thin", whose=whose, fuse=fuse, size=size, wire=name, limit=carried)
            yield Thin(words, fuses.most(limit.current))
