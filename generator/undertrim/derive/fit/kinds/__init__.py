"""The register of kinds for fit: one line each. A room says how gear goes into an opening of its kind."""

from collections.abc import Iterator, Sequence
from typing import Protocol, assert_never

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds import amplifier, receiver, speaker, tweeter
from undertrim.derive.fit.nearest import Size
from undertrim.derive.fit.place import Place
from undertrim.derive.fit.stock import Gear
from undertrim.derive.fit.verdict import Fit
from undertrim.record.model import Opening, VehicleRecord, When
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.model.kinds.receiver import ReceiverOpening
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.model.kinds.tweeter import TweeterOpening
from undertrim.words import Value


class Room(Protocol):
    """What is asked of every kind about one of its openings. Gear is of the kind that the opening takes; TypeError otherwise."""

    def conditions(self, record: VehicleRecord) -> Iterator[When]:
        """On what of the car the answer depends, beyond the opening, the sound and what suits it."""

    def fit(self, place: Place, gear: Gear) -> Fit:
        """The answer for one piece of gear, by size and by all that it must be joined to."""

    def by_size(self, gear: Gear, between: Sequence[Gear], usual: Clearances) -> Fit:
        """The answer by size alone; what can go `between` is of any kind, and what cannot here is passed over."""

    def limits(self, usual: Clearances) -> Iterator[Value]:
        """What gear must keep to go in without anything between, in words."""

    def needs(self) -> Iterator[tuple[Value, Value]]:
        """What the job costs besides the gear, whatever that is: a title and a sentence each."""

    def size(self, gear: Gear) -> Size:
        """How large a piece of gear is."""


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
