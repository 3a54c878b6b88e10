"""A tweeter's place as a template, and what goes over it."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.derive.fit.kinds.tweeter.mounted import goes_here
from undertrim.publish.printed.paper.layout import DASHED, OUTLINE, THIN
from undertrim.publish.printed.paper.pieces import Drawing, outline
from undertrim.record.gear import GearFacts
from undertrim.record.model import Hole
from undertrim.record.model.kinds.tweeter import TweeterGear, TweeterOpening
from undertrim.record.units import Quantity
from undertrim.words import Message, Value, message

_SHOWN = {"flush": "drawings/body-of", "surface": "paper/surface-of", "angled": "paper/angled-of"}
"""What is drawn of a mount."""


@dataclass(frozen=True, slots=True)
class Room:
    """A place for a tweeter."""

    opening: TweeterOpening

    @property
    def wanted(self) -> Message:
        """The fields that hold its outline."""
        return message("paper/wanted-cut-out")

    @property
    def up(self) -> Message:
        """From the cabin."""
        return message("paper/up")

    @property
    def by_ruler(self) -> bool:
        """Its cut-out is marked through it."""
        return False

    def car(self, source: Value) -> Iterator[Drawing]:
        """Cut-out, cup and flat face, as far as they are measured."""
        cup = self.opening.cup
        named = (
            (message("paper/cut-out-of-car"), self.opening.cut_out),
            (message("paper/cup-of-car"), cup.diameter if cup else None),
            (message("paper/flat-of-car"), self.opening.flat),
        )
        measured: list[tuple[Message, Hole | None]] = [
            (what, Hole("round", across)) for what, across in named if isinstance(across, Quantity)
        ]
        for what, hole in measured or [(named[0][0], None)]:
            yield outline(what, hole, OUTLINE, source)

    def gear(self, facts: GearFacts, name: str, source: Value) -> Iterator[Drawing]:
        """The mount of a tweeter that goes here, with its rim; each one where it is not known how one is held."""
        for mount in goes_here(facts, self.opening) if isinstance(facts, TweeterGear) else ():
            yield outline(message(_SHOWN[mount.mount], gear=name), Hole("round", mount.diameter), DASHED, source)
            if isinstance(mount.rim, Quantity):
                yield outline(message("paper/rim-of", gear=name), Hole("round", mount.rim), THIN, source)
