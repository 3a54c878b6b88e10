"""The register of kinds for the page: one line each. A room says what is shown of an opening of its kind."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any, Protocol, assert_never

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.stock import Gear
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts.kinds import amplifier, receiver, speaker, tweeter
from undertrim.publish.facts.kinds.amplifier.feeding import Feeding
from undertrim.publish.facts.kinds.receiver.joining import Joining
from undertrim.publish.facts.loads import Load
from undertrim.publish.facts.rows import Row
from undertrim.publish.pictures.drawings.axis import Section
from undertrim.publish.pictures.drawings.bay import Bay
from undertrim.publish.pictures.drawings.dash import Dash
from undertrim.publish.pictures.drawings.front import Front
from undertrim.publish.pictures.drawings.rings import Rings
from undertrim.record.model import Face, Hole, Opening
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.model.kinds.receiver import ReceiverOpening
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.model.kinds.tweeter import TweeterOpening
from undertrim.words import Value

Drawing = Bay | Dash | Front | Rings | Section
"""The input of a drawing of an opening."""

SIZES: dict[type, tuple[str, ...]] = {**amplifier.SIZES, **receiver.SIZES, **speaker.SIZES, **tweeter.SIZES}
"""The fields that the scripts reckon with, by kind of gear."""

CARDS: Mapping[type, Callable[[Any], Iterator[Value]]] = {
    **amplifier.CARDS,
    **receiver.CARDS,
    **speaker.CARDS,
    **tweeter.CARDS,
}
"""What the card of a piece of gear says beside what all gear has, by kind of gear; sentences without their full stops."""


class Room(Protocol):
    """What is asked of every kind about one of its openings. Rows are fields with labels and values; a row without a value is left out."""

    @property
    def outline(self) -> Face | Hole | None:
        """What a template draws of the car."""

    @property
    def form(self) -> tuple[str, ...]:
        """The fields of the opening that the scripts reckon with."""

    def outlines(self) -> Iterator[Row]:
        """The rows before its depth."""

    def more(self) -> Iterator[Row]:
        """The rows after it."""

    def loads(self, vehicle: Vehicle) -> Iterator[Load]:
        """The loads that the form reckons with."""

    def joining(self, vehicle: Vehicle) -> Joining | None:
        """What gear there must be joined to, where it takes the place of a factory unit."""

    def feeding(self, vehicle: Vehicle) -> Feeding | None:
        """What an amplifier there is fed by, hears and drives."""

    def drawn(
        self, usual: Clearances, fit: Fit | None, gear: Gear | None, between: Gear | None
    ) -> Mapping[str, Drawing]:
        """The inputs of its drawings by their name, with the gear that fits best and what goes between; empty where nothing is measured."""


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
