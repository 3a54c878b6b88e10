"""Which amplifier drives which channels of the speakers: of the factory or added, asked in this one place."""

from collections.abc import Iterator, Mapping

from undertrim.derive.fit.stock import Gear, Stocked, of_kind
from undertrim.record.model import SoundSystem, VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening

_SINGLE = "bass"
"""The channel that an amplifier of one output is for, where its place says nothing."""


def may_power(facts: AmplifierGear, place: AmplifierOpening | None, channel: str) -> bool:
    """Whether an amplifier in a place drives a channel: those that its place names, else bass with one output, any with more.

    A channel that nobody recorded (empty) may be any that is not the bass.
    """
    named = place.powers if place else ()
    if named:
        return channel in named or (not channel and named != (_SINGLE,))
    return facts.channels > 1 or channel == _SINGLE


def added(record: VehicleRecord, visit: Mapping[str, Gear], channel: str) -> list[Stocked[AmplifierGear]]:
    """The amplifiers of a visit that drive a channel."""
    return [one for place, one in _amplifiers(record, visit) if may_power(one.facts, place, channel)]


def by_radio(system: SoundSystem, channel: str) -> bool:
    """Whether the radio drives a channel by itself beside a factory amplifier, which names the channels that it drives."""
    return bool(system.amplifier and system.powers and channel and channel not in system.powers)


def _amplifiers(
    record: VehicleRecord, visit: Mapping[str, Gear]
) -> Iterator[tuple[AmplifierOpening | None, Stocked[AmplifierGear]]]:
    """Each amplifier of a visit with its place."""
    for opening, one in visit.items():
        place = record.openings.get(opening)
        for amplifier in of_kind([one], AmplifierGear):
            yield place if isinstance(place, AmplifierOpening) else None, amplifier
