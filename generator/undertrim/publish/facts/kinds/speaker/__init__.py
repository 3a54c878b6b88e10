"""A speaker's opening on the page."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.joined import DIRECT
from undertrim.derive.fit.margins import NOT_RECORDED
from undertrim.derive.fit.stock import Gear, only
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts import gear_lines, words
from undertrim.publish.facts.dimensions import bolts, face, hole
from undertrim.publish.facts.kinds.speaker.drawn import front, section
from undertrim.publish.facts.loads import Load, loads
from undertrim.publish.facts.rows import Row
from undertrim.publish.pictures.drawings.axis import Section
from undertrim.publish.pictures.drawings.front import Front
from undertrim.record.model import Hole
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity
from undertrim.words import Value, message

SIZES: dict[type, tuple[str, ...]] = {
    SpeakerGear: ("basket", "flange", "bolts", "depth", "magnet", "protrusion", "gasket", "impedance"),
    SpacerGear: ("thickness", "hole", "bolts", "car_bolts", "flange"),
}
"""The fields that the form beside an opening reckons with, by kind of gear."""


def said(facts: SpeakerGear) -> Iterator[Value]:
    """What a card of a speaker says."""
    yield from gear_lines.known_as(facts.nominal)
    if facts.terminals:
        yield message("gear-card/terminals", terminals=facts.terminals.rstrip("."))


def said_of_spacer(facts: SpacerGear) -> Iterator[Value]:
    """What a card of a spacer says."""
    yield from gear_lines.known_as(facts.nominal)


CARDS: dict[type, Callable[[Any], Iterator[Value]]] = {SpeakerGear: said, SpacerGear: said_of_spacer}
"""What a card says, by kind of gear."""


@dataclass(frozen=True, slots=True)
class Room:
    """A place for a speaker."""

    opening: SpeakerOpening

    @property
    def outline(self) -> Hole | None:
        """Its hole."""
        return self.opening.hole

    @property
    def form(self) -> tuple[str, ...]:
        """The fields of the opening that its form reckons with."""
        return ("hole", "bolts", "panel", "depth", "room_to_grille", "factory_spacer", "impedance", "crash_sensor", "in_a_door", "area")  # fmt: skip

    def outlines(self) -> Iterator[Row]:
        """Hole, bolt holes and the panel round them."""
        if self.opening.hole:
            yield "hole", message("speaker-shown/hole"), hole(self.opening.hole)
        if self.opening.bolts:
            yield "bolts", message("speaker-shown/bolts"), bolts(self.opening.bolts)
        if self.opening.panel:
            yield "panel", message("speaker-shown/panel"), face(self.opening.panel)

    def more(self) -> Iterator[Row]:
        """What stands before and under it, and what the factory's is."""
        nominal = self.opening.nominal
        yield (
            "room_to_grille",
            message("speaker-shown/grille"),
            words.quantity(self.opening.room_to_grille) or NOT_RECORDED,
        )
        yield (
            "factory_spacer",
            message("speaker-shown/spacer"),
            words.quantity(self.opening.factory_spacer) or NOT_RECORDED,
        )
        yield "impedance", message("speaker-shown/impedance"), words.quantity(self.opening.impedance) or NOT_RECORDED
        yield "channel", message("speaker-shown/channel"), self._channel()
        known = message("speaker-shown/nominal", name=nominal) if nominal else ""
        yield "nominal", message("speaker-shown/known-as"), known

    def _channel(self) -> Value:
        """The outputs that feed it, and through what."""
        if not self.opening.channel:
            return ""
        channel, through = message(f"channels/{self.opening.channel}"), self.opening.fed_through
        return channel if through in DIRECT else message(f"speaker-shown/channel-{through}", channel=channel)

    def loads(self, vehicle: Vehicle) -> Iterator[Load]:
        """What drives it and what is joined to it, in each kind of car."""
        return loads(vehicle, self.opening)

    def joining(self, vehicle: Vehicle) -> None:
        """Nothing: it takes the place of no factory unit that does more than sound."""

    def feeding(self, vehicle: Vehicle) -> None:
        """Nothing: no cable of its own feeds it."""

    def drawn(
        self, usual: Clearances, fit: Fit | None, gear: Gear | None, between: Gear | None
    ) -> Mapping[str, Front | Section]:
        """From the front, and cut along its axis."""
        speaker = only(gear, SpeakerGear) if gear else None
        spacer = only(between, SpacerGear) if between else None
        made: dict[str, Front | Section] = {}
        if self.opening.hole:
            made["front"] = front(self.opening, fit, speaker, spacer)
        if self.opening.depth and isinstance(self.opening.depth.clear, Quantity):
            made["section"] = section(self.opening, fit, speaker, spacer)
        return made
