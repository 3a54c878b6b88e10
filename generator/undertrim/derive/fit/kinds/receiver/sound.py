"""Whether a receiver's outputs suit what the car wants: speaker level, line level to a factory amplifier, or a digital ring."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.factory_sound import systems
from undertrim.derive.fit.margins import Check, untold
from undertrim.derive.fit.stock import Gear
from undertrim.record.model import SoundSystem, VehicleRecord
from undertrim.record.model.kinds.receiver import ReceiverGear

LEVELS = {"speaker": "speaker level", "line": "line level", "digital-ring": "a digital ring"}
_TO_GET = {
    "speaker": "an amplifier",
    "line": "a line output or level converter",
    "digital-ring": "an interface for the digital ring",
}


@dataclass(frozen=True, slots=True)
class Match:
    """How the receiver's outputs meet the car: `parts` from stock, `to_get` what stock lacks, and words.

    `unknown` names what nobody recorded and what may ask for more between.
    """

    words: str
    part: Gear | None = None
    to_get: str = ""
    unknown: tuple[str, ...] = ()

    @property
    def checks(self) -> tuple[Check, ...]:
        """A check that cannot be told where something is not known; nothing else."""
        return (untold("sound", "Sound", self.unknown),) if self.unknown else ()


def match(record: VehicleRecord, car: Mapping[str, str], receiver: ReceiverGear, shelf: Sequence[Gear]) -> Match:
    """The match for one car. `shelf` are the converters and interfaces that suit it."""
    found = systems(record, car)
    if not found or found[0].output == "unknown":
        return Match(
            "what the factory radio sends to the speakers is unknown: look for a factory amplifier and meter its wires",
            unknown=("what the factory radio sends to the speakers (unknown)",),
        )
    system = found[0]
    if not receiver.outputs:
        return Match(
            "the outputs of the receiver are not recorded", unknown=("outputs of the receiver (not recorded)",)
        )
    return replace(_matched(system, receiver, shelf), unknown=_unwoken(system))


def _unwoken(system: SoundSystem) -> tuple[str, ...]:
    """That nobody said what switches a factory amplifier on."""
    unknown = system.amplifier and system.turn_on in ("", "unknown")
    return ("what switches the factory amplifier on (unknown)",) if unknown else ()


def _matched(system: SoundSystem, receiver: ReceiverGear, shelf: Sequence[Gear]) -> Match:
    wanted = LEVELS[system.output]
    if system.output in receiver.outputs:
        return Match(f"the car wants {wanted}: the receiver has it{_amplifier(system)}")
    part = _converter(system.output, receiver, shelf)
    if part:
        return Match(f"the car wants {wanted}, the receiver has none: {part.name} turns it{_amplifier(system)}", part)
    missing = f"the car wants {wanted}, which neither the receiver nor the stock has"
    return Match(f"{missing}{_amplifier(system)}", None, _TO_GET[system.output])


def _converter(wanted: str, receiver: ReceiverGear, shelf: Sequence[Gear]) -> Gear | None:
    """Gear that gives the wanted level: an interface, or a converter that the receiver can feed."""
    fitting = (
        item
        for item in shelf
        if item.facts.gives == wanted and (not item.facts.takes or item.facts.takes in receiver.outputs)
    )
    return next(fitting, None)


_TURN_ON = {
    "wire": "switched on by its own wire: join the amplifier turn-on",
    "data": "switched on by data: an interface must do it",
    "signal": "switched on by the signal itself",
    "unknown": "what switches it on is unknown: meter it",
}


def _amplifier(system: SoundSystem) -> str:
    if not system.amplifier:
        return ""
    place = f"; factory amplifier: {system.amplifier[0].lower()}{system.amplifier[1:].rstrip('.')}"
    return f"{place}, {_TURN_ON[system.turn_on or 'unknown']}"
