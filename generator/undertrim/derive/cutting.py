"""What is done to a car that takes material off it or blows air at it, and why it must not be done at some places."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from undertrim.derive import doors
from undertrim.derive.areas import restraints_at
from undertrim.record.model import Opening, Thing, VehicleRecord

Why = Literal["sensor", "sensor-unknown", "restraint", "voltage", "voltage-unknown"]

_SENSOR: dict[str, Why] = {"yes": "sensor", "unknown": "sensor-unknown"}
_VOLTAGE: dict[str, Why] = {"near": "voltage", "inside": "voltage", "unknown": "voltage-unknown"}


@dataclass(frozen=True, slots=True)
class Act:
    """One thing that is done: the word for it, where under the thing it is recorded, and the fastener that it takes out, if any."""

    what: str
    place: tuple[str | int, ...]
    fastener: str = ""


@dataclass(frozen=True, slots=True)
class Bar:
    """Why nothing may be cut at a place; `named` are the airbags and belt parts there."""

    why: Why
    named: tuple[str, ...] = ()


def acts(thing: Thing) -> Iterator[Act]:
    """What fitting at a thing, or taking it off, does to the car by its fields: `alters`, and fasteners that are drilled out."""
    if isinstance(thing, Opening):
        yield from (Act(what, ("alters",)) for what in thing.alters)
        return
    for number, fastener in enumerate(thing.held_by):
        if fastener.cuts:
            yield Act(fastener.cuts, ("held_by", number), f"{fastener.kind}: {fastener.what}")


def bars(record: VehicleRecord, thing: Thing) -> tuple[Bar, ...]:
    """Every reason against cutting, drilling or blowing at a thing."""
    return tuple(_bars(record, thing))


def _bars(record: VehicleRecord, thing: Thing) -> Iterator[Bar]:
    if why := _SENSOR.get(doors.sensor(record, thing)):
        yield Bar(why)
    if named := restraints_at(record, thing):
        yield Bar("restraint", named)
    if why := _VOLTAGE.get(record.high_voltage(thing)):
        yield Bar(why)


def may_go(record: VehicleRecord, opening: Opening, alters: tuple[str, ...]) -> bool:
    """Whether what alters the car may be fitted at an opening."""
    return not alters or not bars(record, opening)
