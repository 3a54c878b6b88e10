"""A speaker's opening as a template, and what goes over it."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.publish.paper import outlines
from undertrim.publish.paper.layout import DASHED, OUTLINE, THIN
from undertrim.publish.paper.pieces import Drawing, bolts, outline
from undertrim.record.gear import GearFacts
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening


@dataclass(frozen=True, slots=True)
class Room:
    """A place for a speaker."""

    opening: SpeakerOpening

    @property
    def wanted(self) -> str:
        """The fields that hold its outline."""
        return "'hole' with its shape and size"

    def car(self, source: str) -> Iterator[Drawing]:
        """The hole and its bolt holes."""
        yield outline("hole of the car", self.opening.hole, OUTLINE, source)
        yield bolts("bolt holes of the car", self.opening.bolts, outlines.upright, source)

    def gear(self, facts: GearFacts, name: str, source: str) -> Iterator[Drawing]:
        """A speaker, or a spacer with its bolt holes on both sides."""
        if isinstance(facts, SpeakerGear):
            yield outline(f"basket of {name}, what must pass through", facts.basket, DASHED, source)
            yield outline(f"flange of {name}", facts.flange, THIN, source)
            yield bolts(f"bolt holes of {name}", facts.bolts, outlines.diagonal, source)
        if isinstance(facts, SpacerGear):
            yield outline(f"hole in {name}", facts.hole, DASHED, source)
            yield outline(f"rim of {name}", facts.flange, THIN, source)
            yield bolts(f"bolt holes of {name}", facts.bolts, outlines.diagonal, source)
            if facts.car_bolts:
                yield bolts(f"bolt holes of {name} towards the car", facts.car_bolts, outlines.triangle, source)
