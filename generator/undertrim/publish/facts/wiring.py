"""Wiring notes as data: plugs pin by pin, functions without a pin, duties of the factory unit."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.wiring import standards
from undertrim.derive.wiring.ends import called
from undertrim.derive.wiring.leads import named
from undertrim.publish.facts import doubts, words
from undertrim.publish.facts.pin_colours import Colour, colour
from undertrim.record.model import Blank, Connector, FunctionFact, Pin, VehicleRecord
from undertrim.record.units import Quantity
from undertrim.words import Message, Value, Word, message

_BY = {
    "wire": message("plugs/by-wire"),
    "data": message("plugs/by-data"),
    "absent": message("plugs/absent"),
    "unknown": words.LOOK_UP,
}
VIEWS = {"wires": message("plugs/wires"), "contacts": message("plugs/contacts")}
"""From which side of a plug one looks, in words."""


@dataclass(frozen=True, slots=True)
class ShownPin:
    """One contact: address, function, colour in words, letters and screen colours, and what is known of the wire."""

    id: str
    address: str
    function: str
    function_words: Word
    colour: Colour | None
    wire: Sequence[Message]
    metered: bool
    conflicts: Sequence[Value]
    note: str
    when: Value
    clauses: words.Clauses


@dataclass(frozen=True, slots=True)
class ConnectorTable:
    """One plug, pin by pin."""

    id: str
    name: Value
    end: Value
    view: Message
    size: Message
    standard: Value
    when: Value
    clauses: words.Clauses
    pins: Sequence[ShownPin]
    conflicts: Sequence[Value]
    source: Sequence[str]


@dataclass(frozen=True, slots=True)
class CarFunction:
    """A function that stands on no recorded pin, and how the car has it."""

    id: str
    name: Word
    by: str
    by_words: Message
    wire: Sequence[Message]
    conflicts: Sequence[Value]
    note: str
    when: Value
    clauses: words.Clauses


def function_name(function: str) -> Word:
    """A function in words: `front left +`."""
    return named(function)


def supply(value: Quantity | Blank | None) -> Value:
    """A voltage in words; empty where nothing is recorded."""
    return message("plugs/voltage-unknown") if isinstance(value, Blank) else words.quantity(value)


def connector(record: VehicleRecord, item: Connector) -> ConnectorTable:
    """One plug."""
    return ConnectorTable(
        id=item.id,
        name=called(item),
        end="" if item.at_radio else message(f"plugs/end-{item.end}"),
        view=VIEWS[item.view],
        size=message("plugs/size", rows=item.rows, columns=item.columns),
        standard=standards.title(item.standard),
        when=words.when(record, item.when),
        clauses=words.clauses(item.when),
        pins=[pin(record, item, entry) for entry in item.pins.values()],
        conflicts=doubts.of_plug(record, item),
        source=item.source,
    )


def pin(record: VehicleRecord, plug: Connector, item: Pin) -> ShownPin:
    """One contact: address, function, colour in words, letters and screen colours, and what is known of the wire."""
    return ShownPin(
        id=item.id,
        address=f"{plug.id}/{item.id}",
        function=item.function,
        function_words=function_name(item.function),
        colour=colour(item.colour, plug.scheme),
        wire=list(_wire(item)),
        metered=item.metered == "yes",
        conflicts=doubts.marks(record, ("connectors", plug.id, "pins", item.id)),
        note=item.note,
        when=words.when(record, item.when),
        clauses=words.clauses(item.when),
    )


def _wire(item: Pin | FunctionFact) -> Iterator[Message]:
    """What is recorded of a wire besides its colour."""
    if item.behaves:
        yield message(f"behaviours/{item.behaves}")
    yield from _carries(item.supply)
    yield from _draws(item.draws)
    if isinstance(item, Pin):
        yield from _of_pin(item)


def _carries(supply: Quantity | Blank | None) -> Iterator[Message]:
    if isinstance(supply, Quantity):
        yield message("plugs/carries", supply=words.quantity(supply))
    elif supply is not None:
        yield message("plugs/carries-unknown")


def _draws(current: Quantity | Blank | None) -> Iterator[Message]:
    if isinstance(current, Quantity):
        yield message("plugs/draws", current=words.quantity(current))
    elif current is not None:
        yield message("plugs/draws-unknown")


def _of_pin(item: Pin) -> Iterator[Message]:
    if item.fuse is not None:
        yield message("joint/fuse", rating=words.quantity(item.fuse))
    if item.gauge:
        yield message("plugs/gauge", size=item.gauge.replace("mm2", "mm²"))
    if item.contact is not None:
        yield message("plugs/contact", width=words.quantity(item.contact))
    if item.metered == "yes":
        yield message("plugs/metered")


def function(record: VehicleRecord, item: FunctionFact) -> CarFunction:
    """A function that stands on no recorded pin."""
    return CarFunction(
        id=item.id,
        name=function_name(item.of),
        by=item.by,
        by_words=_BY[item.by],
        wire=list(_wire(item)),
        conflicts=doubts.marks(record, ("functions", item.id)),
        note=item.note,
        when=words.when(record, item.when),
        clauses=words.clauses(item.when),
    )
