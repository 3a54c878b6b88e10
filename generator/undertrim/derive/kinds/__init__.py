"""The register of kinds for what their openings want: one line each."""

from collections.abc import Iterator
from typing import assert_never

from undertrim.derive.kinds import amplifier, receiver, speaker, tweeter
from undertrim.derive.opening_details import NOTHING, Details
from undertrim.derive.opening_fact import Fact
from undertrim.record.model import Opening, VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.model.kinds.receiver import ReceiverOpening
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.model.kinds.tweeter import TweeterOpening


def required(record: VehicleRecord, opening: Opening) -> Iterator[Fact]:
    """All facts that an opening wants by its kind."""
    match opening:
        case AmplifierOpening():
            return amplifier.required(opening)
        case ReceiverOpening():
            return receiver.required(opening)
        case SpeakerOpening():
            return speaker.required(record, opening)
        case TweeterOpening():
            return tweeter.required(record, opening)
        case _:
            assert_never(opening)


def details(record: VehicleRecord, opening: Opening, entry: str) -> Details:
    """What the usual step `entry` of fitting says of this opening, beside what is usual for its kind."""
    match opening:
        case AmplifierOpening():
            return amplifier.details(record, opening, entry)
        case ReceiverOpening() | SpeakerOpening() | TweeterOpening():
            return NOTHING
        case _:
            assert_never(opening)
