"""A place for an amplifier as a template from above: its floor, the footprint of an amplifier and the holes to fix it by."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from undertrim.publish.printed.paper import outlines
from undertrim.publish.printed.paper.layout import DASHED, OUTLINE
from undertrim.publish.printed.paper.pieces import Drawing, bolts, outline
from undertrim.record.gear import GearFacts
from undertrim.record.model import Bolts, Face
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening, Box
from undertrim.record.units import Quantity
from undertrim.words import Message, Value, message


@dataclass(frozen=True, slots=True)
class Room:
    """A place for an amplifier."""

    opening: AmplifierOpening

    @property
    def wanted(self) -> Message:
        """The field that holds its floor."""
        return message("paper/wanted-space")

    @property
    def up(self) -> Message:
        """From above."""
        return message("paper/up-front")

    @property
    def by_ruler(self) -> bool:
        """A floor by itself is its two lengths."""
        return True

    def car(self, source: Value) -> Iterator[Drawing]:
        """The floor."""
        space = self.opening.space
        yield outline(message("paper/floor-of-car"), Face(space.width, space.depth) if space else None, OUTLINE, source)

    def gear(self, facts: GearFacts, name: str, source: Value) -> Iterator[Drawing]:
        """The footprint of an amplifier on its feet, turned where only that fits, and its fixing holes."""
        if isinstance(facts, AmplifierGear) and facts.size:
            turned = _turned(facts.size, self.opening.space)
            across, deep = (facts.size.depth, facts.size.width) if turned else (facts.size.width, facts.size.depth)
            yield outline(message("paper/footprint-of", gear=name), Face(across, deep), DASHED, source)
            yield bolts(
                message("drawings/bolt-holes-of", gear=name),
                _holes(facts.bolts, turned=turned),
                outlines.diagonal,
                source,
            )


def _turned(size: Box, space: Box | None) -> bool:
    """Whether it goes in turned by 90 degrees and not as it is."""
    return space is not None and not _within(size.width, size.depth, space) and _within(size.depth, size.width, space)


def _within(across: object, deep: object, space: Box) -> bool:
    pairs = ((across, space.width), (deep, space.depth))
    return all(
        isinstance(one, Quantity) and isinstance(room, Quantity) and one.value <= room.value for one, room in pairs
    )


def _holes(pattern: Bolts | None, *, turned: bool) -> Bolts | None:
    """The holes as they then stand."""
    return replace(pattern, width=pattern.height, height=pattern.width) if pattern and turned else pattern
