"""The level of a new speaker at equal voltage: against the one that it replaces, and against those of the other channels."""

import math
from collections.abc import Iterator, Mapping

from undertrim.derive.fit.stock import Gear, only
from undertrim.record.model import Blank, VehicleRecord
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity, show
from undertrim.resources import table

Impedance = Quantity | Blank | None


def level(old: Impedance, new: Impedance) -> Iterator[str]:
    """The change of level where the new impedance replaces the old one; that it cannot be told where the old one is not known."""
    if not isinstance(new, Quantity) or not new.value:
        return
    if not isinstance(old, Quantity) or not old.value:
        yield "the level against the factory speaker cannot be told: its impedance is not recorded"
    elif change := round(decibels(old.value, new.value), 1):
        yield f"{show(new)} in place of {show(old)}: {signed(change)} dB at equal voltage{_heard(change)}"


def balance(
    record: VehicleRecord, opening: SpeakerOpening, car: Mapping[str, str], gear: SpeakerGear, visit: Mapping[str, Gear]
) -> Iterator[str]:
    """The level against the speakers of the other channels: the new ones of the visit, else those of the factory."""
    for other in record.openings_of(SpeakerOpening):
        if other.channel and opening.channel and other.when.holds(car):
            new = visit.get(other.id)
            theirs = only(new, SpeakerGear).facts.impedance if new else other.impedance
            if other.channel != opening.channel:
                yield from _against(new.name if new else other.name, theirs, gear.impedance)


def _against(name: str, theirs: Impedance, ours: Impedance) -> Iterator[str]:
    if not isinstance(theirs, Quantity) or not isinstance(ours, Quantity) or not theirs.value or not ours.value:
        return
    if change := round(decibels(theirs.value, ours.value), 1):
        yield f"{signed(change)} dB against {name} ({show(theirs)}) at equal voltage: set the fader by ear{_heard(change)}"


def _heard(change: float) -> str:
    """That a change is plainly heard (common practice, data/fit.toml)."""
    heard = float(table("fit")["level"]["heard"])
    return f", more than the {heard:g} dB that are plainly heard" if abs(change) > heard else ""


def signed(change: float) -> str:
    """A change of level with its sign: `+3.0`, `−1.2`."""
    return f"{change:+.1f}".replace("-", "−")


def decibels(old: float, new: float) -> float:
    """By how many dB the power into `new` ohm is above that into `old` ohm at equal voltage: P = U²/Z."""
    return 10 * math.log10(old / new)
