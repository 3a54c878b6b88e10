"""An opening in the dash as a template, and what goes over it."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.publish.printed.paper.layout import DASHED, OUTLINE, THIN
from undertrim.publish.printed.paper.pieces import Drawing, outline
from undertrim.record.gear import GearFacts
from undertrim.record.model.kinds.receiver import KitGear, ReceiverGear, ReceiverOpening
from undertrim.words import Message, Value, message


@dataclass(frozen=True, slots=True)
class Room:
    """An opening in the dash."""

    opening: ReceiverOpening

    @property
    def wanted(self) -> Message:
        """The fields that hold its outline."""
        return message("paper/wanted-face")

    @property
    def up(self) -> Message:
        """From the cabin."""
        return message("paper/up")

    @property
    def by_ruler(self) -> bool:
        """It is laid on the dash."""
        return False

    def car(self, source: Value) -> Iterator[Drawing]:
        """The opening."""
        yield outline(message("paper/opening-of-car"), self.opening.face, OUTLINE, source)

    def gear(self, facts: GearFacts, name: str, source: Value) -> Iterator[Drawing]:
        """A receiver with its trim, or the opening of a kit."""
        if isinstance(facts, ReceiverGear):
            yield outline(message("drawings/body-of", gear=name), facts.body, DASHED, source)
            yield outline(message("paper/front-of", gear=name), facts.trim, THIN, source)
        if isinstance(facts, KitGear):
            yield outline(message("paper/opening-of", gear=name), facts.opening, DASHED, source)
