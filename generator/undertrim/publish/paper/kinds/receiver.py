"""An opening in the dash as a template, and what goes over it."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.publish.paper.layout import DASHED, OUTLINE, THIN
from undertrim.publish.paper.pieces import Drawing, outline
from undertrim.record.gear import GearFacts
from undertrim.record.model.kinds.receiver import KitGear, ReceiverGear, ReceiverOpening


@dataclass(frozen=True, slots=True)
class Room:
    """An opening in the dash."""

    opening: ReceiverOpening

    @property
    def wanted(self) -> str:
        """The fields that hold its outline."""
        return "'face' with its width and height"

    def car(self, source: str) -> Iterator[Drawing]:
        """The opening."""
        yield outline("opening of the car", self.opening.face, OUTLINE, source)

    def gear(self, facts: GearFacts, name: str, source: str) -> Iterator[Drawing]:
        """A receiver with its trim, or the opening of a kit."""
        if isinstance(facts, ReceiverGear):
            yield outline(f"body of {name}", facts.body, DASHED, source)
            yield outline(f"front of {name} with its trim or screen", facts.trim, THIN, source)
        if isinstance(facts, KitGear):
            yield outline(f"opening of {name}", facts.opening, DASHED, source)
