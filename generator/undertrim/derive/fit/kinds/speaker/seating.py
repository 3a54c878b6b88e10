"""How a speaker sits: the basket in the hole, the flange over it, the screws in their holes."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.speaker import bolts
from undertrim.derive.fit.kinds.speaker.bolts import Pose
from undertrim.derive.fit.kinds.speaker.names import BASKET
from undertrim.derive.fit.lengths import both
from undertrim.derive.fit.margins import Check, Number, found, known, uncertain, untold
from undertrim.derive.fit.outline import Outline, contain, outline, rectangle
from undertrim.record.model import Bolts, Face, Hole
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear
from undertrim.words import Value, message


@dataclass(frozen=True)  # without slots: held against many speakers
class Hold:
    """What a speaker sits on, by name: its hole and its bolt holes; the flat `panel` round the hole, if it is a car (`flat`)."""

    what: Value
    hole: Hole | None
    bolts: Bolts | None
    panel: Face | None = None
    flat: bool = False

    @cached_property
    def outline(self) -> Outline:
        """That of its hole."""
        return outline(message("fit-speaker/hole-of", of=self.what), self.hole)


@dataclass(frozen=True)  # without slots: held against many holds
class Stance:
    """A speaker as it stands, `turned` by 90 degrees or not."""

    speaker: SpeakerGear
    turned: bool = False

    @cached_property
    def basket(self) -> Outline:
        """The outline of its basket."""
        return self._posed(outline(BASKET, self.speaker.basket))

    @cached_property
    def flange(self) -> Outline:
        """The outline of its flange."""
        return self._posed(outline(message("fit-speaker/flange"), self.speaker.flange))

    @property
    def pose(self) -> Pose:
        """How it may stand: one that is round all over at any angle, any other upright or turned by 90 degrees."""
        return Pose(self.turned, free=_round(self.speaker))

    def _posed(self, item: Outline) -> Outline:
        return item.turned if self.turned else item


def seated(stance: Stance, hold: Hold, usual: Clearances) -> Iterator[Check]:
    """Basket, flange and bolts of a speaker on a hold, one after the other: most gear fails at the first, and nobody asks for the rest."""
    yield from through(stance, hold)
    yield from covered(stance.flange, hold, usual)
    yield from lying(message("fit-speaker/flange-on-panel"), stance.flange, hold)
    yield from bolts.match("bolts", stance.speaker.bolts, hold.bolts, usual["bolts"], hold.what, stance.pose)


def through(stance: Stance, hold: Hold) -> tuple[Check, ...]:
    """Whether the basket goes through the hole."""
    return contain("hole", message("fit-speaker/through", of=hold.what), stance.basket, hold.outline)


def covered(flange: Outline, hold: Hold, usual: Clearances) -> tuple[Check, ...]:
    """Whether a flange covers the hole with its overlap at both ends of each axis; else a plate must go between."""
    title, room = message("fit-speaker/covers", of=hold.what), (_twice(usual["overlap"]),)
    checks = contain("flange", title, hold.outline, flange, room, "adapter")
    return tuple(_open(check) for check in checks)


def lying(rim_title: Value, rim: Outline, hold: Hold) -> tuple[Check, ...]:
    """Whether a rim lies on the flat panel round the hole of a car."""
    if not hold.flat:
        return ()
    title = message("fit-speaker/on-panel", what=rim_title, of=hold.what)
    if hold.panel is None:
        return (untold("panel", title, [message("fit-speaker/lacks-panel")]),)
    panel = rectangle(message("fit-speaker/panel"), hold.panel)
    return contain("panel", title, rim, panel)


def _twice(overlap: Number) -> Number:
    return known(message("fit-speaker/both-ends", what=overlap.label), 2 * (overlap.value or 0), default=True)


def _open(check: Check) -> Check:
    """A failing flange in words: how much stays open at each end, or how little it overlaps."""
    if check.verdict != "fails" or check.gap is None:
        return check
    code = "open-at-ends" if check.gap < 0 else "overlap-at-ends"
    left = uncertain(message(f"fit-speaker/{code}", length=both(abs(check.gap) / 2)), (check.uncertainty or 0) / 2)
    return replace(check, said=found(check.title, message("fit-speaker/plate-needed", left=left)))


def turnable(speaker: SpeakerGear) -> bool:
    """Whether turning by 90 degrees changes anything."""
    return not _round(speaker) or (speaker.bolts is not None and speaker.bolts.pattern == "rectangle")


def plate(spacer: SpacerGear) -> Pose:
    """How a spacer or plate may stand: one with a round rim and a round hole at any angle."""
    return Pose(free=_all_round(spacer.flange, spacer.hole))


def _round(speaker: SpeakerGear) -> bool:
    return _all_round(speaker.basket, speaker.flange)


def _all_round(*outlines: Hole | None) -> bool:
    """Whether outlines are round, as far as they are recorded."""
    return {one.shape for one in outlines if one} == {"round"}
