"""The wiring behind the factory radio as data: the plugs pin by pin, and every function by how the car has it."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.wiring.ends import called
from undertrim.derive.wiring.leads import named, table_order
from undertrim.derive.wiring.needs import conditions_of, natural
from undertrim.publish.encoding import Published, Spread, said
from undertrim.publish.facts import doubts, words
from undertrim.publish.facts.pin_colours import Colour, colour
from undertrim.publish.facts.wiring import supply
from undertrim.record.model import Connector, Pin, SoundSystem, VehicleRecord, When
from undertrim.words import Message, Value, Word, message

SOURCES = {
    "pin": message("plugs/source-pin"),
    "wire": message("plugs/source-wire"),
    "data": message("plugs/source-data"),
    "absent": message("plugs/source-absent"),
    "unknown": message("plugs/source-unknown"),
}
"""How a car can have a function, in words."""


@dataclass(frozen=True, slots=True)
class OnlyIn:
    """In which cars something is, beyond what is chosen already; empty for all of them."""

    when: Value
    clauses: words.Clauses


@dataclass(frozen=True, slots=True)
class WiredPin:
    """A pin with what is recorded of its wire."""

    address: str
    function: str
    function_words: Word
    colour: Colour | None
    behaves: str
    supply: Value
    draws: Value
    fuse: Value
    gauge: str
    metered: bool
    conflicts: Sequence[Value]
    note: str
    cars: Spread[OnlyIn]


@dataclass(frozen=True, slots=True)
class WiredPlug:
    """A plug pin by pin, and its empty positions."""

    id: str
    name: Value
    end: str
    blanks: Sequence[str]
    conflicts: Sequence[Value]
    pins: Sequence[WiredPin]
    cars: Spread[OnlyIn]


@dataclass(frozen=True, slots=True)
class WiredFunction:
    """A function by how the car has it; `address` is plug/pin, empty for what is on no recorded pin."""

    function: str
    function_words: Word
    by: str
    by_words: Message
    address: str
    conflicts: Sequence[Value]
    note: str
    cars: Spread[OnlyIn]


@dataclass(frozen=True, slots=True)
class WiredSound:
    """A factory sound system: what the radio sends, and what wakes the amplifier."""

    id: str
    output: str
    amplifier: str
    turn_on: str
    powers: Sequence[str]
    conflicts: Sequence[Value]
    cars: Spread[OnlyIn]


@dataclass(frozen=True, slots=True)
class CarWiring:
    """Plugs and functions of the cars that `car` leaves open."""

    vehicle: str
    title: str
    demo: bool
    car: Mapping[str, str]
    plugs: Sequence[WiredPlug]
    functions: Sequence[WiredFunction]
    sound: Sequence[WiredSound]


def car_wiring(record: VehicleRecord, address: str, car: Mapping[str, str]) -> Published:
    """Plugs and functions of the cars that `car` leaves open, as plain data. What is not in all of them carries `when`."""
    facts, record = record.vehicle, reckoned(record)
    made = CarWiring(
        vehicle=address,
        title=f"{facts.make} {facts.model}",
        demo=record.demo == "yes",
        car=dict(car),
        plugs=[
            _plug(record, item, car)
            for item in record.connectors.values()
            if all(when.holds(car) for when in conditions_of(record, item))
        ],
        functions=sorted(_functions(record, car), key=lambda item: table_order(item.function)),
        sound=[_sound(record, item, car) for item in record.sound.values() if item.when.holds(car)],
    )
    return dict(said(made))


def _sound(record: VehicleRecord, item: SoundSystem, car: Mapping[str, str]) -> WiredSound:
    doubted = doubts.marks(record, ("sound", item.id))
    return WiredSound(
        item.id, item.output, item.amplifier, item.turn_on, item.powers, doubted, _when(record, item.when, car)
    )


def _plug(record: VehicleRecord, item: Connector, car: Mapping[str, str]) -> WiredPlug:
    held = sorted((pin for pin in item.pins.values() if pin.when.holds(car)), key=lambda pin: natural(pin.id))
    return WiredPlug(
        id=item.id,
        name=called(item),
        end=item.end,
        blanks=sorted(item.blanks, key=natural),
        conflicts=doubts.of_plug(record, item),
        pins=[_pin(record, item, pin, car) for pin in held],
        cars=_when(record, item.when, car),
    )


def _pin(record: VehicleRecord, plug: Connector, pin: Pin, car: Mapping[str, str]) -> WiredPin:
    return WiredPin(
        address=f"{plug.id}/{pin.id}",
        function=pin.function,
        function_words=named(pin.function),
        colour=colour(pin.colour, plug.scheme),
        behaves=pin.behaves,
        supply=supply(pin.supply),
        draws=words.quantity(pin.draws),
        fuse=words.quantity(pin.fuse),
        gauge=pin.gauge,
        metered=pin.metered == "yes",
        conflicts=doubts.marks(record, ("connectors", plug.id, "pins", pin.id)),
        note=pin.note,
        cars=_when(record, pin.when, car),
    )


def _functions(record: VehicleRecord, car: Mapping[str, str]) -> Iterator[WiredFunction]:
    """One entry for each pin at the radio, and one for each function that the record says something of."""
    for plug in (item for item in record.connectors.values() if item.at_radio):
        conditions = conditions_of(record, plug)
        for pin in plug.pins.values():
            if pin.function != "spare" and all(when.holds(car) for when in (*conditions, pin.when)):
                both = When((*plug.when.clauses, *pin.when.clauses))
                yield _function(record, (pin.function, "pin"), f"{plug.id}/{pin.id}", "", both, car)
    for fact in record.functions.values():
        if fact.when.holds(car):
            yield _function(record, (fact.of, fact.by), "", fact.note, fact.when, car, fact.id)


def _function(
    record: VehicleRecord,
    what: tuple[str, str],
    address: str,
    note: str,
    when: When,
    car: Mapping[str, str],
    fact: str = "",
) -> WiredFunction:
    function, by = what
    doubted = doubts.marks(record, ("functions", fact)) if fact else []
    cars = _when(record, when, car)
    return WiredFunction(function, named(function), by, SOURCES[by], address, doubted, note, cars)


def _when(record: VehicleRecord, when: When, car: Mapping[str, str]) -> OnlyIn:
    """In which cars it is, beyond what `car` has already chosen."""
    left = When(tuple(clause for clause in when.clauses if clause[0] not in car))
    return OnlyIn(words.when(record, left), words.clauses(left))
