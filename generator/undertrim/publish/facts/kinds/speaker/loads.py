"""The loads that a form reckons a speaker with."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from undertrim.derive.fit.answers import Vehicle, kinds
from undertrim.derive.fit.channel_load import Driver, drivers
from undertrim.derive.fit.joined import Joined, Part, join
from undertrim.publish.encoding import Spread
from undertrim.publish.facts.plain import plain
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class LoadPart:
    """One thing joined to what drives it: its impedance, and that of the factory's in its place."""

    name: Value
    impedance: Any
    factory: Any
    fed_through: str


@dataclass(frozen=True, slots=True)
class JoinedLoad:
    """One load as the script reckons it; the first part is the speaker asked about."""

    what: Value
    least: Any
    parts: Sequence[LoadPart]
    unplaced: Sequence[Value]


@dataclass(frozen=True, slots=True)
class Load:
    """A load with the kind of car that has it."""

    clauses: Mapping[str, Sequence[str]]
    load: Spread[JoinedLoad]


def loads(vehicle: Vehicle, opening: SpeakerOpening) -> Iterator[Load]:
    """What drives a speaker and what is joined to it, in each kind of car that has the opening."""
    for car in kinds(vehicle, opening, {}):
        if opening.when.holds(car):
            joined = join(vehicle.record, opening, car, None, {})
            for driver in drivers(vehicle.record, car, {}, opening.channel):
                yield Load({name: [choice] for name, choice in car.items()}, load_data(driver, joined))


def load_data(driver: Driver, joined: Joined) -> JoinedLoad:
    """One load as the script reckons it; the first part is the speaker asked about."""
    return JoinedLoad(
        what=driver.what,
        least=plain(driver.least),
        parts=[_part(part) for part in joined.parts],
        unplaced=joined.unplaced,
    )


def _part(part: Part) -> LoadPart:
    return LoadPart(part.name, plain(part.impedance), plain(part.factory), part.fed_through)
