"""Depth behind a speaker, room before it, and how high a spacer may be between the two."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.speaker.names import MOUNTING_DEPTH
from undertrim.derive.fit.kinds.speaker.seats import Seat, unseen
from undertrim.derive.fit.lengths import both
from undertrim.derive.fit.margins import Check, Number, capped, compare, known, remaining, total, typed
from undertrim.record.model import Blank, Depth
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import Items, Message, Value, message

_DEPTH = message("fit-speaker/depth")
_GRILLE = message("speaker-shown/grille")
_SPACER = message("fit-speaker/spacer")


@dataclass(frozen=True, slots=True)
class Room:
    """What is there and what a speaker takes, in mm; `reason` says why the depth is marginal at best, if it is.

    `gasket` raises the flange wherever it sits.
    """

    clear: Number
    behind: tuple[Number, ...]
    front: Number
    before: tuple[Number, ...]
    gasket: tuple[Number, ...] = ()
    reason: Value = ""

    def depth(self, height: Sequence[Number]) -> Check:
        """Depth margin of a speaker raised by `height`."""
        check = compare("depth", _DEPTH, [self.clear, *height, *self.gasket], self.behind, "spacer")
        return capped(check, self.reason)

    def grille(self, height: Sequence[Number]) -> Check:
        """Room to the grille of a speaker raised by `height`."""
        return compare("grille", _GRILLE, [self.front], [*height, *self.gasket, *self.before])

    def window(self, seat: Seat) -> tuple[float, float]:
        """The least and greatest height of a spacer on a seat, in mm; empty if the first is larger. All numbers must be known."""
        raised = [seat.offset, *self.gasket]
        least = remaining(total(self.behind), total([self.clear, *raised]))
        return max(0.0, least), remaining(total([self.front]), total([*raised, *self.before]))

    def spacer(self, seat: Seat) -> Check:
        """Whether any height of spacer would do on a seat."""
        free = self.depth([seat.offset]).margin
        if free is None or free >= 0:
            return self.grille([seat.offset])
        check = compare("spacer", _SPACER, [self.front, self.clear], [*self.before, *self.behind])
        return capped(check, self.reason)


def room(speaker: SpeakerGear, opening: SpeakerOpening, usual: Clearances) -> Room:
    """The room in an opening for a speaker.

    Where the thing behind the speaker leans against the mounting face, the depth at the edge of the magnet is less by its radius
    times the tangent.
    """
    depth = opening.depth or Depth(Blank.UNKNOWN)
    behind = (typed(MOUNTING_DEPTH, speaker.depth), *_tilted(speaker, depth), _rear(depth, usual))
    before = (typed(message("fit-speaker/protrusion"), speaker.protrusion), usual["grille"])
    clear = typed(message("fit/clear-depth"), depth.clear)
    front = typed(message("fit-speaker/room-to-grille"), opening.room_to_grille)
    reasons = tuple(filter(None, (_reason(depth, opening), unseen(opening))))
    return Room(clear, behind, front, before, _gasket(speaker), Items(reasons, "semicolon") if reasons else "")


def _gasket(speaker: SpeakerGear) -> tuple[Number, ...]:
    """What the gasket adds under the flange; one that nobody recorded may be any."""
    if speaker.gasket is Blank.NONE:
        return ()
    found = typed(message("fit-speaker/gasket"), speaker.gasket)
    return (_between(found, table("fit")["bounds"]["gasket"]) if found.value is None else found,)


def _between(missing: Number, most: float) -> Number:
    """A length that nobody recorded, from 0 to `most` mm: reckoned as 0."""
    return replace(missing, value=0, more=most, lacking=True)


def _tilted(speaker: SpeakerGear, depth: Depth) -> tuple[Number, ...]:
    """What a lean takes off at the edge of the magnet; nothing where the thing behind was looked at and stands square ('none')."""
    lean, what = depth.leans, depth.to or message("fit-speaker/thing-behind")
    if lean is Blank.NONE:
        return ()
    magnet = typed(message("fit-speaker/magnet"), speaker.magnet)
    if not isinstance(lean, Quantity):
        unseen = typed(message("fit-speaker/lean", of=what), lean)
        if magnet.value is None:
            return (unseen, magnet)
        return (_between(unseen, magnet.value / 2 * math.tan(math.radians(table("fit")["bounds"]["lean"]))),)
    if magnet.value is None:
        return (magnet,)
    radius, angle, coarse = magnet.value / 2, math.radians(lean.value), math.radians(lean.step)
    step = math.hypot(magnet.step / 2 * math.tan(angle), radius * coarse / math.cos(angle) ** 2)
    said = message("fit-speaker/lean-at-the-edge", of=what, lean=lean.text)
    return (known(said, radius * math.tan(angle), step),)


def _rear(depth: Depth, usual: Clearances) -> Number:
    """More room is kept to glass; what nobody recorded is taken as glass, and a note says so."""
    return usual["rear"] if depth.to_glass == "no" else usual["rear_glass"]


def _reason(depth: Depth, opening: SpeakerOpening) -> Message | None:
    """Why the depth is marginal at best. Only a place that is known to be outside a door needs no word about the glass."""
    if depth.over == "glass-down":
        return message("fit-speaker/glass-down")
    if not depth.over and (opening.in_a_door or not opening.area):
        return message("fit-speaker/glass-not-recorded")
    return None


def heights(what: str, least: float, most: float) -> Message:
    """What is to be got (`spacer` or `plate`), with its window of heights."""
    if least > 0:
        return message(f"fit-speaker/get-{what}-between", least=both(least), most=both(most))
    return message(f"fit-speaker/get-{what}-up-to", most=both(most))
