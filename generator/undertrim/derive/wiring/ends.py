"""The far ends of the car's wires: the plugs at speakers and where door looms are joined, and which openings they serve."""

from collections.abc import Iterator, Mapping

from undertrim.derive.evidence.claims import METER
from undertrim.derive.wiring.leads import named
from undertrim.derive.wiring.needs import conditions_of, doubts
from undertrim.record import colours
from undertrim.record.model import Connector, Opening, Pin, Side, VehicleRecord
from undertrim.words import Items, Message, Value, message

_POLES = ("plus", "minus")
_SIDES: tuple[Side, ...] = ("left", "right")
_SIDED: Mapping[str, Side] = {
    f"{pair}-{side}-{pole}": side for pair in ("front", "rear") for side in _SIDES for pole in _POLES
}
"""The wires that each side has for itself, with that side."""


def called(plug: Connector) -> Value:
    """The name of a plug, with the side of one that both sides have."""
    if plug.side is None:
        return plug.name
    return message("plugs/on-side", plug=plug.name, side=message(f"sides/{plug.side}"))


def wires_of(opening: Opening) -> frozenset[str]:
    """The functions of the wires that feed what plays in an opening; none where its channel is not recorded."""
    if not opening.channel:
        return frozenset()
    pairs = (f"{opening.channel}-{side}" for side in opening.each) if opening.each else (opening.channel,)
    return frozenset(f"{pair}-{pole}" for pair in pairs for pole in _POLES)


def side_of(function: str) -> Side | None:
    """The side that a wire belongs to; None for one that the car has once."""
    return _SIDED.get(function)


def of_opening(record: VehicleRecord, opening: Opening) -> tuple[Connector, ...]:
    """The plugs on the way to an opening, beyond the radio, that have one of its wires; in the order of the file."""
    wires = wires_of(opening)
    return tuple(plug for plug in _far(record) if any(pin.function in wires for pin in plug.pins.values()))


def serves(record: VehicleRecord, plug: Connector) -> tuple[str, ...]:
    """The jobs for which a plug is met, as jobs are named: that of a new receiver at the radio, elsewhere those whose wires it has, with the side where all of these are of one."""
    if plug.at_radio:
        return tuple(opening.id for opening in record.openings.values() if opening.takes_over)
    there = (opening for opening in record.openings.values() if plug in of_opening(record, opening))
    return tuple(_at_side(opening, plug) for opening in there)


def _at_side(opening: Opening, plug: Connector) -> str:
    wires = wires_of(opening)
    sides = {plug.side or side_of(pin.function) for pin in plug.pins.values() if pin.function in wires}
    (side,) = sides if len(sides) == 1 else (None,)
    return f"{opening.id}@{side}" if side and opening.each else opening.id


def pins_at(record: VehicleRecord, plug: Connector) -> Message:
    """A plug with what every contact of it does, and its colour."""
    pins = Items(tuple(_pin(record, plug, pin) for pin in plug.pins.values()), "semicolon")
    return message("plugs/far-pins", plug=called(plug), pins=pins)


def further(record: VehicleRecord, car: Mapping[str, str], function: str) -> Iterator[Message]:
    """Where one car has a wire beyond the radio, and of which colour it is there."""
    for plug in _far(record):
        for pin in plug.pins.values():
            if pin.function == function and all(when.holds(car) for when in (*conditions_of(record, plug), pin.when)):
                yield message("plugs/further", plug=called(plug), pin=pin.id, colour=_coloured(record, plug, pin))


def _coloured(record: VehicleRecord, plug: Connector, pin: Pin) -> Value:
    """The colour of a wire at a pin, and that a meter must decide where somebody disputes it."""
    colour = _colour(plug, pin)
    return Items((colour, METER), "comma") if doubts(record, plug, pin) else colour


def _colour(plug: Connector, pin: Pin) -> Value:
    """The colour as typed where it cannot be read, and that it is not known where nothing is recorded."""
    if not pin.colour:
        return message("plugs/colour-unknown")
    try:
        return colours.parse(pin.colour, plug.scheme)
    except colours.ColourError:
        return pin.colour


def _pin(record: VehicleRecord, plug: Connector, pin: Pin) -> Message:
    colour = _coloured(record, plug, pin)
    return message("plugs/far-pin", pin=pin.id, function=named(pin.function), colour=colour)


def _far(record: VehicleRecord) -> Iterator[Connector]:
    return (plug for plug in record.connectors.values() if not plug.at_radio)
