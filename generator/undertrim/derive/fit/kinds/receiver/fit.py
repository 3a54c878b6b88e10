"""A receiver against an opening in the dash: straight into it, or through a kit."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.margins import Check, Number, both, compare, typed, untold
from undertrim.derive.fit.outline import Outline, contain, rectangle
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import Fit, Way, best, decide
from undertrim.record.model import Face
from undertrim.record.model.kinds.receiver import KitGear, ReceiverGear, ReceiverOpening
from undertrim.record.units import Quantity

_KIT = "a kit"
_FRONT = "Trim before the dash"


@dataclass(frozen=True, slots=True)
class Case:
    """A receiver before an opening, with the usual room."""

    receiver: Stocked[ReceiverGear]
    opening: ReceiverOpening
    usual: Clearances

    def checks(self, face: Face | None, what: str) -> list[Check]:
        """Body against one face, and depth."""
        body = rectangle("body", self.receiver.facts.body)
        through = contain("body", f"Body in the {what}", body, rectangle(what, face))
        return [*through, *self.front(), self.depth()]

    def front(self) -> tuple[Check, ...]:
        """Trim or screen in the room before the dash; what stays within the opening of the car is clear of all around it."""
        trim = self.receiver.facts.trim
        if trim is None:
            return (untold("front", _FRONT, ["trim or screen before the dash (not recorded)"]),)
        return contain("front", _FRONT, rectangle("trim", trim), _clear_front(self.opening, trim))

    def depth(self) -> Check:
        """Depth behind the chassis: what is clear, less chassis and plugs."""
        facts = self.receiver.facts
        need = [typed("chassis depth", facts.chassis_depth), plug_room(facts, self.usual)]
        return compare("depth", "Depth behind the chassis", [_clear(self.opening)], need)

    def decided(
        self, checks: Sequence[Check], face: Face | None, *, kit: Stocked[KitGear] | None = None, to_get: str = ""
    ) -> Fit:
        """The answer for one way to put it in, through a kit from stock or not."""
        parts, wanted = ((kit.name,) if kit else ()), ((to_get,) if to_get else ())
        found = decide(self.receiver.id, self.receiver.name, checks, parts, wanted, tuple(_notes(self, face)))
        return replace(found, way=Way(kit.id if kit else ""))


def fit(
    receiver: Stocked[ReceiverGear], opening: ReceiverOpening, kits: Sequence[Stocked[KitGear]], usual: Clearances
) -> Fit:
    """The best answer over straight in and through each of the kits that suit this opening of this car."""
    case = Case(receiver, opening, usual)
    return best([*_straight(case, kits), *(_through(case, kit) for kit in kits)])


def _clear_front(opening: ReceiverOpening, trim: Face) -> Outline:
    """The room before the dash; where it is not recorded, the opening itself for what is no larger."""
    if opening.clear_front:
        return rectangle("clear front", opening.clear_front)
    front, face = rectangle("trim", trim), rectangle("opening", opening.face)
    return Outline(
        "rectangle",
        _within(front.width, face.width, "clear room in front, width"),
        _within(front.height, face.height, "clear room in front, height"),
    )


def _within(need: Number, have: Number, what: str) -> Number:
    if need.value is None or have.value is None or need.value > have.value:
        return typed(what, None)
    return have


def plug_room(receiver: ReceiverGear, usual: Clearances) -> Number:
    """The room that the plugs need: the gear's own, else the usual."""
    stated = isinstance(receiver.plug_room, Quantity)
    return typed("plug room", receiver.plug_room) if stated else usual.plug_room


def _clear(opening: ReceiverOpening) -> Number:
    """The clear depth, which counts from the front of the dash alone."""
    depth = opening.depth
    if depth and depth.datum != "face":
        said = f"measured from the {depth.datum}" if depth.datum else "from which face it was measured is not recorded"
        return Number("depth from the front of the dash", None, 0, said)
    return typed("clear depth", depth.clear if depth else None)


def _straight(case: Case, kits: Sequence[Stocked[KitGear]]) -> Iterator[Fit]:
    """Without a kit in stock."""
    checks, face = case.checks(case.opening.face, "opening"), case.opening.face
    if case.opening.kit == "not-needed":
        yield case.decided(checks, face)
    elif case.opening.kit == "needed":
        if not kits:
            yield case.decided(checks, face, to_get=_KIT)
    else:
        yield case.decided([*checks, _undecided()], face)


def _undecided() -> Check:
    return untold("kit", "Dash kit", ["whether a kit is needed (unknown)"])


def _through(case: Case, kit: Stocked[KitGear]) -> Fit:
    """Through a kit in stock, which brings its own opening; also one that is said to suit the car is held against it."""
    checks = [*case.checks(kit.facts.opening, f"opening of {kit.name}"), *_kit_held(case, kit)]
    found = case.decided(checks, kit.facts.opening, kit=kit)
    inside = f"in the box of {kit.name}: {', '.join(kit.facts.contains)}"
    return replace(found, notes=(*found.notes, inside)) if kit.facts.contains else found


def _kit_held(case: Case, kit: Stocked[KitGear]) -> Iterator[Check]:
    """Where the opening of a kit is larger than that of the car, there is nothing to hold its frame. A frame of the same size is usual."""
    inner, outer = rectangle(f"opening of {kit.name}", kit.facts.opening), rectangle("opening", case.opening.face)
    checks = contain("kit", f"Opening of {kit.name} within the opening of the car", inner, outer)
    yield from (check for check in checks if check.verdict in ("fails", "unknown"))


def _notes(case: Case, face: Face | None) -> Iterator[str]:
    body, opening = rectangle("body", case.receiver.facts.body), rectangle("opening", face)
    if not isinstance(case.receiver.facts.plug_room, Quantity):
        yield f"the room that its plugs need is not recorded: reckoned with the usual {case.usual.plug_room.text}"
    wide = compare("width", "", [opening.width], [body.width]).margin
    high = compare("height", "", [opening.height], [body.height]).margin
    if wide is None or high is None or min(wide, high) < 0:
        return
    yield from _trimmed(case, opening)
    if min(wide, high) < (case.usual.sleeve.value or 0):
        yield f"no room for a sleeve: {both(min(wide, high))} left over, {case.usual.sleeve.text} wanted"
    if high >= (case.usual.filler.value or 0):
        yield f"{both(high)} of height left over: a filler or a pocket closes it"


def _trimmed(case: Case, opening: Outline) -> Iterator[str]:
    """Where the trim does not close the opening, or may meet something before the dash."""
    if case.receiver.facts.trim is None:
        return
    trim = rectangle("trim", case.receiver.facts.trim)
    pairs = (("at the sides", opening.width, trim.width), ("above and below", opening.height, trim.height))
    over = [(where, compare("", "", [have], [need]).margin or 0) for where, have, need in pairs]
    for where, left in over:
        if 0 < left < (case.usual.filler.value or 0):
            yield f"the trim leaves {both(left)} open {where}"
    if case.opening.clear_front is None and any(left < 0 for _, left in over):
        yield f"the trim is {both(trim.width.value or 0)} × {both(trim.height.value or 0)}: measure the room before the vents and switches of the car"
