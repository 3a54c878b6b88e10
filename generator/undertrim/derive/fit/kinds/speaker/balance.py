"""The level of a new speaker at equal voltage: against the one that it replaces, and against those of the other channels."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from undertrim.derive.fit.stock import Gear, only
from undertrim.record.model import Blank, VehicleRecord
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import Language, Message, message

Impedance = Quantity | Blank | None


def level(old: Impedance, new: Impedance) -> Iterator[Message]:
    """The change of level where the new impedance replaces the old one; that it cannot be told where the old one is not known."""
    if not isinstance(new, Quantity) or not new.value:
        return
    if not isinstance(old, Quantity) or not old.value:
        yield message("fit-speaker/level-unknown")
    elif change := round(decibels(old.value, new.value), 1):
        yield _heard(change, message("fit-speaker/level", new=new, old=old, change=Signed(change)))


def balance(
    record: VehicleRecord, opening: SpeakerOpening, car: Mapping[str, str], gear: SpeakerGear, visit: Mapping[str, Gear]
) -> Iterator[Message]:
    """The level against the speakers of the other channels: the new ones of the visit, else those of the factory."""
    for other in record.openings_of(SpeakerOpening):
        if other.channel and opening.channel and other.when.holds(car):
            new = visit.get(other.id)
            theirs = only(new, SpeakerGear).facts.impedance if new else other.impedance
            if other.channel != opening.channel:
                yield from _against(new.name if new else other.name, theirs, gear.impedance)


def _against(name: str, theirs: Impedance, ours: Impedance) -> Iterator[Message]:
    if not isinstance(theirs, Quantity) or not isinstance(ours, Quantity) or not theirs.value or not ours.value:
        return
    if change := round(decibels(theirs.value, ours.value), 1):
        said = message("fit-speaker/balance", change=Signed(change), name=name, impedance=theirs)
        yield _heard(change, said)


def _heard(change: float, said: Message) -> Message:
    """What is said of a change, and after it that it is plainly heard (common practice, data/fit.toml)."""
    heard = float(table("fit")["level"]["heard"])
    return message("fit-speaker/heard", said=said, heard=heard) if abs(change) > heard else said


@dataclass(frozen=True, slots=True)
class Signed:
    """A change of level in dB with its sign: `+3.0`, `−1.2`."""

    decibels: float

    def say(self, speech: Language) -> str:
        """To a tenth."""
        return f"{self.decibels:+.1f}".replace("-", "−").replace(".", speech.decimal_mark)


def decibels(old: float, new: float) -> float:
    """By how many dB the power into `new` ohm is above that into `old` ohm at equal voltage: P = U²/Z."""
    return 10 * math.log10(old / new)
