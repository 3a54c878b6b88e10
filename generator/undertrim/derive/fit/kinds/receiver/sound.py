"""Whether a receiver's outputs suit what the car wants: speaker level, line level to a factory amplifier, or a digital ring."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.factory_sound import systems
from undertrim.derive.fit.margins import Check, untold
from undertrim.derive.fit.stock import Gear
from undertrim.record.model import SoundSystem, VehicleRecord
from undertrim.record.model.kinds.receiver import ReceiverGear
from undertrim.words import Message, Value, message

LEVELS = {level: message(f"levels/{level}") for level in ("speaker", "line", "digital-ring")}
"""What the signal is that a factory radio sends, in words, by `output`."""
_SOUND = message("fit-receiver/sound")


@dataclass(frozen=True, slots=True)
class Match:
    """How the receiver's outputs meet the car: `parts` from stock, `to_get` what stock lacks, and words.

    `unknown` names what nobody recorded and what may ask for more between.
    """

    words: Message
    part: Gear | None = None
    to_get: Message | None = None
    unknown: tuple[Message, ...] = ()

    @property
    def checks(self) -> tuple[Check, ...]:
        """A check that cannot be told where something is not known; nothing else."""
        return (untold("sound", _SOUND, self.unknown),) if self.unknown else ()


def match(record: VehicleRecord, car: Mapping[str, str], receiver: ReceiverGear, shelf: Sequence[Gear]) -> Match:
    """The match for one car. `shelf` are the converters and interfaces that suit it."""
    found = systems(record, car)
    if not found or found[0].output == "unknown":
        return Match(message("fit-receiver/output-unknown"), unknown=(message("fit-receiver/lacks-output"),))
    system = found[0]
    if not receiver.outputs:
        return Match(message("fit-receiver/outputs-not-recorded"), unknown=(message("fit-receiver/lacks-outputs"),))
    return replace(_matched(system, receiver, shelf), unknown=_unwoken(system))


def _unwoken(system: SoundSystem) -> tuple[Message, ...]:
    """That nobody said what switches a factory amplifier on."""
    unknown = system.amplifier and system.turn_on in ("", "unknown")
    return (message("fit-receiver/lacks-turn-on"),) if unknown else ()


def _matched(system: SoundSystem, receiver: ReceiverGear, shelf: Sequence[Gear]) -> Match:
    wanted = LEVELS[system.output]
    if system.output in receiver.outputs:
        return Match(_amplified(message("fit-receiver/level-had", level=wanted), system))
    part = _converter(system.output, receiver, shelf)
    if part:
        return Match(_amplified(message("fit-receiver/level-turned", level=wanted, by=part.name), system), part)
    missing = message("fit-receiver/level-missing", level=wanted)
    return Match(_amplified(missing, system), None, message(f"fit-receiver/get-{system.output}"))


def _converter(wanted: str, receiver: ReceiverGear, shelf: Sequence[Gear]) -> Gear | None:
    """Gear that gives the wanted level: an interface, or a converter that the receiver can feed."""
    fitting = (
        item
        for item in shelf
        if item.facts.gives == wanted and (not item.facts.takes or item.facts.takes in receiver.outputs)
    )
    return next(fitting, None)


def _amplified(said: Message, system: SoundSystem) -> Message:
    """What is said, and after it where the factory amplifier is and what switches it on, if there is one."""
    if not system.amplifier:
        return said
    how = message(f"fit-receiver/turn-on-{system.turn_on or 'unknown'}")
    return message("fit-receiver/amplified", said=said, amplifier=_within(system.amplifier), how=how)


def _within(text: str) -> Value:
    """A record's own text as it stands within a sentence."""
    return f"{text[0].lower()}{text[1:].rstrip('.')}"
