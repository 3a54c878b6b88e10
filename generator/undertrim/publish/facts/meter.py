"""The meter guide of a page as data: the table that its script reads, and the pins of one plug with what is recorded of them."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from undertrim.derive.evidence.claims import METER
from undertrim.derive.wiring import circuits, ladder
from undertrim.derive.wiring.ends import called
from undertrim.derive.wiring.leads import named
from undertrim.derive.wiring.measured import Measured
from undertrim.derive.wiring.needs import doubts
from undertrim.publish.encoding import Published, compact, said
from undertrim.publish.facts import words
from undertrim.publish.facts.doubts import unseen
from undertrim.publish.packing import packed
from undertrim.record.model import Connector, Ladder, Pin, VehicleRecord
from undertrim.record.units import Quantity
from undertrim.words import Message, Value, message, once_per_language
from undertrim.words.tables import worded


@dataclass(frozen=True, slots=True)
class MeterPin:
    """A pin as the guide knows it: the voltage of its supply is in V, None where that is the battery's or not recorded."""

    id: str
    function: str
    words: Value
    behaves: str
    supply: float | None
    when: Value


@dataclass(frozen=True, slots=True)
class ShownRung:
    """A rung of a ladder in ohm; no upper end is None."""

    name: str
    low: float
    high: float | None
    idle: bool


@dataclass(frozen=True, slots=True)
class MeterLadder:
    """A ladder on a plug with its bands."""

    id: str
    pin: str
    against: str
    when: Value
    rungs: Sequence[ShownRung]


@dataclass(frozen=True, slots=True)
class MeterPlug:
    """A plug for the guide: its pins, its empty positions and the ladders on it; `taken` says what of it another car lends."""

    id: str
    name: Value
    pins: Sequence[MeterPin]
    blanks: Sequence[str]
    ladders: Sequence[MeterLadder]
    taken: Sequence[Value]


@once_per_language
def meter_table() -> Published:
    """data/functions.toml for the browser, its words in the language of the reader. It is the same on every page."""
    return dict(said(worded("functions")))


def packed_script(data: object) -> Markup:
    """Data that a script of ours makes whole again, with each thing once."""
    return script(packed(data))


def script(data: object) -> Markup:
    """Data as JSON, its keys in order, that cannot close the script element it stands in."""
    text = compact(data)
    return Markup(text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026"))  # noqa: S704


@once_per_language
def table_script() -> str:
    """The table as a classic script, to be loaded once after meter-guide.js instead of standing in every page."""
    return f"undertrimMeter.start({script(meter_table())});\n"


def guide(record: VehicleRecord, connector: Connector) -> MeterPlug | None:
    """One plug for the guide: id, name, pins, and ladders on it; None for restraint and high-voltage plugs, which nobody meters."""
    if circuits.circuit(record, connector) != "ordinary":
        return None
    ladders = [item for item in record.ladders.values() if item.pin.partition("/")[0] == connector.id]
    return MeterPlug(
        id=connector.id,
        name=called(connector),
        pins=[_pin(record, connector, pin) for pin in connector.pins.values()],
        blanks=connector.blanks,
        ladders=[_ladder(record, item) for item in ladders],
        taken=unseen(record, ("connectors", connector.id)),
    )


def _pin(record: VehicleRecord, plug: Connector, pin: Pin) -> MeterPin:
    function: Value = named(pin.function)
    if doubts(record, plug, pin):
        function = message("meter/disputed", function=function, meter=METER)
    return MeterPin(
        id=pin.id,
        function=pin.function,
        words=function,
        behaves=pin.behaves,
        supply=pin.supply.value if isinstance(pin.supply, Quantity) else None,
        when=words.when(record, pin.when),
    )


def _ladder(record: VehicleRecord, item: Ladder) -> MeterLadder:
    return MeterLadder(
        id=item.id,
        pin=item.pin.partition("/")[2],
        against=item.return_,
        when=words.when(record, item.when),
        rungs=[rung_data(rung) for rung in ladder.rungs(item)],
    )


def rung_data(rung: ladder.Rung) -> ShownRung:
    """One rung in ohm."""
    high = None if math.isinf(rung.high) else rung.high
    return ShownRung(rung.name, rung.low, high, rung.idle)


def ranged(low: float, high: float, unit: str) -> Message:
    """A range: `11.4 V to 13.2 V`, `100 kohm and up`."""
    if math.isinf(high):
        return message("meter/and-up", low=Measured(low, unit))
    return message("meter/range", low=Measured(low, unit), high=Measured(high, unit))
