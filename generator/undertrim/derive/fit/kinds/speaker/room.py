"""Depth behind a speaker, room before it, and how high a spacer may be between the two."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.speaker.seats import Seat, unseen
from undertrim.derive.fit.margins import Check, Number, both, capped, compare, known, remaining, total, typed
from undertrim.record.model import Blank, Depth
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity
from undertrim.resources import table


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
    reason: str = ""

    def depth(self, height: Sequence[Number]) -> Check:
        """Depth margin of a speaker raised by `height`."""
        check = compare("depth", "Depth behind the flange", [self.clear, *height, *self.gasket], self.behind, "spacer")
        return capped(check, self.reason)

    def grille(self, height: Sequence[Number]) -> Check:
        """Room to the grille of a speaker raised by `height`."""
        return compare("grille", "Room to the grille", [self.front], [*height, *self.gasket, *self.before])

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
        check = compare("spacer", "Height for a spacer", [self.front, self.clear], [*self.before, *self.behind])
        return capped(check, self.reason)


def room(speaker: SpeakerGear, opening: SpeakerOpening, usual: Clearances) -> Room:
    """The room in an opening for a speaker.

    Where the thing behind the speaker leans against the mounting face, the depth at the edge of the magnet is less by its radius
    times the tangent.
    """
    depth = opening.depth or Depth(Blank.UNKNOWN)
    behind = (typed("mounting depth", speaker.depth), *_tilted(speaker, depth), _rear(depth, usual))
    before = (typed("protrusion of the cone", speaker.protrusion), usual.grille)
    clear, front = typed("clear depth", depth.clear), typed("room to the grille", opening.room_to_grille)
    reason = "; ".join(filter(None, (_reason(depth, opening), unseen(opening))))
    return Room(clear, behind, front, before, _gasket(speaker), reason)


def _gasket(speaker: SpeakerGear) -> tuple[Number, ...]:
    """What the gasket adds under the flange; one that nobody recorded may be any."""
    if speaker.gasket is Blank.NONE:
        return ()
    found = typed("gasket, pressed flat", speaker.gasket)
    return (_between(found, table("fit")["bounds"]["gasket"]) if found.value is None else found,)


def _between(missing: Number, most: float) -> Number:
    """A length that nobody recorded, from 0 to `most` mm: reckoned as 0."""
    return replace(missing, value=0, more=most, lacking=True)


def _tilted(speaker: SpeakerGear, depth: Depth) -> tuple[Number, ...]:
    """What a lean takes off at the edge of the magnet; nothing where the thing behind was looked at and stands square ('none')."""
    lean, what = depth.leans, (depth.to or "the thing behind").lower()
    if lean is Blank.NONE:
        return ()
    magnet = typed("magnet diameter", speaker.magnet)
    if not isinstance(lean, Quantity):
        unseen = typed(f"lean of {what}", lean)
        if magnet.value is None:
            return (unseen, magnet)
        return (_between(unseen, magnet.value / 2 * math.tan(math.radians(table("fit")["bounds"]["lean"]))),)
    if magnet.value is None:
        return (magnet,)
    radius, angle, coarse = magnet.value / 2, math.radians(lean.value), math.radians(lean.step)
    step = math.hypot(magnet.step / 2 * math.tan(angle), radius * coarse / math.cos(angle) ** 2)
    return (known(f"lean of {what}, {lean.text}, at the edge of the magnet", radius * math.tan(angle), step),)


def _rear(depth: Depth, usual: Clearances) -> Number:
    """More room is kept to glass; what nobody recorded is taken as glass, and a note says so."""
    return usual.rear if depth.to_glass == "no" else usual.rear_glass


def _reason(depth: Depth, opening: SpeakerOpening) -> str:
    """Why the depth is marginal at best. Only a place that is known to be outside a door needs no word about the glass."""
    if depth.over == "glass-down":
        return "measured with the glass down only: measure over the whole travel"
    if not depth.over and (opening.in_a_door or not opening.area):
        return "not recorded whether the glass was moved: measure over the whole travel"
    return ""


def heights(least: float, most: float) -> str:
    """A window of heights in words."""
    return f"{both(least)} to {both(most)} high" if least > 0 else f"up to {both(most)} high"
