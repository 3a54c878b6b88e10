"""A speaker's opening as a template, and what goes over it."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.publish.printed.paper import outlines
from undertrim.publish.printed.paper.layout import DASHED, OUTLINE, THIN
from undertrim.publish.printed.paper.pieces import Drawing, bolts, outline
from undertrim.record.gear import GearFacts
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.words import Message, Value, message


@dataclass(frozen=True, slots=True)
class Room:
    """A place for a speaker."""

    opening: SpeakerOpening

    @property
    def wanted(self) -> Message:
        """The fields that hold its outline."""
        return message("paper/wanted-hole")

    @property
    def up(self) -> Message:
        """From the cabin."""
        return message("paper/up")

    @property
    def by_ruler(self) -> bool:
        """Its holes are marked through it."""
        return False

    def car(self, source: Value) -> Iterator[Drawing]:
        """The hole and its bolt holes."""
        yield outline(message("drawings/hole-of-car"), self.opening.hole, OUTLINE, source)
        yield bolts(message("drawings/bolt-holes-of-car"), self.opening.bolts, outlines.upright, source)

    def gear(self, facts: GearFacts, name: str, source: Value) -> Iterator[Drawing]:
        """A speaker, or a spacer with its bolt holes on both sides."""
        if isinstance(facts, SpeakerGear):
            yield outline(message("paper/basket-of", gear=name), facts.basket, DASHED, source)
            yield outline(message("drawings/flange-of", gear=name), facts.flange, THIN, source)
            yield bolts(message("drawings/bolt-holes-of", gear=name), facts.bolts, outlines.diagonal, source)
        if isinstance(facts, SpacerGear):
            yield outline(message("paper/hole-in", gear=name), facts.hole, DASHED, source)
            yield outline(message("paper/rim-of", gear=name), facts.flange, THIN, source)
            yield bolts(message("drawings/bolt-holes-of", gear=name), facts.bolts, outlines.diagonal, source)
            if facts.car_bolts:
                yield bolts(message("paper/bolts-towards-car", gear=name), facts.car_bolts, outlines.triangle, source)
