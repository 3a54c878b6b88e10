"""The register of kinds for templates: one line each. A room says what is drawn of an opening of its kind in true size."""

from collections.abc import Iterator
from typing import Protocol, assert_never

from undertrim.publish.printed.paper.kinds import amplifier, receiver, speaker, tweeter
from undertrim.publish.printed.paper.pieces import Drawing
from undertrim.record.gear import GearFacts
from undertrim.record.model import Opening
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.model.kinds.receiver import ReceiverOpening
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.model.kinds.tweeter import TweeterOpening
from undertrim.words import Message, Value


class Room(Protocol):
    """What is asked of every kind about one of its openings; `source` stands behind what each line means."""

    @property
    def wanted(self) -> Message:
        """The fields that hold its outline."""

    @property
    def up(self) -> Message:
        """What stands at the arrow that points up: from where the opening is seen."""

    @property
    def by_ruler(self) -> bool:
        """Whether its outline without gear says no more than two lengths do: of several sheets it is not prepared beforehand."""

    def car(self, source: Value) -> Iterator[Drawing]:
        """What is drawn of the car, its outline first."""

    def gear(self, facts: GearFacts, name: str, source: Value) -> Iterator[Drawing]:
        """What is drawn of gear over it; nothing of gear that is not laid over such an opening."""


def room(opening: Opening) -> Room:
    """The room of an opening's kind."""
    match opening:
        case AmplifierOpening():
            return amplifier.Room(opening)
        case ReceiverOpening():
            return receiver.Room(opening)
        case SpeakerOpening():
            return speaker.Room(opening)
        case TweeterOpening():
            return tweeter.Room(opening)
        case _:
            assert_never(opening)
