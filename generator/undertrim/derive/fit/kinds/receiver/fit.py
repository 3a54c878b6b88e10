"""A receiver against an opening in the dash: straight into it, or through a kit."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.receiver.names import CLEAR_DEPTH, OPENING
from undertrim.derive.fit.lengths import both
from undertrim.derive.fit.margins import Check, Number, compare, typed, untold
from undertrim.derive.fit.outline import Outline, contain, rectangle
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import Fit, Way, best, decide
from undertrim.record.model import Face
from undertrim.record.model.kinds.receiver import KitGear, ReceiverGear, ReceiverOpening
from undertrim.record.units import Quantity
from undertrim.words import Items, Message, message

_KIT = message("gear-kinds/a-kit")
_FRONT = message("fit-receiver/front")
_NO_TRIM = message("fit-receiver/lacks-trim")
_DEPTH = message("fit-receiver/depth")
_BODY = message("fit-receiver/body")
_TRIM = message("fit-receiver/trim")


@dataclass(frozen=True, slots=True)
class Case:
    """A receiver before an opening, with the usual room."""

    receiver: Stocked[ReceiverGear]
    opening: ReceiverOpening
    usual: Clearances

    def checks(self, face: Face | None, what: Message) -> list[Check]:
        """Body against one face, and depth."""
        body = rectangle(_BODY, self.receiver.facts.body)
        through = contain("body", message("fit-receiver/body-in", what=what), body, rectangle(what, face))
        return [*through, *self.front(), self.depth()]

    def front(self) -> tuple[Check, ...]:
        """Trim or screen in the room before the dash; what stays within the opening of the car is clear of all around it."""
        trim = self.receiver.facts.trim
        if trim is None:
            return (untold("front", _FRONT, [_NO_TRIM]),)
        return contain("front", _FRONT, rectangle(_TRIM, trim), _clear_front(self.opening, trim))

    def depth(self) -> Check:
        """Depth behind the chassis: what is clear, less chassis and plugs."""
        facts = self.receiver.facts
        need = [typed(message("fit-receiver/chassis-depth"), facts.chassis_depth), plug_room(facts, self.usual)]
        return compare("depth", _DEPTH, [_clear(self.opening)], need)

    def decided(
        self,
        checks: Sequence[Check],
        face: Face | None,
        *,
        kit: Stocked[KitGear] | None = None,
        to_get: Message | None = None,
    ) -> Fit:
        """The answer for one way to put it in, through a kit from stock or not."""
        parts, wanted = ((kit.piece,) if kit else ()), ((to_get,) if to_get else ())
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
        return rectangle(message("fit-receiver/clear-front"), opening.clear_front)
    front, face = rectangle(_TRIM, trim), rectangle(OPENING, opening.face)
    return Outline(
        "rectangle",
        _within(front.width, face.width, message("fit-receiver/clear-width")),
        _within(front.height, face.height, message("fit-receiver/clear-height")),
    )


def _within(need: Number, have: Number, what: Message) -> Number:
    if need.value is None or have.value is None or need.value > have.value:
        return typed(what, None)
    return have


def plug_room(receiver: ReceiverGear, usual: Clearances) -> Number:
    """The room that the plugs need: the gear's own, else the usual."""
    stated = isinstance(receiver.plug_room, Quantity)
    return typed(message("fit-receiver/plug-room"), receiver.plug_room) if stated else usual["plug_room"]


def _clear(opening: ReceiverOpening) -> Number:
    """The clear depth, which counts from the front of the dash alone."""
    depth = opening.depth
    if depth and depth.datum != "face":
        said = message(f"fit/measured-from-{depth.datum}" if depth.datum else "fit-receiver/face-not-recorded")
        return Number(message("fit-receiver/depth-from-front"), None, 0, said)
    return typed(CLEAR_DEPTH, depth.clear if depth else None)


def _straight(case: Case, kits: Sequence[Stocked[KitGear]]) -> Iterator[Fit]:
    """Without a kit in stock."""
    checks, face = case.checks(case.opening.face, OPENING), case.opening.face
    if case.opening.kit == "not-needed":
        yield case.decided(checks, face)
    elif case.opening.kit == "needed":
        if not kits:
            yield case.decided(checks, face, to_get=_KIT)
    else:
        yield case.decided([*checks, _undecided()], face)


def _undecided() -> Check:
    return untold("kit", message("receiver-shown/kit"), [message("fit-receiver/lacks-kit")])


def _through(case: Case, kit: Stocked[KitGear]) -> Fit:
    """Through a kit in stock, which brings its own opening; also one that is said to suit the car is held against it."""
    checks = [*case.checks(kit.facts.opening, _opening_of(kit)), *_kit_held(case, kit)]
    found = case.decided(checks, kit.facts.opening, kit=kit)
    inside = message("fit-receiver/in-the-box", kit=kit.name, contains=Items(kit.facts.contains, "comma"))
    return replace(found, notes=(*found.notes, inside)) if kit.facts.contains else found


def _kit_held(case: Case, kit: Stocked[KitGear]) -> Iterator[Check]:
    """Where the opening of a kit is larger than that of the car, there is nothing to hold its frame. A frame of the same size is usual."""
    inner, outer = rectangle(_opening_of(kit), kit.facts.opening), rectangle(OPENING, case.opening.face)
    checks = contain("kit", message("fit-receiver/kit-within", kit=kit.name), inner, outer)
    yield from (check for check in checks if check.verdict in ("fails", "unknown"))


def _opening_of(kit: Stocked[KitGear]) -> Message:
    return message("fit-receiver/opening-of", kit=kit.name)


def _notes(case: Case, face: Face | None) -> Iterator[Message]:
    body, opening = rectangle(_BODY, case.receiver.facts.body), rectangle(OPENING, face)
    if not isinstance(case.receiver.facts.plug_room, Quantity):
        yield message("fit-receiver/plugs-not-recorded", usual=case.usual["plug_room"].text)
    wide = compare("width", "", [opening.width], [body.width]).margin
    high = compare("height", "", [opening.height], [body.height]).margin
    if wide is None or high is None or min(wide, high) < 0:
        return
    yield from _trimmed(case, opening)
    if min(wide, high) < (case.usual["sleeve"].value or 0):
        yield message("fit-receiver/no-sleeve", left=both(min(wide, high)), wanted=case.usual["sleeve"].text)
    if high >= (case.usual["filler"].value or 0):
        yield message("fit-receiver/filler", left=both(high))


def _trimmed(case: Case, opening: Outline) -> Iterator[Message]:
    """Where the trim does not close the opening, or may meet something before the dash."""
    if case.receiver.facts.trim is None:
        return
    trim = rectangle(_TRIM, case.receiver.facts.trim)
    pairs = (("sides", opening.width, trim.width), ("above", opening.height, trim.height))
    over = [(where, compare("", "", [have], [need]).margin or 0) for where, have, need in pairs]
    for where, left in over:
        if 0 < left < (case.usual["filler"].value or 0):
            yield message(f"fit-receiver/trim-open-{where}", left=both(left))
    if case.opening.clear_front is None and any(left < 0 for _, left in over):
        yield message("fit-receiver/trim-over", width=both(trim.width.value or 0), height=both(trim.height.value or 0))
