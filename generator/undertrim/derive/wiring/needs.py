"""What one car has for each function: a pin, a wire elsewhere, data, nothing, or nobody knows."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.evidence.conflicts import Dispute
from undertrim.derive.evidence.disputed import open_disputes
from undertrim.derive.fit.factory_sound import TURN_ON, systems, woken_by_data
from undertrim.record.model import Connector, Current, Pin, VehicleRecord, Voltage, When


@dataclass(frozen=True, slots=True)
class Point:
    """Where the car has a function. `by` is pin, wire (elsewhere), data, absent or unknown; plug, pin and colour only for a pin.

    `disputed` are the open disputes about it: what stands here is then the cautious value, or one claim among others.
    """

    function: str
    by: str
    plug: str = ""
    pin: str = ""
    colour: str = ""
    scheme: str = ""
    behaves: str = ""
    supply: Voltage | None = None
    draws: Current | None = None
    note: str = ""
    disputed: tuple[Dispute, ...] = ()

    @property
    def address(self) -> str:
        """`plug/pin`, which does not change; empty for what is on no pin."""
        return f"{self.plug}/{self.pin}" if self.pin else ""


def points(record: VehicleRecord, car: Mapping[str, str]) -> tuple[Point, ...]:
    """Every contact of one car that does something, by plug and pin; spare ones are left out."""
    found = [_of_pin(record, car, plug, pin) for plug, pin in pins(record, car) if pin.function != "spare"]
    return tuple(sorted(found, key=lambda point: natural(point.address)))


def sources(
    function: str, record: VehicleRecord, car: Mapping[str, str], known: Sequence[Point] | None = None
) -> tuple[Point, ...]:
    """Where one car has a function: its pins, else what the record says of it, else one point that is unknown.

    `known` are the `points` of that car, for who asks for many functions.
    """
    having = points(record, car) if known is None else known
    on_pins = tuple(point for point in having if point.function == function)
    return on_pins or (_elsewhere(function, record, car),)


def _elsewhere(function: str, record: VehicleRecord, car: Mapping[str, str]) -> Point:
    """What the record says of a function that stands on no pin of one car; unknown where it says nothing."""
    there = record.function_fact(function, car)
    if function == TURN_ON and woken_by_data(record, car) and (there is None or there.by == "unknown"):
        return Point(function, "data")
    if there is None:
        return Point(function, "unknown")
    about = open_disputes(record, "functions", there.id)
    return Point(
        function,
        there.by,
        behaves=there.behaves,
        supply=there.supply,
        draws=there.draws,
        note=there.note,
        disputed=about,
    )


def pins(record: VehicleRecord, car: Mapping[str, str]) -> Iterator[tuple[Connector, Pin]]:
    """The contacts at the radio that one car has, each with its plug, in the order of the file."""
    for plug in record.connectors.values():
        if plug.at_radio and all(when.holds(car) for when in conditions_of(record, plug)):
            yield from ((plug, pin) for pin in plug.pins.values() if pin.when.holds(car))


def conditions_of(record: VehicleRecord, plug: Connector) -> tuple[When, ...]:
    """The conditions of a plug and of the part and tether it belongs to."""
    name, _, tether = plug.at.partition("/")
    part = record.parts.get(name)
    if part is None or tether not in part.tethers:
        return (plug.when,)
    return (plug.when, part.when, part.tethers[tether].when)


def output(record: VehicleRecord, car: Mapping[str, str]) -> str:
    """What the car wants on its sound wires: speaker, line, digital-ring, or unknown where the record says nothing or two things."""
    found = {system.output for system in systems(record, car)}
    return found.pop() if len(found) == 1 else "unknown"


def natural(text: str) -> tuple[tuple[str, int], ...]:
    """A sorting key in which numbers count as numbers: pin 2 comes before pin 10."""
    return tuple((letters, int(digits or 0)) for letters, digits in re.findall(r"(\D*)(\d*)", text))


def _of_pin(record: VehicleRecord, car: Mapping[str, str], plug: Connector, pin: Pin) -> Point:
    behaves = pin.behaves or ("resistance" if _on_ladder(record, car, f"{plug.id}/{pin.id}") else "")
    return Point(
        pin.function, "pin", plug.id, pin.id, pin.colour, plug.scheme, behaves, pin.supply, pin.draws, pin.note,
        doubts(record, plug, pin),
    )  # fmt: skip


def doubts(record: VehicleRecord, plug: Connector, pin: Pin) -> tuple[Dispute, ...]:
    """What is disputed about a contact: its own facts, those of the plug that every contact hangs on, and the ladder on it."""
    if not record.conflicts:
        return ()
    ladders = (item.id for item in record.ladders.values() if item.pin == f"{plug.id}/{pin.id}")
    on_it = (item for name in ladders for item in open_disputes(record, "ladders", name))
    return (*open_disputes(record, "connectors", plug.id, "pins", pin.id), *of_plug(record, plug), *on_it)


def of_plug(record: VehicleRecord, plug: Connector) -> tuple[Dispute, ...]:
    """What is disputed about a plug as a whole."""
    found = open_disputes(record, "connectors", plug.id)
    return tuple(item for item in found if not item.below("connectors", plug.id, "pins"))


def _on_ladder(record: VehicleRecord, car: Mapping[str, str], address: str) -> bool:
    """Whether the buttons of a recorded ladder are on this pin."""
    return any(ladder.pin == address and ladder.when.holds(car) for ladder in record.ladders.values())
