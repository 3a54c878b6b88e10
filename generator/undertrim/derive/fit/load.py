"""What a new speaker is to the amplifier that drives it: the load of its channel, and its level beside the others."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from undertrim.derive.fit.margins import Check, Number, Verdict
from undertrim.derive.fit.notes import decibels, signed
from undertrim.record.model import Opening, SoundSystem, VehicleRecord
from undertrim.record.units import Quantity, parse, show
from undertrim.resources import table


@dataclass(frozen=True, slots=True)
class Load:
    """What the impedance of a speaker comes to: a check against a recorded limit, and notes."""

    checks: tuple[Check, ...] = ()
    notes: tuple[str, ...] = ()


def load(record: VehicleRecord, opening: Opening, car: Mapping[str, str], impedance: Quantity | None) -> Load:
    """The load that a new speaker makes of its channel in one car. Openings of one channel are taken as joined in parallel.

    One that is fed through a capacitor or crossover loads the channel in its own range alone and is not counted.
    """
    if impedance is None:
        return Load()
    others = sharing(record, opening, car)
    apart = tuple(_apart(other) for other in others if other.fed_through not in ("", "direct"))
    beside = [other for other in others if other.fed_through in ("", "direct")]
    lost = [other.name for other in beside if not isinstance(other.impedance, Quantity)]
    notes = (*apart, *_balance(record, opening, car, impedance))
    if lost:
        said = (
            f"in parallel with {', '.join(lost)}, whose impedance is not recorded: meter the pair before it is driven"
        )
        return Load(notes=(said, *notes))
    parts = [impedance, *(other.impedance for other in beside if isinstance(other.impedance, Quantity))]
    together = parallel([part.value for part in parts])
    checks = tuple(_check(system, parts, together) for system in _driving(record, car))
    return Load(checks, (*_together(opening, beside, together), *_low(checks, together), *notes))


def _apart(other: Opening) -> str:
    if other.fed_through == "unknown":
        return f"{other.name} on the same channel: how they are fed is unknown, so the load there cannot be told"
    return f"{other.name} on the same channel are fed through a {other.fed_through}: they add load in their own range alone"


def parallel(loads: Sequence[float]) -> float:
    """Several loads in parallel, in ohm: 1/Z is the sum of 1/z."""
    return 1 / sum(1 / one for one in loads)


def sharing(record: VehicleRecord, opening: Opening, car: Mapping[str, str]) -> list[Opening]:
    """The other openings that one car has on the same channel."""
    return [
        other
        for other in record.openings.values()
        if other.id != opening.id and other.channel and other.channel == opening.channel and other.when.holds(car)
    ]


def systems(record: VehicleRecord, car: Mapping[str, str]) -> list[SoundSystem]:
    """The sound systems that a car may have: one, if the record is right."""
    return [system for system in record.sound.values() if system.when.holds(car)]


def _driving(record: VehicleRecord, car: Mapping[str, str]) -> list[SoundSystem]:
    """Systems with a factory amplifier, which stays, and a recorded limit."""
    return [one for one in systems(record, car) if one.amplifier and isinstance(one.least_load, Quantity)]


def _check(system: SoundSystem, parts: Sequence[Quantity], together: float) -> Check:
    least = system.least_load
    assert isinstance(least, Quantity)
    margin = round(together - least.value, 9)
    numbers = (*(Number("impedance", part.value, 0, show(part)) for part in parts),)
    numbers = (*numbers, Number("least load of the factory amplifier", least.value, 0, show(least)))
    words = f"Load on the factory amplifier: {ohms(together)}, {show(least)} at least"
    verdict: Verdict = "fits" if margin >= 0 else "fails"
    return Check("load", "Load on the factory amplifier", verdict, words, least.value, together, margin, 0, numbers, unit="ohm")  # fmt: skip


def _together(opening: Opening, others: Sequence[Opening], together: float) -> Iterator[str]:
    if others:
        names = ", ".join(other.name for other in others)
        yield f"on the {opening.channel} channel with {names}: {ohms(together)} together, in parallel"


def _low(checks: Sequence[Check], together: float) -> Iterator[str]:
    """A load below the usual limit, where no limit is recorded."""
    usual = usual_load()
    if not checks and together < usual.value:
        yield f"{ohms(together)} is below the {show(usual)} that outputs usually allow (common practice): see what drives it"


def _balance(record: VehicleRecord, opening: Opening, car: Mapping[str, str], impedance: Quantity) -> Iterator[str]:
    """The level against the speakers of the other channels as the factory fitted them."""
    for other in record.openings.values():
        if other.kind != "speaker" or not other.channel or not opening.channel or not other.when.holds(car):
            continue
        if other.channel != opening.channel and isinstance(other.impedance, Quantity):
            change = round(decibels(other.impedance.value, impedance.value), 1)
            if change:
                yield f"{signed(change)} dB against {other.name} ({show(other.impedance)}) at equal voltage: set the fader by ear"


def ohms(value: float) -> str:
    """A load in words: `2.67 Ω`."""
    return f"{round(value, 2):g} Ω"


@cache
def usual_load() -> Quantity:
    """The impedance that outputs usually allow (common practice, no source)."""
    return parse(table("fit")["load"]["least"], "resistance")


TURN_ON = "amplifier-turn-on"


def woken_by_data(record: VehicleRecord, car: Mapping[str, str]) -> bool:
    """Whether data switches the factory amplifier of one car on, so that something must send them."""
    return any(system.turn_on == "data" for system in systems(record, car))
