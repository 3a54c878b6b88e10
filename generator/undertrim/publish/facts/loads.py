"""The loads that the scripts reckon with: what may drive a place, and all that may be joined to it, in each kind of car."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from undertrim.derive.fit.answers import Vehicle, kinds
from undertrim.derive.fit.channel_load import amplified
from undertrim.derive.fit.duty_groups import conditions
from undertrim.derive.fit.factory_sound import systems
from undertrim.derive.fit.joined import sharing, unplaced
from undertrim.derive.fit.powering import by_radio, may_power
from undertrim.derive.fit.stock import NOTHING
from undertrim.publish.facts import words
from undertrim.publish.facts.plain import plain
from undertrim.record.model import Opening, SoundSystem, VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening
from undertrim.words import Value, message


@dataclass(frozen=True, slots=True)
class LoadPart:
    """One place on the channel: its impedance as the factory fitted it, and how that and how new gear is fed. One that is `empty` loads nothing unless something is fitted."""

    opening: str
    name: Value
    impedance: Any
    fed_through: str
    then_fed_through: str
    empty: bool


@dataclass(frozen=True, slots=True)
class LoadSystem:
    """A factory sound system that may drive it, with the least load it allows; one that is `amplified` stays when the radio goes, which drives this channel `by_radio` all the same."""

    amplified: bool
    by_radio: bool
    least: Any


@dataclass(frozen=True, slots=True)
class LoadAmplifier:
    """A place for an amplifier, and whether one there drives this channel; None where that hangs on its outputs."""

    opening: str
    drives: bool | None


@dataclass(frozen=True, slots=True)
class Unplaced:
    """A place that may be on the same channel, since nobody said on which it is."""

    opening: str
    name: Value
    empty: bool


@dataclass(frozen=True, slots=True)
class Load:
    """What loads a channel in some kinds of car; the first part is the place asked about."""

    clauses: Mapping[str, Sequence[str]]
    channel: str
    systems: Sequence[LoadSystem]
    amplifiers: Sequence[LoadAmplifier]
    parts: Sequence[LoadPart]
    unplaced: Sequence[Unplaced]


def loads(vehicle: Vehicle, opening: Opening) -> Iterator[Load]:
    """What may drive a place and what may be joined to it, once for all kinds of car in which it is the same."""
    every = list(kinds(replace(vehicle, stock=NOTHING), opening, {}))
    groups: list[tuple[Load, list[Mapping[str, str]]]] = []
    for car in (car for car in every if opening.when.holds(car)):
        made = _load(vehicle.record, opening, car)
        same = next((having for known, having in groups if known == made), None)
        if same is None:
            groups.append((made, [car]))
        else:
            same.append(car)
    for made, having in groups:
        yield from (replace(made, clauses=words.clauses(when)) for when in conditions(having, every))


def _load(record: VehicleRecord, opening: Opening, car: Mapping[str, str]) -> Load:
    anything = frozenset(record.openings)
    others = [_part(other) for other in sharing(record, opening, car, anything)]
    return Load(
        clauses={},
        channel=opening.channel,
        systems=[_system(system, opening.channel) for system in systems(record, car)],
        amplifiers=list(_amplifiers(record, opening.channel)),
        parts=[_part(opening, message(f"fit-{opening.kind}/the-{opening.kind}")), *others],
        unplaced=[Unplaced(one.id, one.name, one.empty) for one in unplaced(record, opening, car, anything)],
    )


def _system(system: SoundSystem, channel: str) -> LoadSystem:
    return LoadSystem(amplified(system), by_radio(system, channel), plain(system.least_load))


def _amplifiers(record: VehicleRecord, channel: str) -> Iterator[LoadAmplifier]:
    """Each place for an amplifier: both sorts, of one output and of more, tell whether their number matters."""
    for place in record.openings.values():
        if isinstance(place, AmplifierOpening):
            one, more = (may_power(AmplifierGear("", "", channels=number), place, channel) for number in (1, 2))
            yield LoadAmplifier(place.id, one if one == more else None)


def _part(opening: Opening, name: Value = "") -> LoadPart:
    return LoadPart(
        opening=opening.id,
        name=name or opening.name,
        impedance=plain(opening.impedance),
        fed_through=opening.fed_through,
        then_fed_through=opening.then_fed_through,
        empty=opening.empty,
    )
