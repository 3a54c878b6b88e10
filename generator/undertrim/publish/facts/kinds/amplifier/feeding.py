"""What an amplifier at an opening is fed by, hears and drives, as the scripts reckon with it. Nothing of it comes from the stock."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.kinds.amplifier.budget import supply
from undertrim.derive.run_cables import wishes
from undertrim.publish.facts import words
from undertrim.publish.facts.plain import plain
from undertrim.publish.facts.words import Clauses
from undertrim.record.model import Run, VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.units import Quantity
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class FedAlong:
    """The run of its cable: the length in m, None where nobody measured it, and where the cable is that must bear it, by place and insulation in degrees C."""

    name: Value
    length: float | None
    place: str
    insulation: int | None


@dataclass(frozen=True, slots=True)
class Battery:
    """What the car can give: the current of its alternator, and the capacity of its battery."""

    alternator: Any
    battery: Any


@dataclass(frozen=True, slots=True)
class SentLevel:
    """What the factory radio sends in some cars."""

    output: str
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class BesideIt:
    """Another place for an amplifier, and whether its cable goes along the same run."""

    opening: str
    same_run: bool
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class OnChannel:
    """A place on a channel of the car, at the sides that it is on. One that is `empty` loads nothing unless something is fitted."""

    opening: str
    name: Value
    channel: str
    sides: Sequence[str]
    impedance: Any
    fed_through: str
    then_fed_through: str
    empty: bool
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class Feeding:
    """All of it, for every kind of car."""

    run: FedAlong | None
    supply: Battery | None
    sound: Sequence[SentLevel]
    beside: Sequence[BesideIt]
    parts: Sequence[OnChannel]


def feeding(vehicle: Vehicle, opening: AmplifierOpening) -> Feeding:
    """What an amplifier there is joined to; the record is one that is reckoned with."""
    record = vehicle.record
    run, given = record.runs.get(opening.run), supply(record, opening)
    return Feeding(
        run=_along(run) if run else None,
        supply=Battery(plain(given.alternator), plain(given.battery)) if given else None,
        sound=[SentLevel(system.output, words.clauses(system.when)) for system in record.sound.values()],
        beside=list(_beside(record, opening)),
        parts=list(_parts(record)),
    )


def _along(run: Run) -> FedAlong:
    asked = wishes(run)
    length = run.length.value / 1000 if isinstance(run.length, Quantity) else None
    return FedAlong(run.name, length, asked.place, asked.insulation)


def _beside(record: VehicleRecord, opening: AmplifierOpening) -> Iterator[BesideIt]:
    for other in record.openings_of(AmplifierOpening):
        if other.id != opening.id:
            yield BesideIt(other.id, other.run == opening.run, words.clauses(other.when))


def _parts(record: VehicleRecord) -> Iterator[OnChannel]:
    for one in record.openings.values():
        if one.on_channel:
            yield OnChannel(
                opening=one.id,
                name=one.name,
                channel=one.channel,
                sides=list(one.each),
                impedance=plain(one.impedance),
                fed_through=one.fed_through,
                then_fed_through=one.then_fed_through,
                empty=one.empty,
                clauses=words.clauses(one.when),
            )
